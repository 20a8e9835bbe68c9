import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type TemplatePage, templatePages } from '../../src/drawing/actual-size.ts';
import { tile } from '../../src/drawing/pages.ts';
import { sharedPages, smallPieces } from '../../src/drawing/shared-page.ts';
import { templateSvg } from '../../src/drawing/template-file.ts';
import type { Editions } from '../../src/edition/editions.ts';
import { Length } from '../../src/measure/length.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import {
  BOX,
  BOX_METRIC,
  editionsOf,
  elementsOf,
  inchStyle,
  inkOf,
  linesOf,
  metricStyle,
  type Point,
  stretchesOf,
  touching,
} from './drawn.ts';

const margin = Length.of(1, 4, 'in');
const LETTER = { paper: 'letter', margin, project: 'Paper', state: '' } as const;
const A4 = { paper: 'a4', margin, project: 'Paper', state: '' } as const;
const box = editionsOf(BOX, BOX_METRIC);
const big = editionsOf(`unit: in
pieces:
  tray:
    cut: 12 x 18
    score: [{ from: left, at: [3, 9] }, { from: top, at: [4, 14] }]
    panels: { base: B2 }
    trim: [A1, C1, A3, C3]`);

type Stretch = readonly [Point, Point];
const KINDS = ['cut', 'mountain', 'valley'];

/** Every fold of a net as stretches in millimeters from the sheet's corner. */
function foldsOf(editions: Editions, piece: string): Stretch[] {
  const net = ownNet(editions.inch.shapes.nets, piece);
  return (net?.folds ?? []).map(({ from, to }) => [
    { x: from.x.mm, y: from.y.mm },
    { x: to.x.mm, y: to.y.mm },
  ]);
}

function shifted([from, to]: Stretch, { x, y }: Point): Stretch {
  return [
    { x: from.x + x, y: from.y + y },
    { x: to.x + x, y: to.y + y },
  ];
}

function near([a, b]: Stretch, [c, d]: Stretch): boolean {
  return Math.max(Math.hypot(a.x - c.x, a.y - c.y), Math.hypot(b.x - d.x, b.y - d.y)) < 0.1;
}

/** Where the sheet's corner lies on a page: the least x and y of everything cut. */
function cornerOn({ drawing }: TemplatePage): Point {
  const points = [...linesOf(drawing.svg, 'blank'), ...linesOf(drawing.svg, 'cut')].flat();
  return { x: Math.min(...points.map(({ x }) => x)), y: Math.min(...points.map(({ y }) => y)) };
}

function squareSides({ drawing }: TemplatePage): number[] {
  return linesOf(drawing.svg, 'mark').flatMap((line) => {
    const [xs, ys] = [line.map(({ x }) => x), line.map(({ y }) => y)];
    const [width, height] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    return line.length === 5 && Math.abs(width - height) < 1e-9 ? [width] : [];
  });
}

describe('a template that fits a page', () => {
  const [page, ...more] = templatePages(box, 'box', LETTER, inchStyle);

  it('is one page, exactly as large as the paper', () => {
    expect(more).toEqual([]);
    // 9 1/2 in is wider than Letter upright: 8 1/2 × 11 in = 215.9 × 279.4 mm, on its side.
    expect([page?.drawing.width, page?.drawing.height]).toEqual([279.4, 215.9]);
    expect(page?.drawing.svg).toContain('width="279.4mm" height="215.9mm" viewBox="0 0 279.4 215.9"');
    const [small] = templatePages(box, 'front', A4, metricStyle);
    // ISO 216: A4 is 210 × 297 mm.
    expect([small?.drawing.width, small?.drawing.height]).toEqual([210, 297]);
  });

  it('has every score line where the net has it, within 0.1 mm', () => {
    if (!page) throw new Error('no page');
    const corner = cornerOn(page);
    const drawn = KINDS.flatMap((kind) => stretchesOf(linesOf(page.drawing.svg, kind)));
    for (const fold of foldsOf(box, 'box'))
      expect(drawn.some((stretch) => near(stretch, shifted(fold, corner)))).toBe(true);
  });

  it('keeps off the border a printer leaves white', () => {
    if (!page) throw new Error('no page');
    const points = [...KINDS, 'blank', 'mark', 'hatch']
      .flatMap((kind) => linesOf(page.drawing.svg, kind))
      .flat();
    for (const { x, y } of points) {
      expect(x >= 6.35 && x <= 279.4 - 6.35).toBe(true);
      expect(y >= 6.35 && y <= 215.9 - 6.35).toBe(true);
    }
  });

  it('has an inch and 20 mm to measure, a rule, and says at what size to print', () => {
    if (!page) throw new Error('no page');
    expect(squareSides(page)).toEqual([expect.closeTo(25.4, 3), expect.closeTo(20, 3)]);
    const ticks = stretchesOf(linesOf(page.drawing.svg, 'extension')).map(([{ x }]) => x);
    const zero = Math.min(...ticks);
    for (const mark of [0, 3.175, 25.4, 101.6, 1, 10, 100])
      expect(ticks.some((x) => Math.abs(x - zero - mark) < 0.001)).toBe(true);
    const words = elementsOf(page.drawing.svg)
      .map(({ text }) => text)
      .join(' ');
    expect(words).toContain('Print at 100%, not fitted to the page.');
    expect(words).toContain('Paper: Box, actual size · inch edition');
    expect(page.drawing.alternative).toContain(
      '9½ by 6¾ inches, 241 by 171 millimeters. Print at 100 percent.',
    );
  });
});

