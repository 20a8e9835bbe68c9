import type { Nodes, Parents, Root, RootContent } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { Finding } from '../finding.ts';
import { type Place, type SourceFile, startOf, textAt } from '../source.ts';
import { boundMarks, countMarks, TooManyMarks } from './marks.ts';

const processor = unified().use(remarkParse).use(remarkGfm).use(remarkDirective).use(boundMarks).freeze();

/** Where a node stands. A node made by a plugin without a position stands where its parent does. */
export function placeOf(node: Nodes, file: SourceFile, parent?: Place): Place {
  const { start, end } = node.position ?? {};
  if (start?.offset === undefined || end?.offset === undefined) return parent ?? startOf(file);
  return { file, start: start.offset, end: end.offset };
}

/** The characters a node was read from. */
export function sourceOf(node: Nodes, file: SourceFile): string {
  return textAt(placeOf(node, file));
}

export function childrenOf(node: Nodes): readonly RootContent[] {
  return 'children' in node ? (node.children as readonly RootContent[]) : [];
}

/** What a node becomes: itself (undefined), or nodes in its place. */
type Rewrite = (node: RootContent, parent: Parents) => readonly RootContent[] | undefined;

/**
 * Rewrites a tree from the leaves up, in place: a node is asked about after its children. What replaces a node is
 * not asked about again.
 */
export function rewrite(parent: Parents, change: Rewrite): void {
  const children: RootContent[] = [];
  for (const child of childrenOf(parent)) {
    if ('children' in child) rewrite(child, change);
    children.push(...(change(child, parent) ?? [child]));
  }
  parent.children = children as typeof parent.children;
}

/** Every node of a tree, parents first. */
export function* everyNode(node: Nodes): Generator<Nodes> {
  yield node;
  for (const child of childrenOf(node)) yield* everyNode(child);
}

/** Levels of a Markdown tree; a list has two a level. Far more than anybody means, far fewer than break a program. */
const DEEPEST = 100;

/** A list item that far in is deep in others; reading so many takes minutes, not only levels. */
const DEEP_ITEM = /^([ \t]{200,})(?:[-+*]|\d{1,9}[.)])(?=[ \t])/mu;

/** So many paragraphs are left out before the whole text is: each has all that stands before it read again. */
const MOST_LEFT_OUT = 10;

/** More than any table of a sheet has. */
const MOST_ROWS = 1000;

/** A line that may be a row of a table. */
const ROW = /^[^|\r\n]*\|[^\r\n]*/gmu;

/** A text with blanks for the rows of its tables that are too many, which are reported. */
function withoutRows(markdown: string, file: SourceFile, report: (finding: Finding) => void): string {
  const rows = [...markdown.matchAll(ROW)];
  const past = rows[MOST_ROWS];
  if (!past) return markdown;
  const at = { file, start: past.index, end: past.index + past[0].length };
  const facts = { what: 'rows of tables in this text', count: rows.length, most: MOST_ROWS };
  report({ rule: 'too-many', at, facts });
  return markdown.slice(0, past.index) + markdown.slice(past.index).replace(ROW, blanked);
}

/** Blanks for all that is not the end of a line, so that everything else stays where it is. */
function blanked(text: string): string {
  return text.replace(/[^\r\n]/gu, (character) => ' '.repeat(character.length));
}

/**
 * Parses Markdown without the paragraphs that have too many marks and the rows that are too many; of a text that has too
 * many quotes, or is nested too deep to be read or set, nothing. All of it is reported.
 */
export function parseWithin(markdown: string, file: SourceFile, report: (finding: Finding) => void): Root {
  let [text, left] = [withoutRows(markdown, file, report), MOST_LEFT_OUT];
  let result = itemTooDeep(text, file) ?? parsed(text, file);
  while (result instanceof TooManyMarks) {
    const { at, counted } = result;
    const [start, end] = counted.isWithin === 'text' ? [0, text.length] : paragraphAt(at, text);
    report({
      rule: 'too-many',
      at: { file, start: at, end: at + 1 },
      facts: countMarks(result, text.slice(start, end)),
    });
    if (start === 0 && end === text.length) return processor.parse('');
    // Everything else stays where it is.
    text = left === 0 ? '' : text.slice(0, start) + blanked(text.slice(start, end)) + text.slice(end);
    left--;
    result = parsed(text, file);
  }
  if ('type' in result) return result;
  report(result);
  return processor.parse('');
}

/** From where to where the lines round a place go on without an empty one. */
function paragraphAt(at: number, text: string): readonly [start: number, end: number] {
  const before = text.slice(0, at).split(EMPTY_LINE).at(-1)?.length ?? 0;
  const after = text.slice(at).split(EMPTY_LINE, 1)[0]?.length ?? 0;
  return [at - before, at + after];
}

const EMPTY_LINE = /\n[ \t\r]*\n/u;

function itemTooDeep(markdown: string, file: SourceFile): Finding | undefined {
  const item = DEEP_ITEM.exec(markdown);
  if (!item) return undefined;
  const [all, indent = ''] = item;
  return tooDeep({ file, start: item.index + indent.length, end: item.index + all.length });
}

function tooDeep(at: Place): Finding {
  return { rule: 'nested-too-deep', at, facts: {} };
}

function parsed(markdown: string, file: SourceFile): Root | Finding | TooManyMarks {
  try {
    const root = processor.parse(markdown);
    const deep = nodeBelow(DEEPEST, root);
    if (!deep) return root;
    const { start } = placeOf(deep, file);
    return tooDeep({ file, start, end: start + 1 });
  } catch (error) {
    // What is nested by the thousand exhausts the parser's own stack.
    if (error instanceof RangeError) return tooDeep(startOf(file));
    if (error instanceof TooManyMarks) return error;
    throw error;
  }
}

/** The first node below so many levels. Walks without calling itself, to be able to say so. */
function nodeBelow(levels: number, root: Nodes): Nodes | undefined {
  const waiting: { readonly node: Nodes; readonly level: number }[] = [{ node: root, level: 0 }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { node, level } = next;
    if (level > levels) return node;
    for (const child of childrenOf(node).toReversed()) waiting.push({ node: child, level: level + 1 });
  }
  return undefined;
}
