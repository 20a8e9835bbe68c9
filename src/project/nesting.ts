import type { Nodes, Root } from 'mdast';
import type { Finding } from './finding.ts';
import { childrenOf, parseMarkdown, placeOf } from './markdown.ts';
import { type Place, type SourceFile, startOf } from './source.ts';

/** Levels of a Markdown tree; a list has two a level. Far more than anybody means, far fewer than break a program. */
const DEEPEST = 100;

/** A list item that far in is deep in others; reading so many takes minutes, not only levels. */
const DEEP_ITEM = /^([ \t]{200,})(?:[-+*]|\d{1,9}[.)])(?=[ \t])/mu;

/** Parses Markdown; of what is nested too deep to be read or set nothing, which is reported. */
export function parseWithin(markdown: string, file: SourceFile, report: (finding: Finding) => void): Root {
  const result = itemTooDeep(markdown, file) ?? parsed(markdown, file);
  if ('type' in result) return result;
  report({ rule: 'nested-too-deep', at: result, facts: {} });
  return parseMarkdown('');
}

function itemTooDeep(markdown: string, file: SourceFile): Place | undefined {
  const item = DEEP_ITEM.exec(markdown);
  if (!item) return undefined;
  const [all, indent = ''] = item;
  return { file, start: item.index + indent.length, end: item.index + all.length };
}

function parsed(markdown: string, file: SourceFile): Root | Place {
  try {
    const root = parseMarkdown(markdown);
    const deep = nodeBelow(DEEPEST, root);
    if (!deep) return root;
    const { start } = placeOf(deep, file);
    return { file, start, end: start + 1 };
  } catch (error) {
    // What is nested by the thousand exhausts the parser's own stack.
    if (error instanceof RangeError) return startOf(file);
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
