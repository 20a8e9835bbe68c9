import fc from 'fast-check';
import { intersection } from 'polyclip-ts';
import { Matrix4, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { areaOf, contains, edgesOf, type Point2 } from '../../src/shape/flat-polygon.ts';
import { groundOf } from '../../src/shape/ground.ts';
import type { Net, Opening } from '../../src/shape/net.ts';
import { keyholed } from '../../src/shape/openings/keyhole.ts';
import { viewsOf } from '../../src/shape/view/views.ts';
import { shapesOf, sheetOf } from './boxes.ts';

const CARD = (openings: string): string =>
  `\n  form: single-fold card\n  size: 4 x 6\n  openings: { ${openings} }`;
const openingOf = (openings: string): Opening => {
  const [opening] = shapesOf(sheetOf(CARD(openings))).nets.get('box')?.openings ?? [];
  if (!opening) throw new Error('no opening was cut');
  return opening;
};
const points = ({ outline }: Opening): readonly Point2[] => outline.map(({ x, y }) => ({ x: x.mm, y: y.mm }));
const ring = (polygon: readonly Point2[]): [number, number][][] => [polygon.map(({ x, y }) => [x, y])];

describe('an opening', () => {
  // By hand: the front begins 4 in from the left.
  it.each<[string, string, string[]]>([
    ['size: 2 x 3', '5 in to 7 in, 3/2 in to 9/2 in', ['1 in', '1 in', '3/2 in', '3/2 in']],
    [
      'size: 2 x 3, at: { left: 1/2, top: 1 }',
      '9/2 in to 13/2 in, 1 in to 4 in',
      ['1/2 in', '3/2 in', '1 in', '2 in'],
    ],
    [
      'size: 2 x 3, at: { bottom: 1/4, turn: 90 }',
      '9/2 in to 15/2 in, 15/4 in to 23/4 in',
      ['1/2 in', '1/2 in', '15/4 in', '1/4 in'],
    ],
    ['slot: 2, at: { bottom: 1 }', '5 in to 7 in, 5 in to 5 in', ['1 in', '1 in', '5 in', '1 in']],
    ['slot: 2, turn: 90, at: { left: 1 }', '5 in to 5 in, 2 in to 4 in', ['1 in', '3 in', '2 in', '2 in']],
  ])('{ %s }', (written, place, margins) => {
    const opening = openingOf(`window: { in: front, ${written} }`);
    const span = (values: Opening['outline'][number]['x'][]): string => {
      const [first, ...others] = values.toSorted((a, b) => a.compare(b));
      return `${first} to ${others.at(-1)}`;
    };
    expect(`${span(opening.outline.map(({ x }) => x))}, ${span(opening.outline.map(({ y }) => y))}`).toBe(
      place,
    );
    const { left, right, top, bottom } = opening.margins;
    expect([left, right, top, bottom].map(String)).toEqual(margins);
  });

  // A = πr², for polygons of 64 sides within a thousandth.
  it('in a circle has its area, all of it in the panel by an independent polygon library', () => {
    const circle = points(openingOf('window: { shape: circle, size: 2 x 2, in: front }'));
    expect(areaOf(circle) / (Math.PI * 25.4 ** 2)).toBeCloseTo(1, 2);
    const net = shapesOf(sheetOf(CARD('window: { size: 1 x 1, in: front }'))).nets.get('box') as Net;
    const front = net.panels.find(({ id }) => id === 'front');
    const panel = (front?.outline ?? []).map(({ x, y }) => ({ x: x.mm, y: y.mm }));
    const common = intersection(ring(circle), ring(panel));
    const [outer = []] = common[0] ?? [];
    expect(areaOf(outer.map(([x, y]) => ({ x, y })))).toBeCloseTo(areaOf(circle), 6);
  });

  it('lets what is behind it be drawn as what lies on the inside of its panel', () => {
    const view = 'view: { stock: moss, cut: 3 x 4, behind: box.window }';
    const shapes = shapesOf(sheetOf(CARD('window: { in: front, size: 2 x 3 }'), view));
    const drawn = ['inside box.front', 'inside box.back', 'box.front', 'behind box.window'];
    expect(drawn.filter((name) => viewsOf(shapes, name).includes('layers'))).toEqual([
      'inside box.front',
      'behind box.window',
    ]);
  });

  it('shows what is behind it in its middle, as seen from behind', () => {
    const shapes = shapesOf(
      sheetOf(
        CARD('window: { size: 1 x 1, in: front, at: { left: 1/2, top: 1 } }'),
        'view: { stock: moss, cut: 2 x 2, behind: box.window }',
      ),
    );
    const layer = shapes.layers[0];
    if (!layer) throw new Error('nothing lies behind the window');
    const corners = groundOf(layer, shapes).outline;
    // Its left on the sheet is 4 in to the front, and then half an inch less than the window's.
    expect(Math.min(...corners.map(({ x }) => x))).toBeCloseTo(25.4 * 4, 9);
    expect(Math.max(...corners.map(({ y }) => y))).toBeCloseTo(-25.4 / 2, 9);
    // An independent library turns the card over: what is left of the panel there was right of it.
    const over = new Matrix4().makeRotationAxis(new Vector3(0, 1, 0), Math.PI);
    const [first, ...rest] = corners.map(({ x, y }) => new Vector3(x, y, 0).applyMatrix4(over).x);
    const left = new Vector3(25.4 * 8, 0, 0).applyMatrix4(over).x;
    expect(Math.min(first ?? 0, ...rest) - left).toBeCloseTo(layer.reveals.left.mm, 9);
  });
});

describe('an outline that goes round its holes', () => {
  const square = (x: number, y: number, size: number): Point2[] => [
    { x, y },
    { x: x + size, y },
    { x: x + size, y: y + size },
    { x, y: y + size },
  ];

  it('is as large as the paper that is left, in whatever order', () => {
    const holes = fc.subarray([0, 1, 2, 3, 4, 5, 6, 7, 8], { minLength: 1 });
    fc.assert(
      fc.property(holes, fc.boolean(), (cells, isReversed) => {
        const cut = cells.map((cell) => square(2 + (cell % 3) * 10, 2 + Math.floor(cell / 3) * 10, 6));
        const outer = square(0, 0, 30);
        const { points: whole, bridges } = keyholed(isReversed ? outer.toReversed() : outer, cut);
        expect(areaOf(whole)).toBeCloseTo(900 - 36 * cells.length, 6);
        // Two bridges a hole, there and back; the other sides are those of all outlines.
        expect(bridges).toHaveLength(2 * cells.length);
        expect(whole).toHaveLength(4 + 4 * cells.length + 2 * cells.length);
        for (const hole of cut) {
          const [corner = { x: 0, y: 0 }] = hole;
          expect(contains(whole, { x: corner.x + 3, y: corner.y + 2.5 })).toBe(false);
        }
      }),
      { seed: 11 },
    );
  });

  it('goes to a slit and back', () => {
    const slit = [
      { x: 10, y: 15 },
      { x: 20, y: 15 },
    ];
    const { points: whole, bridges } = keyholed(square(0, 0, 30), [slit]);
    expect(areaOf(whole)).toBeCloseTo(900, 9);
    expect(edgesOf(whole).filter((_, side) => !bridges.includes(side))).toHaveLength(6);
  });
});
