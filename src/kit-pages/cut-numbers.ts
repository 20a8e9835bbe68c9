import { badgeRadius } from '../drawing/canvas.ts';
import type { DrawnBox } from '../drawing/region.ts';
import type { Point2 } from '../shape/flat-polygon.ts';

/** A cut of a step, from where its blade starts, in millimeters of paper. */
type NumberedCut = { readonly number: number; readonly line: readonly [Point2, Point2] };

type PlacedNumber = { readonly number: number; readonly at: Point2; readonly size: number };

/** Heights of the lettering; small ones where pieces are. */
const SIZES = [2.5, 1.7];
/** As far along a cut as its number stands where nothing is in its way. */
const INSET = 2.6;
const STEP = 0.5;

/** Where the number of each cut stands: on the cut, as near its start as it covers no label and no other number. */
export function placeNumbers(
  cuts: readonly NumberedCut[],
  labels: readonly DrawnBox[],
): readonly PlacedNumber[] {
  const placed: PlacedNumber[] = [];
  for (const cut of cuts) {
    const places = placesOn(cut);
    const [first] = places;
    const free = places.find((place) => isFree(place, labels, placed)) ?? first;
    if (free) placed.push(free);
  }
  return placed;
}

function placesOn({ number, line: [start, end] }: NumberedCut): readonly PlacedNumber[] {
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  const along = Array.from({ length: Math.ceil(length / STEP) }, (_, index) => index * STEP);
  const insets = [Math.min(INSET, length / 2), ...along];
  return SIZES.flatMap((size) =>
    insets.map((inset) => {
      const share = inset / length;
      const at = { x: start.x + (end.x - start.x) * share, y: start.y + (end.y - start.y) * share };
      return { number, at, size };
    }),
  );
}

function isFree(place: PlacedNumber, labels: readonly DrawnBox[], placed: readonly PlacedNumber[]): boolean {
  const { at } = place;
  const reach = reachOf(place);
  return (
    labels.every((box) => awayFrom(box, at) >= reach) &&
    placed.every((other) => Math.hypot(other.at.x - at.x, other.at.y - at.y) >= reach + reachOf(other))
  );
}

function reachOf({ number, size }: PlacedNumber): number {
  return badgeRadius(String(number), size);
}

function awayFrom({ left, top, right, bottom }: DrawnBox, { x, y }: Point2): number {
  return Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom));
}
