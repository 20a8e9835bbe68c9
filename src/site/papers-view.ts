import type { Download } from '../handout/prints.ts';
import type { Voice } from '../words/voice.ts';

/** The PDFs of one kind on one line: `Handout: Letter · A4 · Large print`. */
type PapersLine = {
  readonly kind: string;
  readonly papers: readonly { readonly name: string; readonly spoken: string; readonly href: string }[];
};

/** The line each PDF stands on, and the paper that names it there. */
const PLACES: Readonly<Record<Download['kind'], readonly [line: string, paper: string]>> = {
  letter: ['site-handout', 'letter'],
  a4: ['site-handout', 'a4'],
  'large-print': ['site-handout', 'large-print'],
  template: ['site-template', 'template'],
  'template-letter': ['site-template', 'letter'],
  'template-a4': ['site-template', 'a4'],
};

/** A project's PDFs, those to read and those to cut apart. `spoken` says of each what it is of, for those who hear it alone. */
export function papersLines(
  title: string,
  papers: readonly Download[],
  { say }: Voice,
): readonly PapersLine[] {
  return ['site-handout', 'site-template'].flatMap((line) => {
    const kind = say(line);
    const offered = papers.flatMap(({ kind: offer, href }) => {
      const [where, paper] = PLACES[offer];
      const name = say(`site-paper-${paper}`);
      return where === line
        ? [{ name, spoken: say('site-paper-of', { paper: name, kind, title }), href }]
        : [];
    });
    return offered.length > 0 ? [{ kind, papers: offered }] : [];
  });
}
