import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dotGrid, hatchLines, type Segment, without } from '../../src/drawing/region.ts';
import { roomiestSpot } from '../../src/drawing/visible.ts';
import { contains } from '../../src/shape/flat-polygon.ts';

const length = ([from, to]: Segment): number => Math.hypot(to.x - from.x, to.y - from.y);
const total = (segments: readonly Segment[]): number => segments.reduce((sum, each) => sum + length(each), 0);

/** An L of 30 × 40 with a notch of 20 × 25: area 700. */
const L = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 25 },
  { x: 30, y: 25 },
  { x: 30, y: 40 },
  { x: 0, y: 40 },
];
const AREA = 10 * 25 + 30 * 15;

describe('hatching', () => {
  it.each([0, 30, 90, 135])('covers the area once: length times spacing, at %i°', (degrees) => {
    const spacing = 0.05;
    expect(total(hatchLines(L, spacing, degrees)) * spacing).toBeCloseTo(AREA, 0);
  });

  it('stays inside', () => {
    for (const [from, to] of hatchLines(L, 1.6, 135))
      expect(contains(L, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 })).toBe(true);
  });

  it('dots the inside alone, as densely as asked', () => {
    const dots = dotGrid(L, 1, 0.01);
    expect(dots.every((dot) => contains(L, dot))).toBe(true);
    expect(dots.length * 0.75).toBeGreaterThan(AREA * 0.92);
    expect(dots.length * 0.75).toBeLessThan(AREA * 1.08);
  });
});

describe('taking stretches out of a stretch', () => {
  const segment: Segment = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
  ];
  const on = (from: number, to: number): Segment => [
    { x: from, y: 0 },
    { x: to, y: 0 },
  ];

  it('leaves the rest', () => {
    expect(without(segment, [on(2, 4), on(9, 12)])).toEqual([on(0, 2), on(4, 9)]);
    expect(without(segment, [on(12, -1)])).toEqual([]);
    expect(without(segment, [])).toEqual([segment]);
  });

  it('minds neither parallels nor crossings nor what only touches the end', () => {
    const parallel: Segment = [
      { x: 0, y: 1 },
      { x: 10, y: 1 },
    ];
    const crossing: Segment = [
      { x: 5, y: -5 },
      { x: 5, y: 5 },
    ];
    expect(without(segment, [parallel, crossing, on(10, 20)])).toEqual([segment]);
  });

  it('keeps as much as is not covered, whatever the slope', () => {
    const share = fc.integer({ min: -10, max: 110 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.array(fc.tuple(share, share)), (degrees, cuts) => {
        const way = { x: Math.cos(degrees), y: Math.sin(degrees) };
        const at = (distance: number): { x: number; y: number } => ({
          x: way.x * distance,
          y: way.y * distance,
        });
        const left = without(
          [at(0), at(100)],
          cuts.map(([a, b]) => [at(a), at(b)] as const),
        );
        const covered = (middle: number): boolean =>
          cuts.some(([a, b]) => Math.min(a, b) < middle && middle < Math.max(a, b));
        const free = Array.from({ length: 100 }, (_, index) => index + 0.5).filter((each) => !covered(each));
        expect(total(left)).toBeCloseTo(free.length, 6);
      }),
      { seed: 11 },
    );
  });
});

describe('the roomiest spot', () => {
  it('is seen and far from every edge', () => {
    const square = (from: number, to: number): { x: number; y: number }[] => [
      { x: from, y: from },
      { x: to, y: from },
      { x: to, y: to },
      { x: from, y: to },
    ];
    const spot = roomiestSpot(square(0, 60), [square(10, 60)], []);
    expect(spot?.clearance).toBeCloseTo(5, 0);
    expect(spot && contains(square(10, 60), spot.at)).toBe(false);
    expect(roomiestSpot(square(0, 60), [square(-1, 61)], [])).toBeUndefined();
  });
});
