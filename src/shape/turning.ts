import { Length } from '../measure/length.ts';
import { roundOutward } from '../measure/round.ts';
import type { Size } from '../measure/size.ts';
import type { FlatPoint } from './net.ts';

/** How far a turned rectangle reaches from its centre, and its corners from there (clockwise from its own top left). */
type Reach = {
  readonly halfWidth: Length;
  readonly halfHeight: Length;
  readonly corners: readonly FlatPoint[];
};

/**
 * A rectangle turned clockwise about its centre. Quarter turns are exact; any other turn is rounded outward to
 * 1/1000 mm, so that no overhang is ever lost to rounding. With rounded corners the reach is that of the arcs; the
 * corners are those before rounding.
 */
export function turned(size: Size, degrees: number, radius: Length = Length.zero): Reach {
  const [x, y] = [size.width.half(), size.height.half()];
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const across = quarters % 2 === 0;
    return {
      halfWidth: across ? x : y,
      halfHeight: across ? y : x,
      corners: signs().map(([sx, sy]) => quarterTurn({ x: x.times(sx), y: y.times(sy) }, quarters)),
    };
  }
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const round = Length.min(radius, x, y);
  const [straightX, straightY] = [x.minus(round).mm, y.minus(round).mm];
  const reach = (a: number, b: number): Length =>
    roundOutward(straightX * Math.abs(a) + straightY * Math.abs(b), 1000).plus(round);
  return {
    halfWidth: reach(cos, sin),
    halfHeight: reach(sin, cos),
    corners: signs().map(([sx, sy]) => ({
      x: roundOutward(sx * x.mm * cos - sy * y.mm * sin, 1000),
      y: roundOutward(sx * x.mm * sin + sy * y.mm * cos, 1000),
    })),
  };
}

function signs(): [number, number][] {
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
}

/** A point turned clockwise about the origin, exactly. */
export function quarterTurn({ x, y }: FlatPoint, quarters: number): FlatPoint {
  const turns = ((quarters % 4) + 4) % 4;
  if (turns === 0) return { x, y };
  return quarterTurn({ x: y.times(-1), y: x }, turns - 1);
}
