import { readRef } from '../project/ref.ts';
import { type Shapes, sheetsOf } from '../shape/shapes.ts';

/** What may stand behind the dot: the panels of a piece, and the further sheets of a form made of several. */
export function partNames({ nets }: Shapes, piece: string): readonly string[] {
  return sheetsOf(nets, piece).flatMap(({ name, net }) => [
    ...(name === undefined ? [] : [name]),
    ...net.panels.map(({ id }) => id),
    ...[...(net.openings ?? []), ...(net.popUps ?? [])].map((opening) => opening.name),
  ]);
}

/** `box` of `box.lid`. */
export function pieceIn(name: string): string {
  return readRef(name).piece;
}

/** Whether a name is that of a piece whose shape is known, or of a part of one: `box`, `box.front`, `box.lid`. */
export function isNamed(shapes: Shapes, name: string): boolean {
  const { piece, part } = readRef(name);
  if (part === undefined) return shapes.nets.has(piece);
  return partNames(shapes, piece).includes(part);
}
