import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/canvas.ts';
import { pieceDrawing, pieceScale } from '../../src/drawing/piece.ts';
import {
  BOX,
  BOX_METRIC,
  editionsOf,
  elementsOf,
  inchStyle,
  inkOf,
  linesOf,
  metricStyle,
  textsOf,
} from './drawn.ts';

const editions = editionsOf(BOX, BOX_METRIC);
const ROOM = { width: 45, height: 40 };

function drawn(id: string, style = inchStyle, from = editions): Drawing {
  const drawing = pieceDrawing(from, id, pieceScale(from[style.shown[0]], ROOM), style);
  if (!drawing) throw new Error(`no drawing of ${id}`);
  return drawing;
}

function cutBox({ svg }: Drawing): { width: number; height: number } {
  const points = linesOf(svg, 'cut').flat();
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}

describe('a piece of the cut list', () => {
  it('is drawn to the scale of all', () => {
    const scale = pieceScale(editions.inch, ROOM);
    // The largest piece, 9 1/2 in = 241.3 mm wide, takes the room there is.
    expect(scale).toBeCloseTo(45 / 241.3, 9);
    expect(cutBox(drawn('box'))).toEqual({
      width: 45,
      height: expect.closeTo((6.75 * 25.4 * 45) / 241.3, 3),
    });
    const strip = cutBox(drawn('strip'));
    expect(strip.width).toBeCloseTo(0.75 * 25.4 * scale, 3);
    expect(strip.height).toBeCloseTo(4.5 * 25.4 * scale, 3);
  });

  it('is never larger than half size', () => {
    expect(pieceScale(editionsOf('unit: in\npieces: { dot: { cut: 1/2 x 1/2 } }').inch, ROOM)).toBe(0.5);
  });

  it('shows inches over millimeters, each of its own edition', () => {
    expect(textsOf(drawn('front').svg)).toEqual(['3 1/4 in', '83 mm', '4 1/2 in', '115 mm']);
    expect(textsOf(drawn('front', metricStyle).svg)).toEqual(['83 mm', '3 1/4 in', '115 mm', '4 1/2 in']);
  });

  it('sets fractions so that the page can make true ones of them', () => {
    const fractions = elementsOf(drawn('front').svg).filter(
      ({ attributes }) => attributes.class === 'fraction',
    );
    expect(fractions.map(({ name, text }) => `${name} ${text}`)).toEqual(['tspan 1/4', 'tspan 1/2']);
  });

  it('draws the geometry of the edition asked for', () => {
    const scale = pieceScale(editions.metric, ROOM);
    expect(cutBox(drawn('front', metricStyle)).height).toBeCloseTo(115 * scale, 3);
  });

  it('reads out its measurements, its base and what shows', () => {
    expect(drawn('front').alternative).toBe(
      'Front, 3¼ by 4½ inches, 83 by 115 millimeters, on box front with ⅛ inch (3 millimeters) showing all round',
    );
    expect(drawn('strip').alternative).toContain('¼ inch (6 millimeters) on the left');
    expect(drawn('strip').alternative).toContain('flush at the top');
  });

  it('rounds corners', () => {
    const rounded = editionsOf('unit: in\npieces: { tag: { cut: 2 x 1, corners: 1/4 } }');
    const drawing = drawn('tag', inchStyle, rounded);
    const points = linesOf(drawing.svg, 'cut').flat();
    const scale = pieceScale(rounded.inch, ROOM);
    const [right, bottom] = [2 * 25.4 * scale, 25.4 * scale];
    const radius = 0.25 * 25.4 * scale;
    expect(cutBox(drawing).width).toBeCloseTo(right, 3);
    expect(points.every(({ x, y }) => Math.hypot(right - x, bottom - y) > radius * 0.41)).toBe(true);
    expect(drawing.alternative).toContain('corners rounded to ¼ inch (about 6 millimeters)');
  });

  it('rounds chosen corners, and closes what is cut all round', () => {
    const corners = '{ left: 1/4, bottom right: 1/2 }';
    const rounded = editionsOf(`unit: in\npieces: { tag: { cut: 2 x 1, corners: ${corners} } }`);
    const { svg, alternative } = drawn('tag', inchStyle, rounded);
    expect(alternative).toContain(
      'left corners rounded to ¼ inch (about 6 millimeters), lower right corner rounded to ½ inch (about 13 millimeters)',
    );
    const scale = pieceScale(rounded.inch, ROOM);
    const { left, top, right, bottom } = { left: 0, top: 0, right: 2 * 25.4 * scale, bottom: 25.4 * scale };
    const nearest = (x: number, y: number): number =>
      Math.min(
        ...linesOf(svg, 'cut')
          .flat()
          .map((each) => Math.hypot(each.x - x, each.y - y)),
      );
    // An arc of radius r leaves its corner (√2 − 1) r free.
    const free = (Math.SQRT2 - 1) * 25.4 * scale;
    expect(nearest(left, top)).toBeCloseTo(free / 4, 1);
    expect(nearest(left, bottom)).toBeCloseTo(free / 4, 1);
    expect(nearest(right, bottom)).toBeCloseTo(free / 2, 1);
    expect(nearest(right, top)).toBeCloseTo(0, 3);
    const cuts = elementsOf(svg).filter(
      ({ name, attributes }) => name === 'path' && attributes.class === 'cut',
    );
    expect(cuts).toHaveLength(1);
    expect(cuts[0]?.attributes.d).toMatch(/^M[^MZ]+Z$/u);
  });

  it.each(['box', 'front', 'strip', 'label'])('keeps the labels of %s apart and on the drawing', (id) => {
    const { svg, width, height } = drawn(id);
    const root = elementsOf(svg)[0]?.attributes;
    const [left = 0, top = 0] = (root?.viewBox ?? '').split(' ').map(Number);
    const boxes = elementsOf(svg)
      .filter(({ name }) => name === 'text')
      .map(inkOf);
    for (const [index, [x0, y0, x1, y1]] of boxes.entries()) {
      expect(x0 >= left && y0 >= top && x1 <= left + width && y1 <= top + height).toBe(true);
      for (const [a0, b0, a1, b1] of boxes.slice(index + 1))
        expect(a0 < x1 && x0 < a1 && b0 < y1 && y0 < b1).toBe(false);
    }
  });

  it('is no drawing when there is no such piece', () => {
    expect(pieceDrawing(editions, 'lid', 0.2, inchStyle)).toBeUndefined();
  });
});
