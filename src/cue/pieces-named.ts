import { toString as textWithin } from 'mdast-util-to-string';
import { visit } from 'unist-util-visit';
import type { ReferenceKind, Step } from '../project/model.ts';
import { referenceOf } from '../words/names.ts';
import { withoutHost } from './asides.ts';

/** Naming a piece so, a step takes it in hand; a size, a count or a drawing only tells of it. */
const TAKES_UP: ReadonlySet<string> = new Set([
  'piece',
  'reveal',
  'scores',
  'trims',
  'assembly',
] satisfies ReferenceKind[]);

/** Ids of the pieces a step takes up, in the order it names them; what only the demonstrator is told does not count. */
export function piecesNamed({ heading, prose }: Step): ReadonlySet<string> {
  const pieces = new Set<string>();
  const children = [...heading, ...withoutHost(prose.nodes)];
  visit({ type: 'root', children }, 'textDirective', (node) => {
    if (TAKES_UP.has(node.name)) pieces.add(referenceOf(textWithin(node).trim()).piece);
  });
  return pieces;
}
