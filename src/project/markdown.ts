import type { Nodes, Parents, Root, RootContent } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { type Place, type SourceFile, textAt } from './source.ts';

const processor = unified().use(remarkParse).use(remarkGfm).use(remarkDirective).freeze();

/** Parses Markdown whose offsets are those of the whole file (the frontmatter blanked out, not cut off). */
export function parseMarkdown(body: string): Root {
  return processor.parse(body);
}

/** Where a node stands. A node made by a plugin without a position stands where its parent does. */
export function placeOf(node: Nodes, file: SourceFile, parent?: Place): Place {
  const start = node.position?.start.offset;
  const end = node.position?.end.offset;
  if (start !== undefined && end !== undefined) return { file, start, end };
  return parent ?? { file, start: 0, end: 0 };
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
