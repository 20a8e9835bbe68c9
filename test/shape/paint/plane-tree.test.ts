import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  farthestFirst,
  type PlaneFace,
  planeTree,
  type StackedPair,
} from '../../../src/shape/paint/plane-tree.ts';
import { cross, dot, length, minus, type Point3, plus, scaled, unit } from '../../../src/shape/space.ts';

const Z: Point3 = { x: 0, y: 0, z: 1 };

/** A face of some corners, all its sides drawn. */
function faceOf(panel: number, corners: readonly Point3[], level = 0): PlaneFace {
  const [a, b, c] = corners;
  if (!a || !b || !c) throw new Error('a face has three corners at least');
  const normal = unit(cross(minus(b, a), minus(c, a)));
  const sides = corners.map(() => true);
  return {
    corners,
    normal,
    offset: dot(normal, a),
    sides,
    panel,
    level,
    outside: '#ffffff',
    inside: '#ffffff',
  };
}

/** A square of 20 mm about a middle, spanned by two ways of length 1. */
function square(panel: number, middle: Point3, right: Point3, up: Point3, level = 0): PlaneFace {
  const corner = (x: number, y: number): Point3 => plus(middle, plus(scaled(right, x), scaled(up, y)));
  return faceOf(panel, [corner(-10, -10), corner(10, -10), corner(10, 10), corner(-10, 10)], level);
}

const [X, Y] = [
  { x: 1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
];
const level = (panel: number, z: number): PlaneFace => square(panel, { x: 0, y: 0, z }, X, Y);

function orderOf(
  faces: readonly PlaneFace[],
  towards: Point3,
  stacked: readonly StackedPair[] = [],
): number[] {
  return farthestFirst(planeTree(faces, { near: 0.5, stacked }), towards).map(({ panel }) => panel);
}

/** Half the length of the sum of its corners' cross products. */
function areaOf({ corners }: PlaneFace): number {
  const sum = corners.reduce(
    (total, a, index) => plus(total, cross(a, corners[(index + 1) % corners.length] ?? a)),
    {
      x: 0,
      y: 0,
      z: 0,
    },
  );
  return length(sum) / 2;
}

describe('a tree of planes', () => {
  it('has nothing of nothing', () => {
    expect(farthestFirst(planeTree([], { near: 0.5, stacked: [] }), Z)).toEqual([]);
  });

  it('gives the farthest first, from either side', () => {
    const faces = [level(0, 5), level(1, -5), level(2, 0)];
    expect(orderOf(faces, Z)).toEqual([1, 2, 0]);
    expect(orderOf(faces, scaled(Z, -1))).toEqual([0, 2, 1]);
  });

  it('stacks by rule what lies nearer than paper is thick, wherever it lies', () => {
    const faces = [level(0, 0.2), level(1, 0)];
    expect(orderOf(faces, Z)).toEqual([1, 0]);
    expect(orderOf(faces, Z, [[0, 1, 1]])).toEqual([0, 1]);
    expect(orderOf(faces, scaled(Z, -1), [[0, 1, 1]])).toEqual([1, 0]);
  });

  it('reads a rule from either of its panels, also where they face opposite ways', () => {
    const back = square(1, { x: 0, y: 0, z: 0 }, scaled(X, -1), Y);
    for (const faces of [
      [level(0, 0), back],
      [back, level(0, 0)],
    ]) {
      expect(orderOf(faces, Z, [[0, 1, 1]])).toEqual([0, 1]);
      // What lies on the outer side of a face that looks down lies under it.
      expect(orderOf(faces, Z, [[1, 0, 1]])).toEqual([0, 1]);
      expect(orderOf(faces, Z, [[1, 0, -1]])).toEqual([1, 0]);
      expect(orderOf(faces, Z, [[0, 1, -1]])).toEqual([1, 0]);
    }
  });

  it('has what is stuck on a panel over it, in order', () => {
    const [panel, first, second] = [0, 1, 2].map((on) => square(0, { x: 0, y: 0, z: 0 }, X, Y, on));
    const tree = planeTree(
      [second, panel, first].flatMap((face) => face ?? []),
      { near: 0.5, stacked: [] },
    );
    expect(farthestFirst(tree, Z).map((face) => face.level)).toEqual([0, 1, 2]);
    expect(farthestFirst(tree, scaled(Z, -1)).map((face) => face.level)).toEqual([2, 1, 0]);
  });
});

describe('a face that is cut', () => {
  it('keeps its edges, and has none where it was cut, also from corner to corner', () => {
    // A wall across the diagonal of a square: two triangles, each with two of the square's four sides.
    const diagonal = unit({ x: 1, y: 1, z: 0 });
    const wall = square(1, { x: 0, y: 0, z: 0 }, scaled(diagonal, 2), Z);
    const small = faceOf(0, [
      { x: -5, y: -5, z: 3 },
      { x: 5, y: -5, z: 3 },
      { x: 5, y: 5, z: 3 },
      { x: -5, y: 5, z: 3 },
    ]);
    const parts = farthestFirst(planeTree([wall, small], { near: 0.5, stacked: [] }), Z).filter(
      ({ panel }) => panel === 0,
    );
    expect(parts.map(({ corners, sides }) => [corners.length, sides.filter(Boolean).length])).toEqual([
      [3, 2],
      [3, 2],
    ]);
  });

  it('has parts as large together as it was, whatever cuts it', () => {
    const way = fc
      .tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 9 }))
      .map(([x, y, z]) => unit({ x, y, z }));
    const faces = fc.array(fc.tuple(way, fc.integer({ min: -8, max: 8 })), { minLength: 2, maxLength: 7 });
    fc.assert(
      fc.property(faces, way, (planes, towards) => {
        const whole = planes.map(([normal, offset], panel) => {
          const right = unit(cross(normal, Math.abs(normal.x) < 0.9 ? X : Y));
          return square(panel, scaled(normal, offset), right, cross(normal, right));
        });
        const parts = farthestFirst(planeTree(whole, { near: 0.01, stacked: [] }), towards);
        for (const { panel } of whole) {
          const own = parts.filter((part) => part.panel === panel);
          expect(own.reduce((sum, part) => sum + areaOf(part), 0)).toBeCloseTo(400, 6);
        }
      }),
      { seed: 411, numRuns: 60 },
    );
  });
});
