import type { Download } from '../handout/sheet.ts';
import type { Voice } from '../words/voice.ts';

/** The PDFs of one kind on one line: `Handout: Letter · A4 · Large print`. */
export type PapersLine = {
  readonly kind: string;
  readonly papers: readonly { readonly name: string; readonly spoken: string; readonly href: string }[];
};

/** A project's PDFs, those to read and those to cut apart. `spoken` says of each what it is of, for those who hear it alone. */
export function papersLines(title: string, papers: readonly Download[], voice: Voice): readonly PapersLine[] {
  const kinds = [
    { kind: voice.say('site-handout'), papers: papers.filter(({ kind }) => !isTemplate(kind)) },
    { kind: voice.say('site-template'), papers: papers.filter(({ kind }) => isTemplate(kind)) },
  ];
  return kinds
    .filter((line) => line.papers.length > 0)
    .map(({ kind, papers: offered }) => ({
      kind,
      papers: offered.map((paper) => {
        const name = voice.say(`site-paper-${paper.kind.replace('template-', '')}`);
        return { name, spoken: voice.say('site-paper-of', { paper: name, kind, title }), href: paper.href };
      }),
    }));
}

function isTemplate(kind: Download['kind']): boolean {
  return kind.startsWith('template');
}
