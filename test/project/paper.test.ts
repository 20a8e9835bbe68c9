import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printSize } from '../../src/measure/print.ts';
import type { PaperWeight, StockSheet } from '../../src/project/stock.ts';
import { blamed, faultsOf, readSheet, sheetOf } from './reading.ts';

describe('a weight', () => {
  const weigh = (text: string): PaperWeight | undefined =>
    readSheet(sheetOf(`stock: { m: { weight: "${text}" } }`)).stock.get('m')?.weight?.value;

  it.each<[string, PaperWeight]>([
    ['80 lb cover', { kind: 'basis', pounds: 80, grade: 'cover' }],
    ['80lb Cover', { kind: 'basis', pounds: 80, grade: 'cover' }],
    ['65 lbs. text', { kind: 'basis', pounds: 65, grade: 'text' }],
    ['110# index', { kind: 'basis', pounds: 110, grade: 'index' }],
    ['67 pounds bristol', { kind: 'basis', pounds: 67, grade: 'bristol' }],
    ['216 gsm', { kind: 'grammage', gsm: 216 }],
    ['216 g', { kind: 'grammage', gsm: 216 }],
    ['216,5 gsm', { kind: 'grammage', gsm: 216.5 }],
    ['216 g/m²', { kind: 'grammage', gsm: 216 }],
    ['216.5 g/m2', { kind: 'grammage', gsm: 216.5 }],
  ])('%s', (text, weight) => {
    expect(weigh(text)).toEqual(weight);
  });

  it.each(['80', '80 lb', '80 lb card', '0 gsm', '-80 gsm', '1,000 gsm', 'cover'])('%s is none', (text) => {
    expect(weigh(text)).toBeUndefined();
  });
});

describe('a color', () => {
  it.each<[string, string | undefined]>([
    ['#6B7F5B', '#6b7f5b'],
    ['#abc', '#aabbcc'],
    ['#abcd', undefined],
    ['6b7f5b', undefined],
    ['#gggggg', undefined],
  ])('%s is %s', (text, expected) => {
    expect(readSheet(sheetOf(`stock: { m: { color: "${text}" } }`)).stock.get('m')?.color?.value).toBe(
      expected,
    );
  });
});

describe('the sheets of a stock', () => {
  const sizes = (stock: string): unknown[] => {
    const project = readSheet(sheetOf(`stock: { m: ${stock} }`));
    expect(faultsOf(project)).toEqual([]);
    return (project.stock.get('m')?.sheets ?? []).map(({ size, price }) => [
      `${size.width.value} x ${size.height.value}`,
      price?.value.minor,
    ]);
  };

  it.each<[string, unknown[]]>([
    ['{ sheet: 8 1/2 x 11 }', [['17/2 in x 11 in', undefined]]],
    ['{ sheet: 8 1/2 x 11, price: 0.45 }', [['17/2 in x 11 in', 45n]]],
    ['{ sheet: 8 1/2 x 11, price: 0,45 € }', [['17/2 in x 11 in', 45n]]],
    [
      '{ sheets: [8 1/2 x 11, 12 x 12] }',
      [
        ['17/2 in x 11 in', undefined],
        ['12 in x 12 in', undefined],
      ],
    ],
    [
      '{ price: 1, sheets: [{ size: 12 x 12, price: 1.20 }, 8 x 8] }',
      [
        ['12 in x 12 in', 120n],
        ['8 in x 8 in', 100n],
      ],
    ],
    ['{}', []],
  ])('%s', (stock, expected) => {
    expect(sizes(stock)).toEqual(expected);
  });

  // What every object of JavaScript has is no paper.
  it.each([
    ['constructor', 'unknown-reference'],
    ['valueOf', 'unknown-reference'],
    ['__proto__', 'unreadable-length'],
    ['A4x', 'unknown-reference'],
    ['Leter', 'unknown-reference'],
    // There are such sizes, though they are not among ours.
    ['B4', 'unreadable-length'],
  ])('are none of the name %s: %s', (name, rule) => {
    expect(faultsOf(readSheet(sheetOf(`stock: { m: { sheet: ${name} } }`)))).toEqual([`${rule}: ${name}`]);
  });

  it('are named after their id when they have no name', () => {
    expect(readSheet(sheetOf('stock: { dark-moss_green: {} }')).stock.get('dark-moss_green')?.name).toBe(
      'Dark moss green',
    );
  });
});

