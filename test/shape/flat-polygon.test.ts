import fc from 'fast-check';
import { intersection } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { commonPart } from '../../src/shape/common-parts.ts';
import { areaOf, distanceBetween, distanceOutside, type Point2 } from '../../src/shape/flat-polygon.ts';

/** A polygon with its corners at rising angles round a middle: convex or not, its sides never cross. */
const star = fc
  .tuple(
    fc.array(fc.integer({ min: 4, max: 40 }), { minLength: 4, maxLength: 9 }),
    fc.integer({ min: -20, max: 20 }),
    fc.integer({ min: -20, max: 20 }),
  )
  .map(([radii, x, y]): Point2[] =>
    radii.map((radius, index) => {
      const angle = (2 * Math.PI * index) / radii.length;
      return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
    }),
  );

const square = (from: number, to: number): Point2[] => [
  { x: from, y: from },
  { x: to, y: from },
  { x: to, y: to },
  { x: from, y: to },
];

describe('what two polygons share', () => {
  // polyclip-ts is a general-purpose library for the same question.
  it('has the area that polyclip-ts finds', () => {
    const ring = (points: readonly Point2[]): [number, number][] => points.map(({ x, y }) => [x, y]);
    fc.assert(
      fc.property(star, star, (first, second) => {
        const parts = intersection([ring(first)], [ring(second)]);
        const area = parts.flat().reduce((sum, part) => sum + signed(part), 0);
        expect(commonPart(first, second).area).toBeCloseTo(area, 6);
      }),
      { seed: 10, numRuns: 300 },
    );
  });

  it('reaches as far as it does', () => {
    expect(commonPart(square(0, 4), square(1, 9))).toEqual({ area: 9, width: 3, height: 3 });
    expect(commonPart(square(0, 4), square(4, 9)).area).toBe(0);
    expect(commonPart(square(0, 4), square(5, 9))).toEqual({ area: 0, width: 0, height: 0 });
  });
});

/** Outer rings run anticlockwise there, holes the other way. */
function signed(ring: readonly (readonly [number, number])[]): number {
  return ring.reduce((sum, [x, y], index) => {
    const [a, b] = ring[(index + 1) % ring.length] ?? [x, y];
    return sum + (x * b - a * y) / 2;
  }, 0);
}

describe('how far a point lies outside a polygon', () => {
  it.each<[string, Point2, number]>([
    ['within', { x: 2, y: 3 }, 0],
    ['on a side', { x: 4, y: 2 }, 0],
    ['on a corner', { x: 0, y: 0 }, 0],
    ['beside a side', { x: 6, y: 2 }, 2],
    ['off a corner', { x: 7, y: 8 }, 5],
  ])('%s', (_, point, distance) => {
    expect(distanceOutside(point, square(0, 4))).toBeCloseTo(distance, 9);
  });

  it('is the least distance from many points of it, and none within', () => {
    const point = fc.record({ x: fc.integer({ min: -60, max: 60 }), y: fc.integer({ min: -60, max: 60 }) });
    fc.assert(
      fc.property(star, point, (polygon, at) => {
        const near = [at, { ...at, x: at.x + 0.01 }, { ...at, y: at.y + 0.01 }];
        const isInside = commonPart(polygon, near).area > areaOf(near) / 2;
        const along = polygon.flatMap((from, index) => {
          const to = polygon[(index + 1) % polygon.length] ?? from;
          return Array.from({ length: 400 }, (_, step) =>
            Math.hypot(
              from.x + ((to.x - from.x) * step) / 400 - at.x,
              from.y + ((to.y - from.y) * step) / 400 - at.y,
            ),
          );
        });
        const least = Math.min(...along);
        const distance = distanceOutside(at, polygon);
        if (least > 0.2) expect(distance === 0).toBe(isInside);
        if (distance > 0) expect(Math.abs(distance - least)).toBeLessThan(0.2);
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});

describe('how near two polygons come', () => {
  /** Each corner of one to each side of the other, one by one: the whole question, with nothing left out. */
  const slowly = (first: readonly Point2[], second: readonly Point2[]): number => {
    const toSide = (p: Point2, a: Point2, b: Point2): number => {
      const [x, y] = [b.x - a.x, b.y - a.y];
      const share = Math.max(0, Math.min(1, ((p.x - a.x) * x + (p.y - a.y) * y) / (x * x + y * y)));
      return Math.hypot(p.x - a.x - x * share, p.y - a.y - y * share);
    };
    const each = (points: readonly Point2[], [...sides]: readonly Point2[]): number[] =>
      points.flatMap((p) => sides.map((a, index) => toSide(p, a, sides[(index + 1) % sides.length] ?? a)));
    return Math.min(...each(first, second), ...each(second, first));
  };

  it('is the least of all corners and sides where they are apart', () => {
    fc.assert(
      fc.property(star, star, (first, second) => {
        const away = second.map(({ x, y }) => ({ x: x + 130, y: y + 10 }));
        expect(distanceBetween(first, away)).toBeCloseTo(slowly(first, away), 9);
      }),
    );
  });

  it('is nothing where their sides cross', () => {
    expect(distanceBetween(square(0, 10), square(5, 15))).toBe(0);
    expect(distanceBetween(square(0, 10), square(2, 8))).toBe(2);
  });
});
