import { describe, expect, it } from 'vitest';
import { templatePages } from '../../src/drawing/actual-size.ts';
import type { Drawing } from '../../src/drawing/canvas.ts';
import { moveDrawing } from '../../src/drawing/fold-move.ts';
import { foldedDrawing } from '../../src/drawing/folded.ts';
import { pieceDrawing } from '../../src/drawing/piece.ts';
import { stackDrawing } from '../../src/drawing/stack.ts';
import { templateDrawing } from '../../src/drawing/template.ts';
import { tint } from '../../src/drawing/tint.ts';
import { Length } from '../../src/measure/length.ts';
import { contrast } from './contrast.ts';
import { BOX, BOX_METRIC, editionsOf, elementsOf, inchStyle, linesOf, metricStyle } from './drawn.ts';

const editions = editionsOf(BOX, BOX_METRIC);
const margin = Length.of(1, 4, 'in');
const room = { width: 60, height: 80 };

const drawings: readonly (readonly [string, Drawing | undefined])[] = [inchStyle, metricStyle].flatMap(
  (style) => [
    ['piece', pieceDrawing(editions, 'label', 0.2, style)] as const,
    ['stack', stackDrawing(editions, { piece: 'box', part: 'front', face: 'outside' }, room, style)] as const,
    ['template', templateDrawing(editions, 'box', 2, style)] as const,
    ['folded', foldedDrawing(editions, 'box', 'folded', room, style)] as const,
    ['move', moveDrawing(editions, 'box', 'fold-2', room, style)] as const,
    [
      'actual size',
      templatePages(editions, 'box', { paper: 'a4', margin, project: 'Paper', state: '' }, style)[1]?.drawing,
    ] as const,
  ],
);

describe.each(drawings)('every drawing: %s', (_, drawing) => {
  const svg = drawing?.svg ?? '';
  const [root] = elementsOf(svg);

  it('is well-formed, without a number that is none', () => {
    expect(elementsOf(svg).length).toBeGreaterThan(3);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null/u);
  });

  it('is an image with its alternative', () => {
    expect(root?.attributes.role).toBe('img');
    expect(root?.attributes['aria-label']).toBe(drawing?.alternative);
  });

  it('is as large in millimeters as it says, and holds all its ink', () => {
    expect(root?.attributes.width).toMatch(/^[\d.]+mm$/u);
    expect(Number.parseFloat(root?.attributes.width ?? '')).toBeCloseTo(drawing?.width ?? 0, 2);
    expect(Number.parseFloat(root?.attributes.height ?? '')).toBeCloseTo(drawing?.height ?? 0, 2);
    const [left = 0, top = 0, width = 0, height = 0] = (root?.attributes.viewBox ?? '')
      .split(' ')
      .map(Number);
    expect([width, height]).toEqual([
      expect.closeTo(drawing?.width ?? 0, 2),
      expect.closeTo(drawing?.height ?? 0, 2),
    ]);
    const kinds = new Set(elementsOf(svg).map(({ attributes }) => attributes.class ?? ''));
    const points = [...kinds].flatMap((kind) => linesOf(svg, kind)).flat();
    expect(points.length).toBeGreaterThan(3);
    expect(points.filter(({ x, y }) => x < left || y < top || x > left + width || y > top + height)).toEqual(
      [],
    );
  });

  it('needs no id and no color, so that any number share a page in black and white', () => {
    expect(elementsOf(svg).filter(({ attributes }) => 'id' in attributes)).toEqual([]);
    const colors = elementsOf(svg).flatMap(({ attributes }) => [attributes.stroke, attributes.fill]);
    const strong = colors.filter((color) => color?.startsWith('#') && color !== '#fff');
    for (const color of strong) expect(contrast(color ?? '', '#ffffff')).toBeLessThan(2.5);
  });

  it('sets no letters smaller than ISO 3098 has any use for: 1.8 mm', () => {
    const sizes = elementsOf(svg).flatMap(({ name, attributes }) =>
      name === 'text' ? [Number(attributes['font-size']) * 0.72] : [],
    );
    expect(sizes.filter((size) => size < 1.8)).toEqual([]);
  });
});

describe('drawings of hostile names', () => {
  it('stay well-formed', () => {
    const names = ['<script>', '"&\u0007', 'x'.repeat(300)];
    for (const name of names) {
      const shouting = {
        ...inchStyle,
        say: Object.assign(
          (key: string, values?: object): string => `${name}${inchStyle.say(key, { ...values })}`,
          inchStyle.say,
        ),
      };
      for (const drawing of [
        pieceDrawing(editions, 'front', 0.2, shouting),
        templateDrawing(editions, 'box', 2, shouting),
        stackDrawing(editions, { piece: 'box', part: 'front', face: 'outside' }, room, shouting),
      ])
        expect(elementsOf(drawing?.svg ?? '').filter((each) => each.name === 'script')).toEqual([]);
    }
  });
});

describe('a tint', () => {
  it('leaves black lines and letters on it readable, whatever the stock (WCAG 2.2, 1.4.3)', () => {
    for (const color of ['#000000', '#ff0000', '#0000ff', '#123456', '#ffffff'])
      expect(contrast(tint(color), '#000000')).toBeGreaterThan(7);
  });
});
