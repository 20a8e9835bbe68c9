import type { Length } from '../measure/length.ts';
import type { Edge } from '../project/model.ts';
import type { At, Place } from '../project/source.ts';
import type { Fold } from '../shape/net.ts';
import { lineOf, positionOf } from '../shape/tube.ts';
import { type FoldedSheet, shapePlace } from './folded-sheets.ts';

/** The number a score line was written as, and the edge it is measured from. */
type WrittenScore = { readonly from: Edge; readonly position: At<Length> };

/** The number of the score line that lies so far from the left (or top) edge; undefined where a form made it. */
export function writtenScore(
  { piece, net }: FoldedSheet,
  lines: 'upright' | 'across',
  position: Length,
): WrittenScore | undefined {
  if (piece.body.kind !== 'net') return undefined;
  const [near, far] = lines === 'upright' ? ['left', 'right'] : ['top', 'bottom'];
  const extent = lines === 'upright' ? net.size.width : net.size.height;
  for (const { from, at } of piece.body.score) {
    if (from.value !== near && from.value !== far) continue;
    const found = at.find(({ value }) =>
      (from.value === near ? value : extent.minus(value)).equals(position),
    );
    if (found) return { from: from.value, position: found };
  }
  return undefined;
}

/** Where to point for a fold: at its score line's number, else at the shape. */
export function foldPlace(sheet: FoldedSheet, fold: Fold): Place {
  const lines = lineOf(fold);
  const written = lines === 'slanted' ? undefined : writtenScore(sheet, lines, positionOf(fold));
  return written?.position.at ?? shapePlace(sheet);
}

/** A distance from the left (or top) edge as measured from the edge a score was written from. */
export function fromEdge({ net }: FoldedSheet, from: Edge, position: Length): Length {
  if (from === 'right') return net.size.width.minus(position);
  return from === 'bottom' ? net.size.height.minus(position) : position;
}
