import fc from 'fast-check';
import { intersection, union } from 'polyclip-ts';
import { Matrix4, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { readRef } from '../../src/project/ref.ts';
import { areaOf, contains, edgesOf, type Point2 } from '../../src/shape/flat-polygon.ts';
import { foldNet } from '../../src/shape/fold.ts';
import { foldedPanelOf } from '../../src/shape/folded-shape.ts';
import { groundOf } from '../../src/shape/ground.ts';
import type { Net, Opening } from '../../src/shape/net.ts';
import { keyholed } from '../../src/shape/openings/keyhole.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { viewsOf } from '../../src/shape/view/views.ts';
import { shapesOf, sheetOf } from './boxes.ts';

const CARD = (openings: string): string =>
  `\n  form: single-fold card\n  size: 4 x 6\n  openings: { ${openings} }`;
const openingOf = (openings: string): Opening => {
  const [opening] = ownNet(shapesOf(sheetOf(CARD(openings))).nets, 'box')?.openings ?? [];
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

  // A corner rounded by r takes (1 − π/4) r² off a rectangle (a square less the quarter of a circle in it).
  it.each<[string, number, number]>([
    ['corners: 1/4', 4, 1 / 4],
    ['corners: { top: 1/2 }', 2, 1 / 2],
    ['corners: { bottom left: 1 }', 1, 1],
  ])('with %s has the area of its rectangle less %i corners', (corners, count, radius) => {
    const opening = openingOf(`window: { in: front, size: 2 x 3, ${corners} }`);
    const area = areaOf(points(opening)) / 25.4 ** 2;
    expect(area).toBeCloseTo(6 - count * (1 - Math.PI / 4) * radius ** 2, 2);
    const [left, right] = [Math.min, Math.max].map((end) => end(...points(opening).map(({ x }) => x)));
    expect((right ?? 0) - (left ?? 0)).toBeCloseTo(2 * 25.4, 9);
  });

  // A = πr², for polygons of 64 sides within a thousandth.
  it('in a circle has its area, all of it in the panel by an independent polygon library', () => {
    const circle = points(openingOf('window: { shape: circle, size: 2 x 2, in: front }'));
    expect(areaOf(circle) / (Math.PI * 25.4 ** 2)).toBeCloseTo(1, 2);
    const net = ownNet(shapesOf(sheetOf(CARD('window: { size: 1 x 1, in: front }'))).nets, 'box') as Net;
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
    expect(drawn.filter((name) => viewsOf(shapes, readRef(name)).includes('layers'))).toEqual([
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

describe('a pop-up', () => {
  const STEP = 'step: { pop-up: 2, depth: 1 }';
  const netWith = (written: string): Net => {
    const { nets, findings } = shapesOf(sheetOf(CARD(written)));
    expect(findings).toEqual([]);
    return ownNet(nets, 'box') as Net;
  };
  const inches = (net: Net): Record<string, string> =>
    Object.fromEntries(
      net.panels.map(({ id, box: { left, top, right, bottom } }) => [
        id,
        [left, right, top, bottom].map((each) => `${each}`.replace(' in', '')).join(' '),
      ]),
    );

  // By hand: a card of 4 x 6 in lies 8 in wide, its fold 4 in from the left.
  it('adds the two parts of its strip, and its lines as said at the board', () => {
    const net = netWith(STEP);
    expect(inches(net)).toMatchObject({ 'step-back': '3 4 2 4', 'step-front': '4 5 2 4' });
    expect(
      net.scores.map(({ from, at, run }) => [from, at.join(), run && `${run.from} to ${run.to}`]),
    ).toEqual([
      ['left', '4 in', undefined],
      ['left', '3 in,5 in', '2 in to 4 in'],
    ]);
    // The fold of the card stands on either side of the strip, whose own middle goes the other way.
    expect(net.folds.map(({ panels, direction }) => `${panels.join('|')} ${direction}`).toSorted()).toEqual([
      'back|front mountain',
      'back|front mountain',
      'back|step-back mountain',
      'front|step-front mountain',
      'step-back|step-front valley',
    ]);
    expect(net.slits.map(({ from, to }) => `${from.x} ${from.y} to ${to.x} ${to.y}`).toSorted()).toEqual([
      expect.stringMatching(/^[35] in 2 in to [35] in 2 in$/u),
      expect.stringMatching(/^[35] in 4 in to [35] in 4 in$/u),
    ]);
  });

  it('with slits of two depths is folded as far from one end as the other slit is deep, and not along the fold', () => {
    const net = netWith('step: { pop-up: 2, depth: [1, 1 1/2], across: back|front, at: { top: 1 } }');
    expect(inches(net)).toMatchObject({ 'step-back': '3 9/2 1 3', 'step-front': '9/2 11/2 1 3' });
    expect(net.scores.map(({ at, run }) => `${at.join()} ${run?.from} ${run?.to}`)).toEqual([
      '4 in 0 in 1 in',
      '4 in 3 in 6 in',
      '3 in,9/2 in,11/2 in 1 in 3 in',
    ]);
  });

  it('takes no paper away: what its panels cover is the sheet, by an independent polygon library', () => {
    const { panels } = netWith(
      'step: { pop-up: 2, depth: [1, 1 1/2], across: back|front }, low: { pop-up: 1, depth: 1/2, at: { bottom: 1/2 } }',
    );
    expect(panels).toHaveLength(6);
    const outlines = panels.map(({ outline }) => ring(outline.map(({ x, y }) => ({ x: x.mm, y: y.mm }))));
    const [first = [], ...others] = outlines;
    const areaIn = (shape: number[][][][]): number =>
      shape.reduce((sum, [outer = []]) => sum + areaOf(outer.map(([x = 0, y = 0]) => ({ x, y }))), 0);
    expect(areaIn(union([first], ...others.map((each) => [each])))).toBeCloseTo(8 * 6 * 25.4 ** 2, 3);
    expect(outlines.reduce((sum, each) => sum + areaIn([each]), 0)).toBeCloseTo(8 * 6 * 25.4 ** 2, 3);
  });

  // Matrices by three.js: the back stays put, the front turns about the fold, each part of the strip about its own line.
  it('goes with its card from open to closed, meets the back at its other end and passes through neither side', () => {
    const sixteenths = fc.integer({ min: 2, max: 31 });
    fc.assert(
      fc.property(
        sixteenths,
        sixteenths,
        fc.constantFrom(0, 1 / 6, 1 / 2, 2 / 3, 11 / 12, 1),
        (one, other, share) => {
          const [back, front] = [one / 16, other / 16];
          const net = netWith(`step: { pop-up: 2, depth: [${one}/16, ${other}/16], across: back|front }`);
          const turnedAt = (x: number, angle: number): Matrix4 =>
            new Matrix4()
              .makeTranslation(x, 0, 0)
              .multiply(new Matrix4().makeRotationY(angle))
              .multiply(new Matrix4().makeTranslation(-x, 0, 0));
          const angle = share * Math.PI;
          const frontPose = turnedAt(4, angle);
          const nearPose = frontPose.clone().multiply(turnedAt(4 + front, -angle));
          const middle = 4 + front - back;
          const poses: Record<string, Matrix4> = {
            back: new Matrix4(),
            front: frontPose,
            'step-front': nearPose,
            'step-back': nearPose.clone().multiply(turnedAt(middle, angle)),
          };
          const shape = foldNet(net, { at: share });
          const seen: { own: Vector3; theirs: Vector3 }[] = [];
          for (const { id, outline } of net.panels) {
            for (const corner of outline) {
              const [x, y] = [corner.x.mm / 25.4, -corner.y.mm / 25.4];
              const own = foldedPanelOf(shape, id).place(corner);
              const theirs = new Vector3(x, y, 0).applyMatrix4(poses[id] ?? new Matrix4());
              seen.push({ own: new Vector3(own.x, own.y, own.z).divideScalar(25.4), theirs });
              // The outsides of both sides of the card look up on the flat sheet; the strip is within.
              expect(theirs.z).toBeLessThan(1e-9);
              expect(theirs.clone().applyMatrix4(frontPose.clone().invert()).z).toBeLessThan(1e-9);
            }
          }
          const end = new Vector3(4 - back, -2, 0);
          expect(
            end
              .clone()
              .applyMatrix4(poses['step-back'] ?? new Matrix4())
              .distanceTo(end),
          ).toBeLessThan(1e-9);
          for (const a of seen)
            for (const b of seen)
              expect(a.own.distanceTo(b.own)).toBeCloseTo(a.theirs.distanceTo(b.theirs), 9);
        },
      ),
      { seed: 11, numRuns: 12 },
    );
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
