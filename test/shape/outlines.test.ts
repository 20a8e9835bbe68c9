import { union } from 'polyclip-ts';
import { ShapeUtils, Vector2 } from 'three';
import { describe, expect, it } from 'vitest';
import { buildShapes } from '../../src/shape/build.ts';
import { edgesOf } from '../../src/shape/flat-polygon.ts';
import type { FlatPoint, Net } from '../../src/shape/net.ts';
import { sheetWith } from '../proof/sheet-with.ts';
import { blamed, findingsOf, workspaceOf } from '../proof/workspace.ts';

const INCH = 25.4;

/** The net of a piece of these words, which must be right. */
function netOf(words: string): Net {
  const sheet = sheetWith({ pieces: `leaf: { stock: cream, ${words} }` });
  expect(findingsOf(sheet)).toEqual([]);
  const [project] = workspaceOf(sheet).projects;
  const net = project && buildShapes(project).nets.get('leaf');
  if (!net) throw new Error(`no net of ${words}`);
  return net;
}

function outlineOf({ panels: [panel] }: Net): readonly FlatPoint[] {
  return panel?.outline ?? [];
}

/** three.js: a general-purpose library. */
function areaOf(points: readonly FlatPoint[]): number {
  return Math.abs(ShapeUtils.area(points.map(({ x, y }) => new Vector2(x.mm, y.mm))));
}

function lengthOf(points: readonly FlatPoint[]): number {
  return edgesOf(points).reduce((sum, [a, b]) => sum + Math.hypot(a.x.mm - b.x.mm, a.y.mm - b.y.mm), 0);
}

/**
 * Area and length in inches, by formulas: of the circle; of the regular polygon by its circumradius. What stands for an
 * arc lies within it, so that the area is up to 0.2 % short, and the length up to 0.1 %.
 */
const FORMULAS: readonly (readonly [words: string, area: number, length: number])[] = [
  ['cut: 3 x 3, shape: circle', Math.PI * 1.5 ** 2, Math.PI * 3],
  ['cut: 3 x 3, shape: polygon', 6 * 0.5 * 1.5 ** 2 * Math.sin(Math.PI / 3), 6 * 1.5],
  ['cut: 3 x 3, shape: polygon, sides: 4', 9, 12],
  ['cut: 3 x 3, shape: polygon, sides: 3', (Math.sqrt(3) / 4) * 9, 9],
  ['cut: 3 x 3, shape: polygon, sides: 8', 2 * (Math.SQRT2 - 1) * 9, 8 * 3 * (Math.SQRT2 - 1)],
];

describe('an outline', () => {
  it.each(FORMULAS)('of %s has the area and the length of its formula', (words, area, length) => {
    const points = outlineOf(netOf(words));
    const [areaRatio, lengthRatio] = [areaOf(points) / INCH ** 2 / area, lengthOf(points) / INCH / length];
    expect(areaRatio).toBeLessThan(1.00001);
    expect(areaRatio).toBeGreaterThan(0.998);
    expect(lengthRatio).toBeLessThan(1.00001);
    expect(lengthRatio).toBeGreaterThan(0.999);
  });

  // polyclip-ts is a general-purpose library: a ring that crosses itself comes back as several, or with another area.
  it.each(FORMULAS)(
    'of %s is closed and does not cross itself, and the rest of its sheet is waste',
    (words) => {
      const { size, waste, ...net } = netOf(words);
      const ring = (points: readonly FlatPoint[]): [number, number][] =>
        points.map(({ x, y }) => [x.mm, y.mm]);
      expect(union([ring(outlineOf(net as Net))]).map((polygon) => polygon.length)).toEqual([1]);
      const parts = [outlineOf(net as Net), ...waste];
      const whole = size.width.mm * size.height.mm;
      expect(parts.reduce((sum, part) => sum + areaOf(part), 0)).toBeCloseTo(whole, 3);
      const [first, ...rest] = parts.map((part) => [ring(part)]);
      if (first) expect(union(first, ...rest)).toHaveLength(1);
    },
  );

  it.each([
    [
      'cut: 3 x 2, shape: circle',
      '2',
      'leaf is 3 in wide and 2 in high, and a circle is as wide as it is high',
    ],
    ['cut: 3 x 3, shape: polygon, sides: 2', '2', 'leaf has 2 sides, and a polygon has from 3 to 24'],
    ['cut: 3 x 3, shape: circle, sides: 5', '5', '"sides" says nothing of a circle'],
    ['cut: 3 x 3, sides: 5', '5', '"sides" says nothing of a rectangle'],
    ['cut: 3 x 3, shape: cirkle', 'cirkle', 'there is no shape "cirkle"'],
    [
      'cut: 3 x 3, shape: circle, corners: 1/2',
      '1/2',
      '"corners" rounds those of a rectangle, and this is a circle',
    ],
    [
      'cut: 3 x 3, shape: circle, score: [{ from: left, at: [1] }]',
      'circle',
      '"shape: circle" is for a flat piece, and this one has score lines',
    ],
  ])('is not made of %s', (words, blames, message) => {
    const found = findingsOf(sheetWith({ pieces: `leaf: { stock: cream, ${words} }` }));
    expect(found.map((each) => [blamed(each), each.message])).toEqual([[blames, message]]);
  });
});