// Sizes of paper: ISO 216 (A3 to A6 in millimeters); ANSI Y14.1, size A, is Letter, 8 1/2 x 11 in.
describe('each edition has its own paper', () => {
  const say = (sheets: readonly StockSheet[] = []): string =>
    sheets
      .map(({ size, unit }) => printSize({ width: size.width.value, height: size.height.value }, unit))
      .join(', ');
  const papers = (unit: string, stock: string): string[] => {
    const project = readSheet(sheetOf(`unit: ${unit}\nstock: { m: { ${stock} } }`));
    expect(faultsOf(project)).toEqual([]);
    const { sheets, otherSheets } = project.stock.get('m') ?? {};
    return [say(sheets), say(otherSheets)].map((each) => each.replaceAll('×', 'x'));
  };

  it.each<[string, string, string, string]>([
    ['in', 'sheet: 8 1/2 x 11', '8 1/2 x 11 in', '210 x 297 mm'],
    ['in', 'sheet: Letter', '8 1/2 x 11 in', '210 x 297 mm'],
    ['in', 'sheet: 215.9 x 279.4 mm', '216 x 279 mm', '216 x 279 mm'],
    ['in', 'sheet: 11 x 8 1/2', '11 x 8 1/2 in', '297 x 210 mm'],
    ['in', 'sheet: 12 x 12', '12 x 12 in', '305 x 305 mm'],
    ['in', 'sheet: 6 x 6', '6 x 6 in', '152 x 152 mm'],
    ['in', 'sheet: LEGAL', '8 1/2 x 14 in', '216 x 356 mm'],
    ['in', 'sheet: half  Letter', '5 1/2 x 8 1/2 in', '140 x 216 mm'],
    ['in', 'sheet: a4', '210 x 297 mm', '210 x 297 mm'],
    ['in', 'metric sheet: A4', '8 1/2 x 11 in', '210 x 297 mm'],
    ['in', 'sheet: 12 x 12, metric sheet: 300 x 300 mm', '12 x 12 in', '300 x 300 mm'],
    ['in', 'sheets: [Letter, 12 x 12]', '8 1/2 x 11 in, 12 x 12 in', '210 x 297 mm, 305 x 305 mm'],
    ['mm', 'sheet: A3', '297 x 420 mm', '11 11/16 x 16 9/16 in'],
    ['mm', 'sheet: A4', '210 x 297 mm', '8 1/2 x 11 in'],
    ['mm', 'sheet: A5', '148 x 210 mm', '5 13/16 x 8 1/4 in'],
    ['mm', 'sheet: A6', '105 x 148 mm', '4 1/8 x 5 13/16 in'],
    ['mm', 'sheet: 29.7 x 21 cm', '297 x 210 mm', '11 x 8 1/2 in'],
    ['mm', 'sheet: 305 x 305', '305 x 305 mm', '12 x 12 in'],
    ['mm', 'sheet: Letter', '8 1/2 x 11 in', '8 1/2 x 11 in'],
    ['mm', 'sheet: A4, inch sheet: Legal', '210 x 297 mm', '8 1/2 x 14 in'],
    ['mm', 'inch sheet: Letter, metric sheet: A5', '148 x 210 mm', '8 1/2 x 11 in'],
    ['mm', 'weight: 216 gsm', '', ''],
  ])('written in %s, %s: %s; %s', (unit, stock, own, other) => {
    expect(papers(unit, stock)).toEqual([own, other]);
  });

  it('each sheet of both keeps its price and the place it was written at', () => {
    const project = readSheet(sheetOf('stock: { m: { sheet: { size: Letter, price: 0.45 } } }'));
    const { sheets = [], otherSheets = [] } = project.stock.get('m') ?? {};
    for (const { size, price } of [...sheets, ...otherSheets]) {
      expect([blamed(size.at), price?.value.minor]).toEqual(['Letter', 45n]);
    }
  });

  it('whatever is no pair is off by less than half a step', () => {
    const PAIRED = ['136 176', '176 136', '192 192', '96 96'];
    const sixteenths = fc.integer({ min: 16, max: 400 });
    fc.assert(
      fc.property(sixteenths, sixteenths, (across, upright) => {
        fc.pre(!PAIRED.includes(`${across} ${upright}`));
        const project = readSheet(sheetOf(`stock: { m: { sheet: ${across}/16 x ${upright}/16 } }`));
        const { sheets = [], otherSheets = [] } = project.stock.get('m') ?? {};
        const sidesOf = ([sheet]: readonly StockSheet[]): number[] =>
          sheet ? [sheet.size.width.value.mm, sheet.size.height.value.mm] : [];
        const moved = sidesOf(sheets).map((own, side) => Math.abs(own - (sidesOf(otherSheets)[side] ?? 0)));
        expect(moved).toHaveLength(2);
        expect(Math.max(...moved)).toBeLessThanOrEqual(0.5);
      }),
      { seed: 216, numRuns: 60 },
    );
  });
});

describe('a turn', () => {
  it.each<[string, number]>([
    ['{ cut: 1 x 1, turn: 45 }', 45],
    ['{ cut: 1 x 1, at: { turn: 45 } }', 45],
    ['{ cut: 1 x 1, turn: 45° }', 45],
    ['{ cut: 1 x 1, turn: -90 }', 270],
    ['{ cut: 1 x 1, turn: 360 }', 0],
    ['{ cut: 1 x 1, turn: 22.5 }', 22.5],
  ])('%s is %d degrees clockwise', (piece, degrees) => {
    expect(readSheet(sheetOf(`pieces: { a: ${piece} }`)).pieces.get('a')?.placement.turn?.value).toBe(
      degrees,
    );
  });
});
