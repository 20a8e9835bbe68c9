import { Length } from '../../measure/length.ts';
import { roundMillimeters } from '../../measure/round.ts';
import type { Size } from '../../measure/size.ts';
import { MISS } from '../../project/drawn/path-points.ts';
import type { Point2 } from '../flat-polygon.ts';
import type { FlatPoint, NamedOutline } from '../net.ts';

/** What a circle is; so is a square whose corners meet. */
export const CIRCLE: Required<NamedOutline> = {
  name: 'circle',
  across: true,
  round: true,
  lengths: {},
  counts: {},
};

/** Straight stretches that stand for a quarter of a circle or an oval; every point lies exactly on it. */
const QUARTER_STRETCHES = 32;

/**
 * The ellipse that fills a size, clockwise from its left. The circle's rational points, ((1 − t²)/(1 + t²),
 * 2t/(1 + t²)), stretched both ways, keep every coordinate exact.
 */
export function ellipseIn({ width, height }: Size): FlatPoint[] {
  const [across, down] = [width.half(), height.half()];
  const unit = (step: number): readonly [along: number, off: number, of: number] => [
    QUARTER_STRETCHES ** 2 - step ** 2,
    2 * QUARTER_STRETCHES * step,
    QUARTER_STRETCHES ** 2 + step ** 2,
  ];
  const steps = Array.from({ length: QUARTER_STRETCHES }, (_, step) => unit(step));
  const at = (x: number, y: number, of: number): FlatPoint => ({
    x: across.plus(across.times(x, of)),
    y: down.plus(down.times(y, of)),
  });
  return [
    ...steps.map(([along, off, of]) => at(-along, -off, of)),
    ...steps.map(([along, off, of]) => at(off, -along, of)),
    ...steps.map(([along, off, of]) => at(along, off, of)),
    ...steps.map(([along, off, of]) => at(-off, along, of)),
  ];
}

/**
 * Points of an arc, clockwise as drawn, from one angle to another; `scale` is how many millimeters a unit of it will be.
 * They lie so near one another that no scissors follow better, and one of them in its middle.
 */
export function arcRound(
  center: Point2,
  radius: number,
  [from, to]: readonly [number, number],
  scale: number,
): Point2[] {
  const widest = 2 * Math.acos(Math.max(0.5, 1 - MISS / (radius * scale)));
  const stretches = 2 * Math.ceil((to - from) / 2 / widest);
  return Array.from({ length: stretches + 1 }, (_, index) => {
    const angle = from + ((to - from) * index) / stretches;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
}

/** A point in millimeters, to a ten-thousandth of one: for what no fraction of a size tells. */
function nearPoint(x: number, y: number): FlatPoint {
  return { x: roundMillimeters(x, 10_000), y: roundMillimeters(y, 10_000) };
}

/** Points in millimeters round a middle of their own, as large as a size holds them, and in its middle. */
export function fittedInto({ width, height }: Size, points: readonly Point2[]): FlatPoint[] {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(width.mm / (right - left), height.mm / (bottom - top));
  // What reaches an edge of the size ends on it, and not a hair before.
  const along = (value: number, least: number, most: number, room: Length): Length => {
    const spare = (room.mm - (most - least) * scale) / 2;
    if (spare < HAIR && value - least < HAIR) return Length.zero;
    if (spare < HAIR && most - value < HAIR) return room;
    return nearPoint(spare + (value - least) * scale, 0).x;
  };
  return points.map(({ x, y }) => ({ x: along(x, left, right, width), y: along(y, top, bottom, height) }));
}

/** Millimeters that only a rounding in the last place makes. */
const HAIR = 1e-9;
