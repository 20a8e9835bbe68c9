import { describe, expect, it } from 'vitest';
import type { PaperWeight } from '../../src/project/model.ts';
import { faultsOf, readSheet, sheetOf } from './reading.ts';

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
    ['216 g/m²', { kind: 'grammage', gsm: 216 }],
    ['216.5 g/m2', { kind: 'grammage', gsm: 216.5 }],
  ])('%s', (text, weight) => {
    expect(weigh(text)).toEqual(weight);
  });

  it.each(['80', '80 lb', '80 lb card', '0 gsm', '-80 gsm', 'cover'])('%s is none', (text) => {
    expect(weigh(text)).toBeUndefined();
  });
});

describe('a colour', () => {
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

  it('are named after their id when they have no name', () => {
    expect(readSheet(sheetOf('stock: { dark-moss_green: {} }')).stock.get('dark-moss_green')?.name).toBe(
      'Dark moss green',
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
