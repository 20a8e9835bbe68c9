import { sameSize } from '../../measure/size.ts';
import type { Piece, Project } from '../../project/model.ts';
import type { OutlineAsWritten } from '../../project/outline-grammar.ts';
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
  const size = { width: cut.width.value, height: cut.height.value };
  const net = {
    size,
    panels: [
      {
        id,
        name: id,
        outline: points,
        box,
        ...(!sameSize(boxSize(box), size) && { slanted: true as const }),
      },
    ],
    folds: [],
    scores: [],
    slits: [],
    waste: wasteRound(points, size),
    shape,
    glue: [],
  };
  return { net, findings };
}
