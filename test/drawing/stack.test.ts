import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/canvas.ts';
import { lowestBases } from '../../src/drawing/pile.ts';
import { stackDrawing } from '../../src/drawing/stack.ts';
import { columnName } from '../../src/shape/cells.ts';
import {
  BOX,
  BOX_METRIC,
  editionsOf,
  elementsOf,
  inchStyle,
  linesOf,
  metricStyle,
  type Point,
  textsOf,
} from './drawn.ts';

const editions = editionsOf(BOX, BOX_METRIC);
/** So large that nothing is reduced: a drawing at full size. */
const ROOM = { width: 1000, height: 1000 };

function stack(style = inchStyle, from = editions): Drawing {
  const [base] = lowestBases(from);
  const drawing = base && stackDrawing(from, base, ROOM, style);
  if (!drawing) throw new Error('no stack');
  return drawing;
}

function extent(points: readonly Point[]): number[] {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

describe('a stack', () => {
  it('lies on what lies on nothing itself', () => {
    expect(lowestBases(editions)).toEqual([{ face: 'outside', piece: 'box', part: 'front' }]);
  });

  it('has every layer in its place', () => {
    const { svg } = stack();
    const [base = []] = linesOf(svg, 'cut');
    const [front = [], strip = [], label = []] = linesOf(svg, 'layer');
    const close = (values: number[]): unknown[] => values.map((inches) => expect.closeTo(inches * 25.4, 2));
    expect(extent(base)).toEqual(close([0, 0, 3.5, 4.75]));
    expect(extent(front)).toEqual(close([0.125, 0.125, 3.375, 4.625]));
    expect(extent(strip)).toEqual(close([0.375, 0.125, 1.125, 4.625]));
    // 2 × 3/4 in turned by 30°: it reaches w·cos + h·sin by w·sin + h·cos, and at: is to those corners.
    const [cos, sin] = [Math.sqrt(3) / 2, 0.5];
    const [wide, high] = [2 * cos + 0.75 * sin, 2 * sin + 0.75 * cos];
    expect(extent(label)).toEqual(close([1.125, 1.625, 1.125 + wide, 1.625 + high]));
    // Clockwise: the upper right corner of the layer has gone down.
    const corners = label.slice(0, 4);
    const [first, second] = corners;
    expect((second?.y ?? 0) - (first?.y ?? 0)).toBeCloseTo(2 * 25.4 * sin, 2);
    expect((second?.x ?? 0) - (first?.x ?? 0)).toBeCloseTo(2 * 25.4 * cos, 2);
  });

  it('carries what lies on a turned layer with it', () => {
    const turned = editionsOf(`unit: mm
pieces:
  card: { cut: 100 x 100 }
  tag: { cut: 40 x 20, on: card, at: { turn: 90 } }
  dot: { cut: 10 x 10, on: tag, at: { left: 0.5, top: 0.5 } }`);
    const [, dot = []] = linesOf(stack(inchStyle, turned).svg, 'layer');
    // The tag's upper left corner lies at the upper right of what it covers: x 40 to 60, y 30 to 70.
    expect(extent(dot)).toEqual([49.5, 30.5, 59.5, 40.5].map((each) => expect.closeTo(each, 3)));
  });

  it('dimensions an even reveal once and an uneven one side by side', () => {
    const texts = textsOf(stack().svg);
    expect(texts.filter((text) => text === 'all round')).toHaveLength(1);
    expect(texts).toContain('1/8 in');
    expect(texts).toContain('3 mm');
    for (const each of ['1/4 in', '2 1/4 in', '1 in', '1 1/2 in']) expect(texts).toContain(each);
    // The strip lies flush at top and bottom: nothing to dimension there.
    expect(texts.filter((text) => text === '0 in')).toEqual([]);
  });

  it('measures every gap where it is', () => {
    const widths = linesOf(stack(metricStyle).svg, 'dimension').map(([from, to]) =>
      from && to ? Math.hypot(to.x - from.x, to.y - from.y) : 0,
    );
    // The strip to the right edge of the front: 83 − 6 − 19 mm.
    expect(widths.some((width) => Math.abs(width - 58) < 0.01)).toBe(true);
  });

  it('letters the layers in the order they are stuck on, and names them with both sizes', () => {
    const texts = textsOf(stack().svg);
    expect(texts).toContain('front: 3 1/4 × 4 1/2 in · 83 × 115 mm');
    const alone = textsOf(stack({ ...inchStyle, shown: ['inch'] }).svg);
    expect(alone).toContain('front: 3 1/4 × 4 1/2 in');
    expect(['A', 'B', 'C'].map((letter) => texts.filter((text) => text === letter).length)).toEqual([
      2, 2, 2,
    ]);
    expect([0, 25, 26, 51, 52].map(columnName)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA']);
  });

  it('tells a printed stock from a plain one without color, and tints by the stock', () => {
    const { svg } = stack();
    expect(linesOf(svg, 'texture').length).toBeGreaterThan(5);
    const tints = elementsOf(svg).filter(({ attributes }) => attributes.class === 'paper tint');
    expect(tints).toHaveLength(2);
    const plain = editionsOf('unit: in\npieces: { a: { cut: 4 x 4 }, b: { cut: 3 x 3, on: a } }');
    expect(linesOf(stack(inchStyle, plain).svg, 'texture')).toEqual([]);
  });

  it('reads out every layer', () => {
    const { alternative } = stack();
    expect(alternative).toContain(
      'Box front with its layers. A: front, 3¼ by 4½ inches, 83 by 115 millimeters',
    );
    expect(alternative).toContain('on box front with ⅛ inch (3 millimeters) showing all round');
    expect(alternative).toContain('B: strip, ¾ by 4½ inches, 19 by 115 millimeters, on front');
  });

  it('says by how much a layer hangs over', () => {
    const over = editionsOf(
      'unit: in\npieces: { a: { cut: 4 x 4 }, b: { cut: 1 x 1, on: a, overhang: yes, at: { left: 3 1/2 } } }',
    );
    expect(stack(inchStyle, over).alternative).toContain(
      'past the right edge by ½ inch (about 13 millimeters)',
    );
  });

  it('has nothing to show where nothing lies', () => {
    expect(stackDrawing(editions, { face: 'outside', piece: 'label' }, ROOM, inchStyle)).toBeUndefined();
    expect(stackDrawing(editions, { face: 'outside', piece: 'nothing' }, ROOM, inchStyle)).toBeUndefined();
  });
});
