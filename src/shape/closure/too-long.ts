import type { Length } from '../../measure/length.ts';
import type { FoldedShape } from '../folded-shape.ts';
import { perNet } from '../per-net.ts';
import { flapsSticking } from './end-cover.ts';
import { longFlaps, tubeEnds } from './ends.ts';
import { protrusions } from './protrusion.ts';

/** Flaps of ends that reach too far, and tabs that stick out: what they do besides follows from that. */
export function panelsTooLong(shape: FoldedShape, caliper: Length): ReadonlySet<string> {
  return new Set([...flapsTooLong(shape, caliper), ...protrusions(shape, caliper).map(({ tab }) => tab)]);
}

/** All parts of the flaps of ends that reach further than to the walls. */
export const flapsTooLong: (shape: FoldedShape, caliper: Length) => readonly string[] = perNet(
  (shape: FoldedShape, caliper: Length) => {
    return tubeEnds(shape.net).flatMap((end) => [
      ...longFlaps(end, caliper).flatMap(({ parts }) => parts),
      ...flapsSticking(shape, end, caliper).flatMap(({ flap }) => flap.parts),
    ]);
  },
);
