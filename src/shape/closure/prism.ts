import type { Length } from '../../measure/length.ts';
import { roundMillimeters } from '../../measure/round.ts';
import type { Point2 } from '../flat-polygon.ts';
import type { Net } from '../net.ts';
import { apothem } from '../regular-polygon.ts';
import { cornersOf, reachFrom, type Tube, tubesOf } from '../tube.ts';
import { sideWidth } from './seam.ts';

/** Room between walls that are all alike, three, five or more of them: a regular polygon from above. */
export type Prism = {
  readonly sides: number;
  readonly side: Length;
  /** How far its walls run, from end to end. */
  readonly run: Length;
  readonly lines: Tube['lines'];
};

/** The prism of a net; undefined where its walls are no such ring, where they are four, or where it goes over another sheet. */
export function prismOf(net: Net): Prism | undefined {
  const tube = tubesOf(net).find((each) => isRegular(net, each));
  if (!tube || net.takes) return undefined;
  const { lines, sides, walls } = tube;
  const [wall = tube.tab] = walls;
  const run = reachFrom(lines === 'upright' ? 'across' : 'upright', net, wall);
  return { sides: sides.length, side: sideWidth(net, tube, 0), run, lines };
}

function isRegular(net: Net, tube: Tube): boolean {
  const { length } = tube.sides;
  if (length < 3 || length === 4) return false;
  const side = sideWidth(net, tube, 0);
  return (
    tube.sides.every((_, index) => sideWidth(net, tube, index).equals(side)) &&
    cornersOf(tube).every(({ fold }) => Math.abs(fold.angle - 360 / length) < 1)
  );
}

/** The circle that just goes in between the walls. */
export function roundWithin({ side, sides }: Prism): Length {
  return apothem(side, sides).times(2);
}

/**
 * How long a rectangle can be that lies in the polygon and is so wide: with one of its sides along a wall, or square to a
 * line from corner to corner. No other turn of it is better (tried for six and eight sides at every degree).
 */
export function longestWithin({ side, sides }: Prism, width: Length): Length {
  const radius = side.mm / (2 * Math.sin(Math.PI / sides));
  const lies = [0, Math.PI / sides].map((turn) => cornersAround(radius, sides, turn));
  const upright = (across: number): number =>
    Math.max(...lies.map((corners) => heightOver(corners, across / 2)));
  const along = longestBy(upright, width.mm, radius * 2);
  return roundMillimeters(Math.max(upright(width.mm), along), 1000);
}

/** The corners of a regular polygon round its middle, alike on both sides of the upright line through that. */
function cornersAround(radius: number, sides: number, turn: number): readonly Point2[] {
  return Array.from({ length: sides }, (_, index) => {
    const angle = turn + (2 * Math.PI * index) / sides;
    return { x: radius * Math.sin(angle), y: radius * Math.cos(angle) };
  });
}

/** How high the polygon is from its lower to its upper edge at so much from its middle; nothing beyond its edges. */
function heightOver(corners: readonly Point2[], x: number): number {
  const crossings = corners.flatMap((from, index) => {
    const to = corners[(index + 1) % corners.length] ?? from;
    const share = (x - from.x) / (to.x - from.x);
    return Number.isFinite(share) && share >= 0 && share <= 1 ? [from.y + share * (to.y - from.y)] : [];
  });
  return crossings.length > 1 ? Math.max(...crossings) - Math.min(...crossings) : 0;
}

/** The widest across at which the polygon is still so high: it only gets lower from its middle out. */
function longestBy(heightAt: (across: number) => number, height: number, most: number): number {
  let [low, high] = [0, most];
  if (heightAt(low) < height) return 0;
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (heightAt(middle) >= height) low = middle;
    else high = middle;
  }
  return low;
}

/** Of a reach of a meter, to a millionth of a millimeter. */
const HALVINGS = 40;
