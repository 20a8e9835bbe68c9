import { union } from 'polyclip-ts';
import { ShapeUtils, Vector2 } from 'three';
import { describe, expect, it } from 'vitest';
import { buildShapes } from '../../src/shape/build.ts';
import { edgesOf } from '../../src/shape/flat-polygon.ts';
import type { FlatPoint, Net } from '../../src/shape/net.ts';
import type { Layer } from '../../src/shape/shapes.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { sheetWith } from '../proof/sheet-with.ts';
import { blamed, findingsOf, workspaceOf } from '../proof/workspace.ts';

const INCH = 25.4;

/** The net of a piece of these words, which must be right. */
function netOf(words: string): Net {
  const sheet = sheetWith({ pieces: `leaf: { stock: cream, ${words} }` });
  expect(findingsOf(sheet)).toEqual([]);
  const [project] = workspaceOf(sheet).projects;
  const net = project && ownNet(buildShapes(project).nets, 'leaf');
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
 * The length of an ellipse by Ramanujan's second formula (Modular Equations and Approximations to π, 1914), π (a + b)
 * (1 + 3h / (10 + √(4 − 3h))): short by about 3 h⁵ / 2¹⁷ of it, one part in 300,000 where one half axis is five times the
 * other.
 */
function ellipseLength(a: number, b: number): number {
  const h = ((a - b) / (a + b)) ** 2;
  return Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
}

/** The circular segment of a chord and a rise: r = (c² / 4 + h²) / 2h, area r² (θ − sin θ) / 2, arc r θ. */
function segment(chord: number, rise: number): { readonly area: number; readonly length: number } {
  const radius = (chord ** 2 / 4 + rise ** 2) / (2 * rise);
  const angle = 2 * Math.asin(chord / 2 / radius);
  return { area: (radius ** 2 * (angle - Math.sin(angle))) / 2, length: radius * angle };
}

/** A regular polygon, and on each of its sides a circular segment that is a half circle. */
function scallopedCircle(across: number, scallops: number): readonly [area: number, length: number] {
  const half = Math.PI / scallops;
  const valley = across / 2 / (Math.cos(half) + Math.sin(half));
  const side = 2 * valley * Math.sin(half);
  const { area, length } = segment(side, side / 2);
  return [scallops * ((valley ** 2 * Math.sin(2 * half)) / 2 + area), scallops * length];
}

/**
 * Area and length in inches, by formulas: of the circle, the ellipse, the circular segment; of the regular polygon by its
 * circumradius. What stands for an arc lies within it, so that the area is up to 0.3 % short, and the length up to 0.3 %.
 */
const FORMULAS: readonly (readonly [words: string, area: number, length: number])[] = [
  ['cut: 3 x 2, shape: rectangle', 3 * 2, 2 * (3 + 2)],
  ['cut: 3 x 3, shape: circle', Math.PI * 1.5 ** 2, Math.PI * 3],
  ['cut: 3 x 3, shape: polygon', 6 * 0.5 * 1.5 ** 2 * Math.sin(Math.PI / 3), 6 * 1.5],
  ['cut: 3 x 3, shape: polygon, sides: 4', 9, 12],
  ['cut: 3 x 3, shape: polygon, sides: 3', (Math.sqrt(3) / 4) * 9, 9],
  ['cut: 3 x 3, shape: polygon, sides: 8', 2 * (Math.SQRT2 - 1) * 9, 8 * 3 * (Math.SQRT2 - 1)],
  ['cut: 3 x 2, shape: oval', Math.PI * 1.5 * 1, ellipseLength(1.5, 1)],
  ['cut: 5 x 1, shape: oval', Math.PI * 2.5 * 0.5, ellipseLength(2.5, 0.5)],
  ['cut: 3 x 3, shape: scalloped circle', ...scallopedCircle(3, 12)],
  ['cut: 2 x 2, shape: scalloped circle, scallops: 20', ...scallopedCircle(2, 20)],
  ['cut: 1 1/2 x 4, shape: banner, notch: 1/2', 6 - 0.375, 1.5 + 8 + 2 * Math.hypot(0.75, 0.5)],
  ['cut: 4 x 1 1/2, shape: banner', 6 - 0.5625, 1.5 + 8 + 2 * Math.hypot(0.75, 0.75)],
  // Half of 7/16 in is 7/32 in; 3/16 in is the mark of a ruler below it.
  ['cut: 7/16 x 2, shape: banner', 0.875 - 0.04101563, 0.4375 + 4 + 2 * Math.hypot(0.21875, 0.1875)],
  ['cut: 2 x 3, shape: arch', 4 + Math.PI / 2, 2 + 4 + Math.PI],
  ['cut: 2 x 3, shape: arch, rise: 1/2', 5 + segment(2, 0.5).area, 2 + 5 + segment(2, 0.5).length],
  // A quarter of 1 1/4 in is 5/16 in, which is a mark of a ruler.
  [
    'cut: 1 1/4 x 3, shape: tag',
    3.75 - 0.09765625,
    0.625 + 2 * 2.6875 + 1.25 + 2 * Math.hypot(0.3125, 0.3125),
  ],
  ['cut: 2 x 4, shape: tag, clip: 1/2', 8 - 0.25, 1 + 2 * 3.5 + 2 + 2 * Math.hypot(0.5, 0.5)],
];

describe('an outline', () => {
  it.each(FORMULAS)('of %s has the area and the length of its formula', (words, area, length) => {
    const points = outlineOf(netOf(words));
    const [areaRatio, lengthRatio] = [areaOf(points) / INCH ** 2 / area, lengthOf(points) / INCH / length];
    expect(areaRatio).toBeLessThan(1.00001);
    expect(areaRatio).toBeGreaterThan(0.997);
    expect(lengthRatio).toBeLessThan(1.00001);
    expect(lengthRatio).toBeGreaterThan(0.997);
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
    [
      'cut: 3 x 2, shape: scalloped circle',
      '2',
      'leaf is 3 in wide and 2 in high, and a scalloped circle is as wide as it is high',
    ],
    [
      'cut: 3 x 3, shape: scalloped circle, scallops: 4',
      '4',
      'leaf has 4 scallops, and fewer than 5 make no circle',
    ],
    [
      'cut: 1 x 1, shape: scalloped circle, scallops: 30',
      '30',
      'leaf has 30 scallops, which are less than 1/8 in wide each: too small to cut',
    ],
    [
      'cut: 1 x 4, shape: banner, notch: 4 1/4',
      '4 1/4',
      'the notch of leaf is 4 1/4 in, more than 3 7/8 in: it is 4 in long, and nothing would be left above the notch',
    ],
    [
      'cut: 2 x 4, shape: arch, rise: 1 1/4',
      '1 1/4',
      'the rise of leaf is 1 1/4 in, more than 1 in: more than half the width is no arc of a circle',
    ],
    [
      'cut: 2 x 4, shape: tag, clip: 1',
      '1',
      'the clip of leaf is 1 in, more than 15/16 in: the two cuts would meet in the middle of the upper edge',
    ],
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

/** The layer `leaf` on `base`. */
function layerOf(base: string, leaf: string): Layer {
  const pieces = `base: { stock: cream, ${base} }\nleaf: { stock: cream, on: base, ${leaf} }`;
  const [project] = workspaceOf(sheetWith({ pieces })).projects;
  const [layer] = project ? buildShapes(project).layers : [];
  if (!layer) throw new Error(`no layer of ${leaf}`);
  return layer;
}

describe('what shows of a base round a layer', () => {
  it.each([
    ['cut: 3 x 3, shape: circle', 'cut: 2 1/2 x 2 1/2, shape: circle'],
    ['cut: 3 x 3, shape: circle', 'cut: 2 1/2 x 2 1/2, shape: circle, turn: 30'],
    ['cut: 3 x 3, corners: 1 1/2', 'cut: 2 1/2 x 2 1/2, shape: circle'],
    ['cut: 3 x 3', 'cut: 2 1/2 x 2 1/2, shape: circle, turn: 45'],
    ['cut: 3 x 2', 'cut: 2 1/2 x 1 1/2, shape: tag'],
  ])('of %s under %s is the same at all sides', (base, leaf) => {
    const { reveals, border } = layerOf(base, leaf);
    for (const reveal of Object.values(reveals)) expect(reveal.mm).toBeCloseTo(INCH / 4, 6);
    expect(border).toBeUndefined();
  });

  it('is even round a polygon on another, though not at its corners', () => {
    // Two hexagons with inner circles of 3 and 2 1/2 in: an apothem is √3/2 of the radius.
    const across = (apothem: number): string => `${((apothem * 2) / Math.sqrt(3)).toFixed(6)} in`;
    const [outer, inner] = [across(3), across(2.5)];
    const { border, reveals } = layerOf(
      `cut: ${outer} x ${outer}, shape: polygon`,
      `cut: ${inner} x ${inner}, shape: polygon`,
    );
    expect(border?.isEven).toBe(true);
    expect(border?.least.mm).toBeCloseTo(INCH / 4, 3);
    expect(reveals.left.mm).toBeCloseTo(INCH / 2 / Math.sqrt(3), 3);
  });

  it('is least where two outlines are nearest', () => {
    const square = layerOf('cut: 3 x 3, shape: circle', 'cut: 2 x 2');
    expect(square.border?.isEven).toBe(false);
    const isNear = (mm = 0, inches: number): boolean => Math.abs(mm - inches * INCH) < 0.1;
    expect(isNear(square.border?.least.mm, 1.5 - Math.SQRT2)).toBe(true);
    const half = Math.PI / 12;
    const valley = 1.5 / (Math.cos(half) + Math.sin(half));
    const scalloped = layerOf('cut: 3 x 3, shape: scalloped circle', 'cut: 2 x 2, shape: circle');
    expect(isNear(scalloped.border?.least.mm, valley - 1)).toBe(true);
  });

  it.each([
    [
      'cut: 3 x 3, shape: circle',
      'cut: 2 1/4 x 2 1/4',
      'corner-overhang',
      'leaf fits base by its width and height, but passes its outline by 3/32 in',
    ],
    [
      'cut: 3 x 4, corners: 1/2',
      'cut: 2 7/8 x 3 7/8, shape: tag, clip: 1/16',
      'corner-overhang',
      'leaf fits base by its width and height, but passes its outline by 1/8 in',
    ],
    [
      'cut: 3 x 3, shape: circle',
      'cut: 3 1/4 x 3 1/4, shape: circle',
      'layer-overhang',
      'leaf is 3 1/4 in wide, 1/4 in more than base (3 in)',
    ],
    [
      'cut: 3 x 3, shape: circle',
      'cut: 2 1/16 x 2 1/16',
      'thin-reveal',
      'leaf leaves no more than 1/16 in of base to show where their outlines are nearest, too thin to look even',
    ],
  ])('of %s under %s is found wanting by %s', (base, leaf, rule, message) => {
    const pieces = `base: { stock: cream, ${base} }\nleaf: { stock: cream, on: base, ${leaf} }`;
    const found = findingsOf(sheetWith({ pieces })).filter(({ severity }) => severity !== 'note');
    expect(found.slice(0, 1).map((each) => [each.rule, each.message])).toEqual([[rule, message]]);
    expect(new Set(found.map((each) => each.rule))).toEqual(new Set([rule]));
  });
});

/** By hand: below the half circle of an arch, 3 in wide and 4 in high, its sides are straight for 2 1/2 in: 9 motifs leave 3/16 in. */
it('the straight part of its side is what an arch is punched along', () => {
  const { rows = [] } = netOf(
    'cut: 3 x 4, shape: arch, edge: { along: [left, right], pitch: 1/4, hole: 1/8 }',
  );
  const laid = rows.map(({ box, count, ends }) => `${count} below ${box.top}, ${ends.join(' and ')} left`);
  expect(laid).toEqual(Array(2).fill('9 below 3/2 in, 3/16 in and 3/16 in left'));
});

/** A drawing of so many millimeters of which a unit is as much as the viewBox says. */
function svgOf(inside: string, size = 'width="60mm" height="40mm" viewBox="0 0 60 40"'): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${inside}</svg>`;
}

const ROUND = 'M20 10 A10 10 0 0 1 40 10 A10 10 0 0 1 20 10 Z';

describe('an outline of your own', () => {
  const found = (svg: string, path = 'shapes/leaf.svg'): (string | undefined)[][] =>
    findingsOf(sheetWith({ pieces: `leaf: { stock: cream, drawn: ${path} }` }), {
      'card/shapes/leaf.svg': svg,
    }).map((each) => [each.rule, blamed(each), each.message]);

  it('is one of an opening too, and what is wrong with it is told as of a piece', () => {
    const card = (path: string): string =>
      sheetWith({
        pieces: `card: { stock: cream, cut: 6 x 6, openings: { leaf: { drawn: ${path}, at: { left: 1 } } } }`,
      });
    const files = { 'card/shapes/leaf.svg': svgOf('<path d="M0 40 V0 H60 Z"/>') };
    const [project] = workspaceOf(card('shapes/leaf.svg'), files).projects;
    const [opening] = (project && ownNet(buildShapes(project).nets, 'card'))?.openings ?? [];
    const { left, top } = opening?.margins ?? {};
    // It is 1 in from the left and in the middle of 6 in.
    expect([left?.mm, top?.mm]).toEqual([25.4, 56.2]);
    const points = opening?.outline.map(({ x, y }) => [x, y].map(({ mm }) => Number(mm.toFixed(6))));
    const [near, high] = [25.4, 56.2];
    expect(points?.map(([x = 0, y = 0]) => [x - near, y - high].map(Math.round)).toSorted()).toEqual([
      [0, 0],
      [0, 40],
      [60, 0],
    ]);
    const missing = findingsOf(card('shapes/oak.svg'), files);
    expect(missing.map(({ rule }) => rule)).toEqual(['unreadable-outline']);
  });

  it('takes no cut size beside it, for the drawing gives that', () => {
    const sheet = sheetWith({ pieces: 'leaf: { stock: cream, cut: 2 x 3, drawn: shapes/leaf.svg }' });
    const found = findingsOf(sheet, { 'card/shapes/leaf.svg': svgOf(`<path d="${ROUND}"/>`) });
    expect(found.map(({ remedy }) => remedy)).toEqual(['delete it: its drawing gives the size']);
  });

  it('is as large as it is drawn, in both editions', () => {
    const files = {
      'card/shapes/leaf.svg': svgOf(
        `<g><path d="${ROUND}"/></g>`,
        'width="3in" height="2in" viewBox="0 0 60 40"',
      ),
    };
    const sheet = sheetWith({ pieces: 'leaf: { stock: cream, drawn: shapes/leaf.svg }' });
    expect(findingsOf(sheet, files)).toEqual([]);
    const [project] = workspaceOf(sheet, files).projects;
    const net = project && ownNet(buildShapes(project).nets, 'leaf');
    // A circle of 20 units across, a unit a twentieth of an inch.
    expect(net && areaOf(outlineOf(net)) / INCH ** 2 / (Math.PI / 4)).toBeCloseTo(1, 2);
    expect(net?.size.width.in('in')).toEqual({ numerator: 1n, denominator: 1n });
  });

  it.each([
    [
      svgOf('<path d="M0 0 H50 V30"/>'),
      'the path of "shapes/leaf.svg" is not closed: its ends are 58.3 mm apart',
    ],
    [
      svgOf('<path d="M0 0 H50 L0 30 H50 Z"/>'),
      'the path of "shapes/leaf.svg" crosses itself 25 mm from its left and 15 mm from its top',
    ],
    [
      svgOf('<path d="M0 0 H9 V9 Z"/><path d="M0 0 H9 V9 Z"/>'),
      '"shapes/leaf.svg" has 2 paths, and an outline is one',
    ],
    [svgOf(''), '"shapes/leaf.svg" has no path, and an outline is one'],
    [
      svgOf('<path d="M0 0 H9 V9 Z M20 20 H30 V30 Z"/>'),
      'the path of "shapes/leaf.svg" has 2 parts, and an outline is one',
    ],
    [svgOf('<circle r="9"/>'), '"shapes/leaf.svg" has a <circle>, and an outline is one path'],
    [
      svgOf('<path transform="scale(2)" d="M0 0 H9 V9 Z"/>'),
      'the <path> of "shapes/leaf.svg" has a transform, and only the path itself is read',
    ],
    [
      svgOf(`<path d="${ROUND}"/>`, 'width="60" height="40" viewBox="0 0 60 40"'),
      'how large "shapes/leaf.svg" is cannot be known: its width, "60", is in no mm, cm or in',
    ],
    [
      svgOf(`<path d="${ROUND}"/>`, 'width="60mm" height="40mm"'),
      'how large "shapes/leaf.svg" is cannot be known: it has no viewBox of four numbers',
    ],
    [
      svgOf(`<path d="${ROUND}"/>`, 'width="60mm" height="40mm" viewBox="0 0 40 40"'),
      '"shapes/leaf.svg" is 60 mm wide, but by its height and its viewBox it would be 40 mm',
    ],
    [svgOf('<path d="M0 0 H2 V2 Z"/>'), 'the path of "shapes/leaf.svg" is 2 mm wide and 2 mm high'],
    [
      svgOf('<path d="M0 0 wobble"/>'),
      'the path of "shapes/leaf.svg" cannot be read: SvgPath: bad command w (at pos 5)',
    ],
    [
      svgOf('<path d="M10 10H90V90H10ZL50 50"/>'),
      'the path of "shapes/leaf.svg" has 2 parts, and an outline is one',
    ],
    [
      svgOf('<path style="fill: none; transform:scale(.5)" d="M0 0 H9 V9 Z"/>'),
      'the <path> of "shapes/leaf.svg" has a transform, and only the path itself is read',
    ],
    [
      svgOf('<g clip-path="url(#a)"><path d="M0 0 H9 V9 Z"/></g>'),
      'the <g> of "shapes/leaf.svg" has a clip-path, and only the path itself is read',
    ],
    [
      svgOf('<defs><style>.a { fill: red; scale: 2 }</style></defs><path class="a" d="M0 0 H9 V9 Z"/>'),
      'the <style> of "shapes/leaf.svg" has a scale, and only the path itself is read',
    ],
    [
      svgOf('<g style="display: none"><path d="M0 0 H9 V9 Z"/></g>'),
      '"shapes/leaf.svg" has no path, and an outline is one',
    ],
    [
      svgOf('<path d="M0 0 L50 20 L20 8 Z"/>'),
      'the path of "shapes/leaf.svg" crosses itself 50 mm from its left and 20 mm from its top',
    ],
    [
      svgOf('<path d="M0 0 H40 V20 H20 V0 H30 V30 H0 Z"/>'),
      'the path of "shapes/leaf.svg" crosses itself 20 mm from its left and 0 mm from its top',
    ],
    ['no drawing at all', '"shapes/leaf.svg" cannot be read as SVG: char \'n\' is not expected.'],
  ])('is refused: %s', (svg, message) => {
    expect(found(svg)).toEqual([['unreadable-outline', 'shapes/leaf.svg', message]]);
  });

  it('is refused where it lies outside or is not there', () => {
    expect(found('', 'shapes/oak.svg')[0]?.[2]).toBe(
      'there is no drawing "shapes/oak.svg" in this project\'s folder',
    );
    expect(found('', '../leaf.svg')[0]?.[2]).toBe(
      'the drawing "../leaf.svg" is not in this project\'s folder',
    );
  });
});