describe('a template that needs a page for itself', () => {
  it('comes behind a page with what is to be measured', () => {
    const full = editionsOf('unit: in\npieces: { card: { cut: 8 x 10 1/2 } }');
    const pages = templatePages(full, 'card', LETTER, inchStyle);
    expect(pages).toHaveLength(2);
    const [cover, sheet] = pages;
    expect(cover && squareSides(cover)).toEqual([expect.closeTo(25.4, 3), expect.closeTo(20, 3)]);
    const points = linesOf(sheet?.drawing.svg ?? '', 'cut').flat();
    expect(Math.min(...points.map(({ x }) => x))).toBeCloseTo(6.35, 3);
    expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(279.4 - 6.35, 3);
  });
});

describe('a template larger than a page', () => {
  it.each([LETTER, A4])('lies on tiles that agree, on $paper', (setting) => {
    const [cover, ...tiles] = templatePages(big, 'tray', setting, inchStyle);
    expect(tiles.length).toBeGreaterThan(1);
    expect(cover && squareSides(cover)).toHaveLength(2);
    const corners = tiles.map(cornerOn);
    for (const [index, page] of tiles.entries()) {
      const corner = corners[index] ?? { x: 0, y: 0 };
      const drawn = KINDS.flatMap((kind) => stretchesOf(linesOf(page.drawing.svg, kind)));
      for (const fold of foldsOf(big, 'tray'))
        expect(drawn.some((stretch) => near(stretch, shifted(fold, corner)))).toBe(true);
    }
  });

  it('has each match mark on two tiles, on the same place of the sheet, 5 mm from the edge of either window', () => {
    const [, ...tiles] = templatePages(big, 'tray', LETTER, inchStyle);
    const marks = new Map<string, Point[]>();
    for (const page of tiles) {
      const corner = cornerOn(page);
      const badges = elementsOf(page.drawing.svg).filter(
        ({ name, text, attributes }) =>
          name === 'text' && /^[A-Z]+$/u.test(text) && attributes.class !== undefined,
      );
      for (const { text, attributes } of badges) {
        const at = { x: Number(attributes.x) - corner.x, y: Number(attributes.y) - corner.y };
        marks.set(text, [...(marks.get(text) ?? []), at]);
      }
    }
    // Two by two tiles have four seams, with two marks each.
    expect(marks.size).toBe(8);
    for (const places of marks.values()) {
      const [one, two] = places;
      expect(places).toHaveLength(2);
      expect(one && two && Math.hypot(one.x - two.x, one.y - two.y)).toBeLessThan(0.01);
    }
  });

  it('names a panel on every tile that shows enough of it, clear of the overlaps', () => {
    const [, ...tiles] = templatePages(big, 'tray', LETTER, inchStyle);
    for (const [index, { drawing }] of tiles.entries()) {
      const elements = elementsOf(drawing.svg);
      const name = elements.find(({ text, attributes }) => text === 'base' && attributes.x !== undefined);
      if (!name) throw new Error(`tile ${index + 1} does not name the base`);
      const [x0, y0, x1, y1] = inkOf(name);
      // Of two by two tiles, each has its neighbors on the inner sides; Letter's printable part is 6.35 mm in.
      const [column, row] = [index % 2, Math.floor(index / 2)];
      if (column === 0) expect(x1).toBeLessThan(215.9 - 6.35 - 10);
      else expect(x0).toBeGreaterThan(6.35 + 10);
      if (row === 0) expect(y1).toBeLessThan(279.4 - 6.35 - 7 - 10);
      else expect(y0).toBeGreaterThan(6.35 + 10);
    }
  });

  it('shows nothing outside the printable part of a page', () => {
    const [, ...tiles] = templatePages(big, 'tray', LETTER, inchStyle);
    for (const { drawing } of tiles) {
      const window = elementsOf(drawing.svg).filter(({ name }) => name === 'svg')[1]?.attributes;
      expect(Number(window?.x)).toBeCloseTo(6.35, 3);
      expect(Number(window?.x) + Number(window?.width)).toBeCloseTo(215.9 - 6.35, 3);
      // The window neither moves nor scales what is seen through it.
      expect(window?.viewBox).toBe([window?.x, window?.y, window?.width, window?.height].join(' '));
    }
  });

  it('maps the pages and explains how they go together', () => {
    const [cover] = templatePages(big, 'tray', LETTER, inchStyle);
    const words = elementsOf(cover?.drawing.svg ?? '').map(({ text }) => text);
    for (const page of ['page 2', 'page 3', 'page 4', 'page 5']) expect(words).toContain(page);
    expect(words.join(' ')).toContain('rings with the same letter');
    for (const [left, , right, bottom] of elementsOf(cover?.drawing.svg ?? '')
      .filter(({ name }) => name === 'text')
      .map(inkOf))
      expect(left >= 6.35 && right <= 215.9 - 6.35 && bottom <= 279.4 - 6.35).toBe(true);
  });
});

