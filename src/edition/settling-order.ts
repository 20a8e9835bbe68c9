import type { Piece } from '../project/model.ts';
import { stackOn } from '../shape/layers.ts';
import { type Link, linksOf } from '../shape/links.ts';
import type { Edition } from './editions.ts';

/** Bases before what lies on them; what goes into a piece, with all that lies on it, before that piece. */
export function settlingOrder(from: Edition): readonly Piece[] {
  const { project, shapes } = from;
  const layers = shapes.layers.map(({ piece }) => piece);
  const bases = [...project.pieces.values()].filter((piece) => !layers.includes(piece));
  const links = linksOf(from);
  const order = new Set<Piece>();
  const begun = new Set<Piece>();
  const settle = (piece: Piece): void => {
    if (begun.has(piece)) return;
    begun.add(piece);
    const base = piece.on && project.pieces.get(piece.on.value.piece);
    if (base) settle(base);
    for (const held of heldIn(piece, links)) stackOn(shapes, held).forEach(settle);
    order.add(piece);
  };
  [...bases, ...layers].forEach(settle);
  return [...order];
}

/** What goes into a piece or is gone round by it, and what goes into that. */
export function heldIn(
  piece: Piece,
  links: readonly Link[],
  seen: readonly Piece[] = [piece],
): readonly Piece[] {
  const held = links.flatMap((link) =>
    link.holder.id.value === piece.id.value && !seen.includes(link.held) ? [link.held] : [],
  );
  return held.flatMap((each) => [each, ...heldIn(each, links, [...seen, ...held])]);
}
