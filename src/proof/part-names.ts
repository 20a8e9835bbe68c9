import type { Named } from '../project/ref.ts';
import type { Shapes } from '../shape/shapes.ts';
import { sheetsOf } from '../shape/sheets.ts';

/** What may follow the dot: the panels of a piece, and the further sheets of a form made of several. */
export function partNames({ nets }: Shapes, piece: string): readonly string[] {
  return sheetsOf(nets, piece).flatMap(({ name, net }) => [
    ...(name === undefined ? [] : [name]),
    ...net.panels.map(({ id }) => id),
    ...[...(net.openings ?? []), ...(net.popUps ?? [])].map((opening) => opening.name),
  ]);
}

/** Whether there is what is named: a piece whose shape is known, or a part of one, as `box.front`, `box.lid`. */
export function isThere(shapes: Shapes, { piece, part }: Named): boolean {
  if (part === undefined) return shapes.nets.has(piece);
  return partNames(shapes, piece).includes(part);
}