describe('tiling', () => {
  it('covers any sheet, neighbors overlapping by 10 mm, with no tile to spare', () => {
    const side = fc.integer({ min: 20, max: 1000 });
    fc.assert(
      fc.property(side, side, (width, height) => {
        const size = { width: Length.of(width, 1, 'mm'), height: Length.of(height, 1, 'mm') };
        const { tiles, columns, rows } = tile(size, 203.2, 260);
        const [first, second] = [tiles[0]?.shows, tiles.at(-1)?.shows];
        expect((first?.left ?? 1) <= 1e-6 && (first?.top ?? 1) <= 1e-6).toBe(true);
        expect((second?.right ?? 0) >= width - 1e-6 && (second?.bottom ?? 0) >= height - 1e-6).toBe(true);
        for (const [index, { shows, column }] of tiles.entries())
          if (column + 1 < columns)
            expect(shows.right - (tiles[index + 1]?.shows.left ?? 0)).toBeCloseTo(10, 6);
        // One tile fewer would not reach.
        if (columns > 1) expect((columns - 1) * 193.2 + 10).toBeLessThan(width);
        if (rows > 1) expect((rows - 1) * 250 + 10).toBeLessThan(height);
      }),
      { seed: 5 },
    );
  });
});

describe('seams', () => {
  /** By hand: a sheet of 12 in on Letter's 203.2 mm takes two tiles; in its middle, at 6 in, lies a fold. */
  it('keep off the folds, however a sheet lies on its pages', () => {
    const folded = editionsOf(
      'unit: in\npieces:\n  wrap: { cut: 12 x 13, score: [{ from: left, at: [2, 6, 10] }, { from: top, at: [6 1/2] }] }',
    );
    const [, ...tiles] = templatePages(folded, 'wrap', LETTER, inchStyle);
    expect(tiles.length).toBeGreaterThan(1);
    for (const { drawing } of tiles) {
      const corner = cornerOn({ drawing } as TemplatePage);
      const seams = linesOf(drawing.svg, 'flat').filter(([from, to]) => from?.x === to?.x);
      const folds = foldsOf(folded, 'wrap').filter(([from, to]) => from.x === to.x);
      expect(seams.length).toBeGreaterThan(0);
      for (const [seam] of seams)
        for (const [fold] of folds) expect(Math.abs((seam?.x ?? 0) - corner.x - fold.x)).toBeGreaterThan(5);
    }
  });
});

