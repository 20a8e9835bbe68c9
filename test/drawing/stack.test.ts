import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alikeBases } from '../../src/drawing/alike-bases.ts';
import type { Drawing } from '../../src/drawing/canvas.ts';
import { lowestBases } from '../../src/drawing/pile.ts';
import { stackDrawing } from '../../src/drawing/stack.ts';
import type { Editions } from '../../src/edition/editions.ts';
import { writeRef } from '../../src/project/ref.ts';
import { columnName } from '../../src/shape/cells.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { runs } from '../runs.ts';
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
  touching,
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

  it('dimensions each decision once: an even reveal, what was said from an edge, a layer in the middle', () => {
    const texts = textsOf(stack().svg);
    expect(texts.filter((text) => text === 'all round')).toHaveLength(1);
    expect(texts).toContain('1/8 in');
    expect(texts).toContain('3 mm');
    for (const each of ['1/4 in', '1 in', '1 1/2 in']) expect(texts).toContain(each);
    // From the strip to the right edge: what is left of the rest.
    expect(texts).not.toContain('2 1/4 in');
    // The strip lies flush at top and bottom: nothing to dimension there.
    expect(texts.filter((text) => text === '0 in')).toEqual([]);
  });

  it('measures every gap where it is', () => {
    const widths = linesOf(stack(metricStyle).svg, 'dimension').map(([from, to]) =>
      from && to ? Math.hypot(to.x - from.x, to.y - from.y) : 0,
    );
    // The label's corner from the left edge and from the top one of the front.
    for (const length of [25, 38]) expect(widths.some((width) => Math.abs(width - length) < 0.01)).toBe(true);
  });

  it('tells a round layer by its width and what it is called, as the cut list does', () => {
    const round = editionsOf(
      'unit: in\npieces:\n  card: { cut: 4 x 4 }\n  seal: { cut: 1 1/2 x 1 1/2, shape: circle, on: card }\n  rose: { cut: 2 x 2, shape: scalloped circle, scallops: 12, on: card }',
    );
    const texts = textsOf(stack(inchStyle, round).svg).join(' ');
    expect(texts).toContain('seal: 1 1/2 in circle · ');
    expect(texts).toMatch(/rose: 2 in scalloped circle with 12 scallops/u);
    expect(texts).not.toMatch(/1 1\/2 × 1 1\/2|2 × 2 in/u);
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

  it('says its scale, which is a whole reduction', () => {
    expect(textsOf(stack().svg).at(-1)).toBe('Scale 1:1');
    const [base] = lowestBases(editions);
    // The front is 3 1/2 × 4 3/4 in, 88.9 × 120.65 mm; the labels take their share of the room.
    const drawn = [1000, 84, 60, 45].map(
      (width) => base && stackDrawing(editions, base, { width, height: 200 }, inchStyle),
    );
    expect(drawn.map((each) => textsOf(each?.svg ?? '').at(-1))).toEqual([
      'Scale 1:1',
      'Scale 1:2',
      'Scale 1:3',
      'Scale 1:6',
    ]);
    for (const [index, width] of [1000, 84, 60, 45].entries())
      expect(drawn[index]?.width).toBeLessThanOrEqual(width + 1);
  });

  it('is drawn once for all that show it alike, and anew in another room, unit, lettering or language', () => {
    const [base] = lowestBases(editions);
    if (!base) throw new Error('nothing lies on anything');
    const draw = (room = ROOM, own = inchStyle): unknown => stackDrawing(editions, base, { ...room }, own);
    const first = draw();
    expect(draw()).toBe(first);
    const others = [
      draw({ ...ROOM, width: ROOM.width / 3 }),
      draw(ROOM, { ...inchStyle, shown: ['metric'] }),
      draw(ROOM, { ...inchStyle, lettering: 5 }),
      draw(ROOM, { ...inchStyle, say: Object.assign(inchStyle.say.bind(undefined), inchStyle.say) }),
    ];
    expect(new Set([first, ...others]).size).toBe(5);
    expect(others.at(-1)).toEqual(first);
  });

  it('puts no letter into a hole', () => {
    const ring = editionsOf(
      'unit: in\npieces:\n  tag: { cut: 3 x 3 }\n  ring: { cut: 2 x 2, on: tag, openings: { hole: { shape: circle, size: 1 x 1 } } }',
    );
    const { svg } = stack(inchStyle, ring);
    const [letter] = elementsOf(svg).filter(({ name, text }) => name === 'text' && text === 'A');
    const [x, y] = [Number(letter?.attributes.x) - 1.5 * 25.4, Number(letter?.attributes.y) - 1.5 * 25.4];
    expect(Math.hypot(x, y)).toBeGreaterThan(12.7);
  });

  it('is drawn once for two panels that bear the very same, and names both', () => {
    const twins = (back: string): Editions =>
      editionsOf(
        `unit: in\npieces:\n  card: { form: single-fold card, size: 4 x 5 }\n  cover: { cut: 3 x 4, on: card.front }\n  end: { cut: ${back}, on: card.back }`,
      );
    const same = twins('3 x 4');
    const groups = alikeBases(same, lowestBases(same), inchStyle);
    expect(groups.map((each) => each.map(writeRef))).toEqual([['card.front', 'card.back']]);
    const [base] = groups[0] ?? [];
    const drawing = base && stackDrawing(same, base, ROOM, inchStyle, groups[0]);
    expect(textsOf(drawing?.svg ?? '')).toContain('cover and end: 3 × 4 in · ≈76 × ≈102 mm');
    expect(drawing?.alternative).toContain('Card front and card back with its layers.');
    const other = twins('3 x 3 1/2');
    expect(alikeBases(other, lowestBases(other), inchStyle)).toHaveLength(2);
  });

  it('says of a layer in the middle the distance on both sides', () => {
    const middle = editionsOf('unit: in\npieces: { a: { cut: 6 x 4 }, b: { cut: 3 x 3, on: a } }');
    const texts = textsOf(stack(inchStyle, middle).svg);
    expect(texts.filter((text) => text === 'both sides')).toHaveLength(2);
    expect(texts.filter((text) => text === '1 1/2 in')).toHaveLength(1);
    expect(texts.filter((text) => text === '1/2 in')).toHaveLength(1);
  });

  it('shows the hole in a tag that layers lie on', () => {
    const tag = editionsOf(
      'unit: in\npieces:\n  tag: { form: tag, size: 2 x 4, hole: 1/4 }\n  mat: { cut: 1 1/2 x 2 1/2, on: tag, at: { bottom: 1/4 } }',
    );
    const net = ownNet(tag.inch.shapes.nets, 'tag');
    expect(net?.openings).toHaveLength(1);
    // The tag's own edge, and the hole's.
    expect(linesOf(stack(inchStyle, tag).svg, 'cut')).toHaveLength(2);
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

  /** Layers of random sizes on one another, at random distances or in the middle, some turned or over the edge. */
  it('lets no label touch another', () => {
    const eighths = (most: number): fc.Arbitrary<string> =>
      fc.integer({ min: 1, max: most }).map((each) => `${each}/8`);
    const at = fc.oneof(
      fc.constant(''),
      fc
        .record({ left: eighths(12), top: eighths(12) })
        .map(({ left, top }) => `at: { left: ${left}, top: ${top} }`),
      fc.record({ right: eighths(12) }).map(({ right }) => `at: { right: ${right} }`),
      fc.integer({ min: 1, max: 359 }).map((turn) => `at: { turn: ${turn} }`),
    );
    const layer = fc.record({ width: eighths(40), height: eighths(40), at, on: fc.nat({ max: 20 }) });
    fc.assert(
      fc.property(
        fc.array(layer, { minLength: 1, maxLength: 6 }),
        fc.constantFrom(50, 84, 120),
        (layers, width) => {
          const pieces = layers.map(
            (each, index) =>
              `  p${index + 1}: { cut: ${each.width} x ${each.height}, on: p${each.on % (index + 1)}, overhang: yes, ${each.at} }`,
          );
          const piled = editionsOf(`unit: in\npieces:\n  p0: { cut: 5 x 4 }\n${pieces.join('\n')}`);
          const base = { face: 'outside', piece: 'p0' } as const;
          const drawing = stackDrawing(piled, base, { width, height: 95 }, inchStyle);
          expect(touching(drawing?.svg ?? '')).toEqual([]);
        },
      ),
      runs(12, 50),
    );
  });
});
