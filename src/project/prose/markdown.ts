import type { Nodes, Parents, Root, RootContent } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { Finding } from '../finding.ts';
import { type Place, type SourceFile, startOf, textAt } from '../source.ts';
import { boundMarks, TooManyMarks } from './marks.ts';

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

/** Parses Markdown; of what is nested too deep to be read or set nothing, which is reported. */
export function parseWithin(markdown: string, file: SourceFile, report: (finding: Finding) => void): Root {
  const result = itemTooDeep(markdown, file) ?? parsed(markdown, file);
  if ('type' in result) return result;
  report(result);
  return processor.parse('');
}

function itemTooDeep(markdown: string, file: SourceFile): Finding | undefined {
  const item = DEEP_ITEM.exec(markdown);
  if (!item) return undefined;
  const [all, indent = ''] = item;
  return tooDeep({ file, start: item.index + indent.length, end: item.index + all.length });
}

function tooDeep(at: Place): Finding {
  return { rule: 'nested-too-deep', at, facts: {} };
}

function parsed(markdown: string, file: SourceFile): Root | Finding {
  try {
    const root = processor.parse(markdown);
    const deep = nodeBelow(DEEPEST, root);
    if (!deep) return root;
    const { start } = placeOf(deep, file);
    return tooDeep({ file, start, end: start + 1 });
  } catch (error) {
    // What is nested by the thousand exhausts the parser's own stack.
    if (error instanceof RangeError) return tooDeep(startOf(file));
    if (error instanceof TooManyMarks) {
      const at = { file, start: error.at, end: error.at + 1 };
      return { rule: 'too-many', at, facts: error.facts };
    }
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
