import type { Edge } from '../project/model.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import type { Canvas } from './canvas.ts';
import { extentOf, type Label } from './lettering.ts';
import type { DrawnBox } from './region.ts';
import { spread } from './spread.ts';

/** A label outside a drawing that belongs to a point inside it. */
export type Callout = {
  readonly from: Point2;
  readonly side: Edge;
  /** Two lines of figures, or a letter to be ringed. */
  readonly label: Label | { readonly badge: string };
};

const OUT = 2;
const KINK = 3;

/** Sets callouts round a box, each straight out from its point, labels on one side never touching. */
export function setCallouts(canvas: Canvas, box: DrawnBox, callouts: readonly Callout[], size: number): void {
  for (const side of ['left', 'right', 'top', 'bottom'] as const) {
    const own = callouts.filter((callout) => callout.side === side);
    const upright = side === 'left' || side === 'right';
    const middles = spread(
      own.map(({ from, label }) => ({
        at: upright ? from.y : from.x,
        size: alongSize(label, upright, size),
      })),
      size * (upright ? 0.85 : 0.5),
    );
    for (const [index, callout] of own.entries()) setOne(canvas, box, callout, middles[index] ?? 0, size);
  }
}

function setOne(
  canvas: Canvas,
  box: DrawnBox,
  { from, side, label }: Callout,
  middle: number,
  size: number,
): void {
  const outward = side === 'left' || side === 'top' ? -1 : 1;
  const upright = side === 'left' || side === 'right';
  const edge = box[side] + outward * OUT;
  const end = edge + outward * KINK;
  const bend = upright ? { x: edge, y: from.y } : { x: from.x, y: edge };
  const tip = upright ? { x: end, y: middle } : { x: middle, y: end };
  canvas.line('extension', [from, bend, tip]);
  const gap = outward * size * 0.2;
  const at = upright ? { x: tip.x + gap, y: tip.y } : { x: tip.x, y: tip.y + gap };
  if ('badge' in label) {
    const radius = outward * size * 0.72;
    const centre = upright ? { x: tip.x + radius, y: tip.y } : { x: tip.x, y: tip.y + radius };
    canvas.badge(label.badge, centre, size);
  } else if (upright) {
    canvas.label(label, at, { size, strong: true, anchor: outward < 0 ? 'end' : 'start' });
  } else {
    canvas.label(label, at, { size, strong: true, sits: outward < 0 ? 'over' : 'under' });
  }
}

function alongSize(label: Callout['label'], upright: boolean, size: number): number {
  if ('badge' in label) return size * 1.5;
  const { width, height } = extentOf(label);
  return (upright ? height : width) * size;
}
