import { Length } from '../../measure/length.ts';
import { nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { type Size, sameSize } from '../../measure/size.ts';
import type { Piece, Project } from '../../project/model.ts';
import type { DrawnOutline, OutlineAsWritten } from '../../project/outline-grammar.ts';
import type { AtSize } from '../../project/sizes-as-written.ts';
import type { NetReading } from '../explicit.ts';
import { boxSize, type FlatBox, type FlatPoint, type Net, type Shape } from '../net.ts';
import { traceOutline } from './trace.ts';
import { wasteRound } from './waste.ts';

/** The net of a flat piece with an outline of its own: one panel, with the piece's own name, on the sheet that holds it. */
export function outlinedNet(
  { id: { value: id } }: Piece,
  cut: AtSize,
  outline: OutlineAsWritten,
  project: Project,
): NetReading {
  const { traced, findings } = traceOutline({ name: id, outline, size: cut }, project);
  if (!traced) return { findings };
  const { points, box, shape } = traced;
  const size = { width: cut.width.value, height: cut.height.value };
  return { net: netOf(id, points, box, size, shape), findings };
}

/** An outline of the project's own, which its drawing alone describes. */
export const DRAWN: Shape = { name: 'drawn', lengths: {}, counts: {} };

/** The net of a piece by its drawing, on the sheet that holds it: as wide and as high as the next marks of a ruler. */
export function drawnNet(
  { id: { value: id } }: Piece,
  { width, height, unit }: AtSize,
  { points }: DrawnOutline,
  project: Project,
): Net {
  const ruler = rulerUnit(unit ?? project.unit);
  const size = { width: nextMark(width.value, ruler), height: nextMark(height.value, ruler) };
  const box = { left: Length.zero, top: Length.zero, right: width.value, bottom: height.value };
  return netOf(id, points, box, size, DRAWN);
}

function netOf(id: string, points: readonly FlatPoint[], box: FlatBox, size: Size, shape: Shape): Net {
  const isSlanted = !sameSize(boxSize(box), size);
  return {
    size,
    panels: [{ id, name: id, outline: points, box, ...(isSlanted && { slanted: true }) }],
    folds: [],
    scores: [],
    slits: [],
    waste: wasteRound(points, size),
    shape,
    glue: [],
  };
}
