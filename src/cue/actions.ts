import type { Paragraph, PhrasingContent, RootContent } from 'mdast';
import { toString as textWithin } from 'mdast-util-to-string';
import { withoutHost } from '../handout/markdown-handlers.ts';
import type { Step } from '../project/model.ts';

/**
 * What is said aloud in a step: its first sentences, those before all that name a piece or a number. Tips, cautions,
 * pictures and the lists that we write ourselves are left to the sheet, and to the places they have on the card.
 *
 * @param most how many at the most, in the order of the step.
 */
export function actionsOf({ prose }: Step, most: number, language: string): readonly Paragraph[] {
  const all = withoutHost(prose.nodes)
    .flatMap(linesIn)
    .flatMap((line) => sentencesIn(line, language));
  const chosen = all
    .map((action, index) => ({ action, index, weight: index === 0 || isExact(action) ? 0 : 1 }))
    .toSorted((a, b) => a.weight - b.weight || a.index - b.index)
    .slice(0, most);
  return chosen.toSorted((a, b) => a.index - b.index).map(({ action }) => action);
}

/** The lines of running text in a block: a paragraph, or the items of a list. */
function linesIn(node: RootContent): readonly Paragraph[] {
  if (node.type === 'paragraph') return [node];
  if (node.type === 'list') return node.children.flatMap((item) => item.children.flatMap(linesIn));
  return [];
}

/** The list of a step that we write ourselves: what is glued in it, or else what is cut. */
type OwnList = { readonly kind: 'assembly' | 'trims'; readonly line: Paragraph };

export function ownListOf({ prose }: Step): OwnList | undefined {
  const lines = withoutHost(prose.nodes).flatMap(linesIn);
  const named = (kind: OwnList['kind']): OwnList | undefined => {
    const line = lines.find(({ children }) =>
      children.some((node) => node.type === 'textDirective' && node.name === kind),
    );
    return line && { kind, line };
  };
  return named('assembly') ?? named('trims');
}

/** Whether a sentence names a piece or has a number in it. */
function isExact({ children }: Paragraph): boolean {
  return children.some((node) => node.type === 'textDirective' || /\d/u.test(textWithin(node)));
}

/** References that become one of our lists, which is too long to be said. */
const LISTS: ReadonlySet<string> = new Set(['trims', 'assembly', 'edge', 'impressions']);

/** A line cut at the ends of its sentences; what is in a line and no text is never cut. */
function sentencesIn({ children }: Paragraph, language: string): readonly Paragraph[] {
  const shown = children.filter(({ type }) => type !== 'image');
  const text = shown.map(plainOf).join('');
  const segments = new Intl.Segmenter(language, { granularity: 'sentence' }).segment(text);
  return [...segments].flatMap(({ index, segment }) => {
    const cut = cutOut(shown, index, index + segment.length);
    const isList = cut.some((node) => node.type === 'textDirective' && LISTS.has(node.name));
    return isList || segment.trim() === '' ? [] : [{ type: 'paragraph', children: cut }];
  });
}

/** Something that is no text counts as one letter, so that no sentence ends in it. */
function plainOf(node: PhrasingContent): string {
  return node.type === 'text' ? node.value.replace(/\n/gu, ' ') : 'x';
}

function cutOut(children: readonly PhrasingContent[], from: number, to: number): PhrasingContent[] {
  let start = 0;
  return children.flatMap((node): PhrasingContent[] => {
    const [first, end] = [start, start + plainOf(node).length];
    start = end;
    if (end <= from || first >= to) return [];
    if (node.type !== 'text') return [node];
    return [{ ...node, value: plainOf(node).slice(Math.max(0, from - first), to - first) }];
  });
}
