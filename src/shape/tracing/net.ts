import type { Length } from '../../measure/length.ts';
import { nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { type Size, sameSize } from '../../measure/size.ts';
import type { OutlineAsWritten } from '../../project/grammar/outline-grammar.ts';
import type { Piece, Project } from '../../project/model.ts';
import type { AtSize } from '../../project/sizes-as-written.ts';
import type { NetReading } from '../explicit.ts';
import { boxSize } from '../net.ts';
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
  const size = sheetFor(cut, outline, project);
  const isSlanted = !sameSize(boxSize(box), size);
  const panel = { id, name: id, outline: points, box, ...(isSlanted && { slanted: true as const }) };
  const waste = wasteRound(points, size);
  const net = { size, panels: [panel], folds: [], scores: [], slits: [], waste, shape, glue: [] };
  return { net, findings };
}

/** The sheet that an outline is cut from; of a drawing as wide and as high as the next marks of a ruler. */
function sheetFor({ width, height, unit }: AtSize, { kind }: OutlineAsWritten, project: Project): Size {
  const ruler = rulerUnit(unit ?? project.unit);
  const side = (length: Length): Length => (kind === 'drawn' ? nextMark(length, ruler) : length);
  return { width: side(width.value), height: side(height.value) };
}
