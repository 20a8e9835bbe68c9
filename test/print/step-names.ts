import type { Setting } from '../../src/handout/setting.ts';
import type { Prose } from '../../src/project/model.ts';
import { sheetsOf } from '../../src/shape/sheets.ts';
import { partNamed, pieceNamed } from '../../src/words/names.ts';
import { all, type Node, parseMarkup, textOf } from '../handout/markup.ts';

export type StepView = {
  readonly title: unknown;
  readonly text: unknown;
  readonly figures: readonly unknown[];
};

/**
 * What the text of a step calls panels and flaps of the pieces that it draws, each once.
 * @returns those that none of its drawings says, and how many there are.
 */
export function namesLacking(
  setting: Setting,
  prose: Prose,
  view: StepView,
): { readonly lacking: readonly string[]; readonly count: number } {
  const shown = parseMarkup([view.text, ...view.figures].map(String).join(''));
  const names = all(shown, 'svg').length === 0 ? [] : namesOfPanels(setting, prose);
  const told = new Set(found(textOf(withoutFigures(parseMarkup(String(view.text)))), names));
  const written = namesWritten(shown, names);
  return { lacking: [...told].filter((name) => !written.has(name)), count: told.size };
}

/** Longest first, so that `front top` is not taken for `front`. A piece that is one panel is shown by the whole drawing. */
function namesOfPanels({ editions, measures, voice }: Setting, { references }: Prose): readonly string[] {
  const pieces = references.flatMap(({ kind, of }) => (kind === 'drawing' ? [of.value.piece] : []));
  const names = pieces.flatMap((piece) =>
    sheetsOf(editions[measures.leading].shapes.nets, piece)
      .flatMap(({ net }) => net.panels.map(({ id, name }) => name ?? id))
      .map((name) => partNamed(name, voice.say))
      .filter((name) => name !== pieceNamed(piece, voice.say)),
  );
  return [...new Set(names.map((name) => name.toLowerCase()))].toSorted((a, b) => b.length - a.length);
}

/** What is lettered in drawings, a label at a time, its lines one after the other, and what their captions say. */
function namesWritten(shown: Node, names: readonly string[]): ReadonlySet<string> {
  const labels = all(shown, 'svg').flatMap((svg) => {
    const lines = all(svg, 'text').map((line) => textOf(line).toLowerCase());
    return [1, 2, 3].flatMap((long) => lines.map((_, at) => lines.slice(at, at + long).join(' ')));
  });
  const captions = all(shown, 'figcaption').map(textOf);
  return new Set([
    ...names.filter((name) => labels.includes(name)),
    ...captions.flatMap((each) => found(each, names)),
  ]);
}

/** Names that a text says; `its left edge` and `the right way up` are no panels. */
function found(text: string, names: readonly string[]): readonly string[] {
  if (names.length === 0) return [];
  const said = new RegExp(`\\b(?:${names.join('|')})\\b(?! (?:edge|way))`, 'giu');
  return [...text.matchAll(said)].map(([name]) => name.toLowerCase());
}

function withoutFigures(node: Node): Node {
  const children: (Node | string)[] = [];
  for (const child of node.children) {
    if (typeof child === 'string') children.push(child);
    else if (child.name !== 'figure') children.push(withoutFigures(child));
  }
  return { ...node, children };
}
