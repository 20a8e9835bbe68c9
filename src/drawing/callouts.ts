import { EDGES, type Edge } from '../project/net-as-written.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import type { Canvas } from './canvas.ts';
import { alongSize, placer, setBeyond } from './dimension.ts';
import type { Label } from './lettering.ts';
import type { DrawnBox } from './region.ts';
import { spread } from './spread.ts';

/** A label outside a drawing that belongs to a point inside it. */
export type Callout = {
  readonly from: Point2;
  readonly side: Edge;
  /** Two lines of figures, a name, or a letter to be ringed. */
  readonly label: Label | { readonly badge: string };
  readonly isName?: true;
};

const OUT = 2;
const KINK = 3;

/**
 * Sets callouts round a box, each straight out from its point, no label touching another: those of a side are spread
 * along it, and those above and below stand beyond whatever is beside the box.
 */
export function setCallouts(canvas: Canvas, box: DrawnBox, callouts: readonly Callout[]): void {
  const size = canvas.lettering;
  for (const side of EDGES) {
    const own = callouts.filter((callout) => callout.side === side);
    const axis = side === 'left' || side === 'right' ? 'upright' : 'across';
    const outward = side === 'left' || side === 'top' ? -1 : 1;
    const at = placer(axis);
    const alongSide = ({ x, y }: Point2): number => (axis === 'upright' ? y : x);
    const middles = spread(
      own.map(({ from, label }) => ({
        at: alongSide(from),
        size: 'badge' in label ? size * 1.5 : alongSize(axis, label, size),
      })),
      size * (axis === 'upright' ? 0.85 : 0.5),
    );
    const beyond =
      outward < 0 ? Math.min(box[side], canvas.ink[side]) : Math.max(box[side], canvas.ink[side]);
    const edge = (axis === 'across' ? beyond : box[side]) + outward * OUT;
    const end = edge + outward * KINK;
    for (const [index, { from, label, isName }] of own.entries()) {
      const middle = middles[index] ?? 0;
      canvas.line('extension', [from, at(alongSide(from), edge), at(middle, end)]);
      if ('badge' in label) canvas.badge(label.badge, at(middle, end + outward * size * 0.72));
      else setBeyond(canvas, { axis, edge, row: end + outward * size * 0.2 }, middle, label, !isName);
    }
  }
}
