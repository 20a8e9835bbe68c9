import { overlapParts, partsOn } from '../closure/overlap.ts';
import { extentOf, type Overlap, without } from '../common-parts.ts';
import type { Point2 } from '../flat-polygon.ts';
import { foldedPanelOf } from '../folded-shape.ts';
import type { Mate } from '../net.ts';
import { type Stack, TOUCHING } from './stack.ts';

/** How two panels that lie on one another meet. */
export type Meeting = {
  /** Panels that lie between them, somewhere. */
  readonly between: readonly string[];
  /** Where nothing does, as convex parts from the top left of the first one's box. */
  readonly parts: readonly (readonly Point2[])[];
  /** What they share in all, and what of it meets. */
  readonly shared: Overlap;
  readonly free: Overlap;
};

/** How two panels of a stack meet, as if some others weren't there; they may share nothing. */
export function meetingOf(
  { shape, sides }: Stack,
  first: string,
  second: string,
  ignored: readonly string[] = [],
): Meeting {
  const panel = foldedPanelOf(shape, first);
  const whole = overlapParts(panel, foldedPanelOf(shape, second));
  const area = extentOf(whole).area;
  let parts = whole;
  const between: string[] = [];
  for (const id of sides.on(first)) {
    if (ignored.includes(id) || !sides.isBetween(id, first, second)) continue;
    const holes = partsOn(panel, foldedPanelOf(shape, id));
    if (area - extentOf(without(whole, holes)).area < TOUCHING) continue;
    between.push(id);
    parts = without(parts, holes);
  }
  return { between, parts, shared: extentOf(whole), free: extentOf(parts) };
}

/** What a rounding is off by, in millimeters. */
const ROUNDING = 1e-6;

/** Whether what is to stick together doesn't, because of what lies between: less than `least` mm meets, either way. */
function isKeptApart({ between, shared, free }: Meeting, least: number): boolean {
  if (between.length === 0) return false;
  const [needed, left] = [shared, free].map(({ width, height }) => Math.min(width, height));
  return (left ?? 0) < Math.min(least, needed ?? 0) - ROUNDING;
}

/** The glue of a stack that doesn't stick, because something lies between. */
export function keptApart(stack: Stack, mates: readonly Mate[], least: number): readonly Mate[] {
  return mates.filter(
    ({ from, to }) => lieTogether(stack, from, to) && isKeptApart(meetingOf(stack, from, to), least),
  );
}

/** The same, but for what is held by the very glue of what lies between: that sticks to both. */
export function heldApart(stack: Stack, mates: readonly Mate[], least: number): readonly Mate[] {
  return keptApart(stack, mates, least).filter((mate) =>
    isKeptApart(meetingOf(stack, mate.from, mate.to, stuckThrough(stack, mate)), least),
  );
}

/** Panels that stick to the same one, on the same side of it: what lies on them there is held by them. */
export function stuckThrough({ shape, sides }: Stack, { from, to }: Mate): readonly string[] {
  return shape.net.glue.flatMap((mate) => {
    const isSame = mate.to === to && mate.from !== from;
    return isSame && sides.of(to, mate.from) === sides.of(to, from) ? [mate.from] : [];
  });
}

function lieTogether({ sides }: Stack, first: string, second: string): boolean {
  return sides.of(first, second) !== undefined;
}