describe('small flat pieces', () => {
  const four = editionsOf(
    'unit: in\npieces:\n  dot: { cut: 1 1/2 x 1 1/2, shape: circle, count: 6 }\n  ring: { cut: 2 x 2, shape: circle }\n  moon: { cut: 1 x 1, shape: circle, count: 2 }\n  sun: { cut: 2 1/2 x 2 1/2, shape: scalloped circle }\n  sheet: { cut: 8 x 10 }',
  );
  const ids = smallPieces(four, ['dot', 'ring', 'moon', 'sun', 'sheet'], LETTER, inchStyle);
  const pages = sharedPages(four, ids, LETTER, inchStyle);

  it('share a page, each at actual size over its name and count', () => {
    expect(ids).toEqual(['dot', 'ring', 'moon', 'sun']);
    expect(pages).toHaveLength(1);
    const svg = pages[0]?.drawing.svg ?? '';
    const words = elementsOf(svg).map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(['Dot × 6', 'Ring', 'Moon × 2', 'Sun']));
    const widths = linesOf(svg, 'cut').map((line) => {
      const xs = line.map(({ x }) => x);
      return Math.max(...xs) - Math.min(...xs);
    });
    for (const inches of [1.5, 2, 1, 2.5])
      expect(widths.some((width) => Math.abs(width - inches * 25.4) < 0.1)).toBe(true);
    expect(touching(svg)).toEqual([]);
  });

  it('take a single one in beside a larger piece, upright or on its side', () => {
    const card = editionsOf(
      'unit: in\npieces:\n  card: { form: single-fold card, size: 4 1/4 x 5 1/2 }\n  sail: { cut: 3/4 x 1, shape: arch }',
    );
    const together = smallPieces(card, ['card', 'sail'], LETTER, inchStyle);
    expect(together).toEqual(['card', 'sail']);
    const [page, ...more] = sharedPages(card, together, LETTER, inchStyle);
    expect(more).toEqual([]);
    // 8 1/2 in of card and 3/4 in of sail are wider than Letter upright, 8 1/2 in with its margins.
    expect(page?.page.landscape).toBe(true);
    const words = elementsOf(page?.drawing.svg ?? '').map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(['front', 'back', 'Card', 'Sail']));
    expect(touching(page?.drawing.svg ?? '')).toEqual([]);
  });

  it('do not when there is but one, and go on over the page', () => {
    expect(smallPieces(four, ['dot', 'sheet'], LETTER, inchStyle)).toEqual([]);
    const many = sharedPages(
      four,
      Array.from({ length: 40 }, () => 'sun'),
      LETTER,
      inchStyle,
    );
    expect(many.length).toBeGreaterThan(1);
    const drawn = many.flatMap(({ drawing }) =>
      linesOf(drawing.svg, 'cut').filter((line) => line.length > 20),
    );
    expect(drawn).toHaveLength(40);
  });
});

describe('the template as a file', () => {
  const svg = templateSvg(box, 'box', inchStyle) ?? '';

  it('is at 1:1 in millimeters', () => {
    const root = elementsOf(svg)[0]?.attributes;
    // 9 1/2 × 6 3/4 in = 241.3 × 171.45 mm, and 5 mm all round.
    expect([root?.width, root?.height]).toEqual(['251.3mm', '181.45mm']);
    expect(root?.viewBox).toBe('-5 -5 251.3 181.45');
  });

  it('has every fold where the net has it, within 0.1 mm', () => {
    const drawn = [...stretchesOf(linesOf(svg, 'mountain')), ...stretchesOf(linesOf(svg, 'valley'))];
    const folds = foldsOf(box, 'box');
    expect(drawn).toHaveLength(folds.length);
    for (const fold of folds) expect(drawn.some((stretch) => near(stretch, fold))).toBe(true);
  });

  it('keeps cuts, scores, glue and names apart', () => {
    const groups = elementsOf(svg)
      .filter(({ name }) => name === 'g')
      .map(({ attributes }) => attributes.class);
    expect(groups).toEqual(['cuts', 'scores', 'glue', 'names']);
    const cuts = elementsOf(svg).filter(({ attributes }) => attributes.class === 'cut');
    expect(cuts).not.toEqual([]);
    expect(cuts.every(({ inside }) => inside.includes('cuts'))).toBe(true);
  });

  it('is a picture in black that stands alone', () => {
    expect(
      svg.startsWith('<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg"'),
    ).toBe(true);
    expect(svg).not.toMatch(/href|url\(|<style|<script/u);
    expect(templateSvg(box, 'nothing', inchStyle)).toBeUndefined();
  });
});
