import { Length } from '../measure/length.ts';
import { roundOutward } from '../measure/round.ts';
import type { Size } from '../measure/size.ts';
import { type RoundedCorners, radiiOf } from '../project/corners.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { FlatPoint } from './net.ts';
import { fitRadii } from './rounding.ts';

/** How far a turned shape reaches from its center, and its corners from there (clockwise from its own top left). */
export type Reach = Readonly<Record<Edge, Length>> & { readonly corners: readonly FlatPoint[] };

/**
 * A rectangle turned clockwise about its center. Quarter turns are exact; any other turn is rounded outward to
 * 1/1000 mm, so that no overhang is ever lost to rounding. With rounded corners the reach is that of the arcs; the
 * corners are those before rounding.
 */
export function turned(size: Size, degrees: number, rounded?: RoundedCorners): Reach {
  const [x, y] = [size.width.half(), size.height.half()];
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const across = quarters % 2 === 0;
    return {
      ...evenly(across ? x : y, across ? y : x),
      corners: signs().map(([sx, sy]) => quarterTurn({ x: x.times(sx), y: y.times(sy) }, quarters)),
    };
  }
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const { width, height } = size;
  const radii = fitRadii(radiiOf(rounded), [width, height, width, height]);
  // The farthest of the four arcs, each round a middle of its own.
  const reach = (a: number, b: number): Length => {
    const [first, ...others] = signs().map(([sx, sy], index) => {
      const radius = radii[index] ?? Length.zero;
      const [across, down] = [sx * x.minus(radius).mm, sy * y.minus(radius).mm];
      return roundOutward(across * a + down * b, 1000).plus(radius);
    });
    return first ? Length.max(first, ...others) : Length.zero;
  };
  return {
    left: reach(-cos, sin),
    right: reach(cos, -sin),
    top: reach(-sin, -cos),
    bottom: reach(sin, cos),
    corners: signs().map(([sx, sy]) => ({
      x: roundOutward(sx * x.mm * cos - sy * y.mm * sin, 1000),
      y: roundOutward(sx * x.mm * sin + sy * y.mm * cos, 1000),
    })),
  };
}

/** A circle, which reaches as far however it is turned. */
export function turnedCircle(size: Size, degrees: number): Reach {
  return { ...turned(size, degrees), ...evenly(size.width.half(), size.height.half()) };
}

function evenly(across: Length, upright: Length): Readonly<Record<Edge, Length>> {
  return { left: across, right: across, top: upright, bottom: upright };
}

/** An outline turned about the middle of its box, by points from the left and top of that; rounded outward likewise. */
export function turnedOutline(points: readonly FlatPoint[], size: Size, degrees: number): Reach {
  const { corners } = turned(size, degrees);
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [halfWidth, halfHeight] = [size.width.mm / 2, size.height.mm / 2];
  const there = points.map((point) => {
    const [x, y] = [point.x.mm - halfWidth, point.y.mm - halfHeight];
    return { x: x * cos - y * sin, y: x * sin + y * cos };
  });
  const farthest = (along: (point: { x: number; y: number }) => number): Length =>
    roundOutward(Math.max(...there.map(along)), 1000);
  return {
    left: farthest(({ x }) => -x),
    right: farthest(({ x }) => x),
    top: farthest(({ y }) => -y),
    bottom: farthest(({ y }) => y),
    corners,
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
