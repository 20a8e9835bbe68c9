import fc from 'fast-check';
import { Matrix4, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import { writeRef } from '../../src/project/ref.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { groundOf } from '../../src/shape/ground.ts';
import type { Layer, Shapes } from '../../src/shape/shapes.ts';
import { turned } from '../../src/shape/turning.ts';
import { notesOf, shapesOf, sheetOf, TRADE_FACT } from './boxes.ts';
import { inches, roundedBy } from './forms/building.ts';

const cards = (more: string): Shapes => shapesOf(sheetOf('\n  cut: 4 x 6', more));
const layerOf = ({ layers }: Shapes, id: string): Layer => {
  const layer = layers.find(({ piece }) => piece.id.value === id);
  if (!layer) throw new Error(`${id} lies on nothing`);
  return layer;
};
const reveals = ({ reveals: { left, right, top, bottom } }: Layer): string[] =>
  [left, right, top, bottom].map(String);

describe('a layer', () => {
  // Common practice, no source.
  it('of 2 1/4 × 4 in shows 1/8 in all round on the trade-fact box’s front', () => {
    const shapes = shapesOf(sheetOf(TRADE_FACT, 'mat: { stock: moss, cut: 2 1/4 x 4, on: box.front }'));
    const mat = layerOf(shapes, 'mat');
    expect(writeRef(mat.on)).toBe('box.front');
    expect(reveals(mat)).toEqual(Array(4).fill('1/8 in'));
    expect(mat.centered).toEqual({ across: true, upright: true });
  });

  it.each([
    ['left: 1/4', ['1/4 in', '7/4 in', '3/2 in', '3/2 in']],
    ['right: 1/4', ['7/4 in', '1/4 in', '3/2 in', '3/2 in']],
    ['top: 1, left: 0.5', ['1/2 in', '3/2 in', '1 in', '2 in']],
    ['bottom: 1/8', ['1 in', '1 in', '23/8 in', '1/8 in']],
  ])('at { %s }', (at, expected) => {
    const shapes = cards(`mat: { stock: moss, cut: 2 x 3, on: box, at: { ${at} } }`);
    expect(reveals(layerOf(shapes, 'mat'))).toEqual(expected);
  });

  it('is measured on the layer it lies on, however it is written', () => {
    const shapes = cards(
      'top: { stock: moss, cut: 1 x 1, on: mat }\nmat: { stock: moss, cut: 2 x 3, on: box, at: { left: 0.5 } }',
    );
    expect(shapes.layers.map(({ piece }) => piece.id.value)).toEqual(['mat', 'top']);
    expect(reveals(layerOf(shapes, 'top'))).toEqual(['1/2 in', '1/2 in', '1 in', '1 in']);
  });

  // An independent library turns the sheet over like a page: half a turn about the upright through its left edge.
  it('on the inside is measured on the sheet turned over like a page', () => {
    const shapes = shapesOf(
      sheetOf(
        '\n  form: single-fold card\n  size: 4 x 6',
        'mat: { stock: moss, cut: 1 x 2, on: inside box.front, at: { left: 1/4, top: 1 } }',
      ),
    );
    const mat = layerOf(shapes, 'mat');
    expect(reveals(mat)).toEqual(['1/4 in', '11/4 in', '1 in', '3 in']);
    const { box } = mat.under.panel ?? {};
    const over = new Matrix4().makeRotationAxis(new Vector3(0, 1, 0), Math.PI);
    const corners = groundOf(mat, shapes).outline.map(({ x, y }) => new Vector3(x, y, 0).applyMatrix4(over));
    // What was the right edge of the panel is the left one.
    const left = new Vector3(box?.right.mm, 0, 0).applyMatrix4(over).x;
    expect(Math.min(...corners.map(({ x }) => x)) - left).toBeCloseTo(25.4 / 4, 9);
    expect(-Math.max(...corners.map(({ y }) => y))).toBeCloseTo(25.4, 9);
  });

  it('turned by a quarter keeps its distances as it lies, exactly', () => {
    const shapes = cards('mat: { stock: moss, cut: 2 x 3, on: box, at: { left: 1/4, turn: 90 } }');
    const mat = layerOf(shapes, 'mat');
    expect(reveals(mat)).toEqual(['1/4 in', '3/4 in', '2 in', '2 in']);
    expect([mat.left, mat.top].map(String)).toEqual(['3/4 in', '3/2 in']);
    expect(mat.corners.map(({ x, y }) => `${x} ${y}`)).toEqual([
      '13/4 in 2 in',
      '13/4 in 4 in',
      '1/4 in 4 in',
      '1/4 in 2 in',
    ]);
  });

  it('with its largest panel lies on its base, when it is folded itself', () => {
    const shapes = cards('tent: { stock: moss, cut: 3 x 5, score: [{ from: top, at: [2] }], on: box }');
    expect(reveals(layerOf(shapes, 'tent'))).toEqual(['1/2 in', '1/2 in', '3/2 in', '3/2 in']);
  });

  it('passes its base’s edge by a negative reveal', () => {
    const shapes = cards('mat: { stock: moss, cut: 4 1/4 x 3, on: box }');
    expect(reveals(layerOf(shapes, 'mat')).slice(0, 2)).toEqual(['-1/8 in', '-1/8 in']);
  });
});

describe('a base that cannot be', () => {
  it('is reported once for a circle, with the whole way round', () => {
    const { findings, layers } = cards(
      'a: { stock: moss, cut: 1 x 1, on: b }\nb: { stock: moss, cut: 1 x 1, on: c }\nc: { stock: moss, cut: 1 x 1, on: a }\nd: { stock: moss, cut: 1 x 1, on: a }',
    );
    expect(mergeFindings(findings).map(({ rule, message }) => `${rule}: ${message}`)).toEqual([
      'circular-base: a is on b, and b is on c, and c is on a: one of them needs another base',
    ]);
    expect(mergeFindings(findings).flatMap(notesOf)).toEqual(['b is on c at "c"', 'c is on a at "a"']);
    expect(layers).toEqual([]);
  });

  it('is reported for a layer on itself', () => {
    const { findings } = cards('a: { stock: moss, cut: 1 x 1, on: a }');
    expect(mergeFindings(findings).map(({ message }) => message)).toEqual(['a is its own base']);
    expect(mergeFindings(findings).flatMap(notesOf)).toEqual([]);
  });

  it('is reported for a panel that is not there, with the nearest', () => {
    const { findings } = shapesOf(sheetOf(TRADE_FACT, 'mat: { stock: moss, cut: 1 x 1, on: box.frond }'));
    expect(mergeFindings(findings).map(({ rule, remedy }) => [rule, remedy])).toEqual([
      ['unknown-reference', 'write "box.front"'],
    ]);
  });

  it('may be a panel without a name, by its cell', () => {
    const shapes = shapesOf(sheetOf(TRADE_FACT, 'mat: { stock: moss, cut: 1 x 1, on: box.c3 }'));
    expect(layerOf(shapes, 'mat').base.width.equals(inches(5, 4))).toBe(true);
  });
});

describe('a turned rectangle', () => {
  const degrees = fc.double({ min: 0, max: 360, noNaN: true, maxExcluded: true });
  const size = fc.record({
    width: fc.integer({ min: 1, max: 400 }).map((n) => Length.of(n, 2, 'mm')),
    height: fc.integer({ min: 1, max: 400 }).map((n) => Length.of(n, 2, 'mm')),
  });

  it('reaches as far as its corners do, never less and at most 1/1000 mm more', () => {
    fc.assert(
      fc.property(size, degrees, ({ width, height }, turn) => {
        const { right, top } = turned({ width, height }, turn);
        const [w, h, a] = [width.mm / 2, height.mm / 2, (turn * Math.PI) / 180];
        const x = w * Math.abs(Math.cos(a)) + h * Math.abs(Math.sin(a));
        const y = w * Math.abs(Math.sin(a)) + h * Math.abs(Math.cos(a));
        for (const [got, want] of [
          [right.mm, x],
          [top.mm, y],
        ] as const) {
          expect(got).toBeGreaterThanOrEqual(want - 1e-8);
          expect(got).toBeLessThanOrEqual(want + 0.0011);
        }
      }),
      { seed: 90, numRuns: 300 },
    );
  });

  it('of 3 × 4 turned by the angle of a 3-4-5 triangle is exact in its diagonal', () => {
    const turn = (Math.atan2(3, 4) * 180) / Math.PI;
    const { right } = turned({ width: inches(4), height: inches(3) }, turn);
    expect(right.mm).toBeCloseTo(2.5 * 25.4, 3);
  });

  it('reaches less with rounded corners', () => {
    const size45 = { width: inches(2), height: inches(2) };
    const sharp = turned(size45, 45).right.mm;
    const round = turned(size45, 45, roundedBy(inches(1))).right.mm;
    expect(sharp).toBeCloseTo(Math.SQRT2 * 25.4, 2);
    expect(round).toBeCloseTo(25.4, 2);
    const { top, right, bottom, left } = turned(size45, 45, roundedBy(inches(1), ['top left']));
    expect(top.mm).toBeCloseTo(25.4, 2);
    for (const sharpEnd of [right, bottom, left]) expect(sharpEnd.mm).toBeCloseTo(Math.SQRT2 * 25.4, 2);
  });
});
