import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { findingsOf } from './workspace.ts';

/** Errors and warnings. */
const said = (piece: string): string[] =>
  findingsOf(sheetWith({ stock: 'cream: { sheet: 24 x 24 }', pieces: `card:\n  stock: cream\n  ${piece}` }))
    .filter(({ severity }) => severity !== 'note')
    .map(({ rule, message }) => `${rule}: ${message}`);

const strip = (cut: string, at: string, more = ''): string =>
  `cut: ${cut}\n  score: [{ from: left, at: [${at}] }]${more}`;

/** What somebody may well want to make, and is right. */
describe('a right sheet', () => {
  it.each([
    ['a rail whose returns meet in the middle', strip('3 x 6', '1/2, 1, 2, 2 1/2')],
    ['a rail whose returns leave a gap', strip('3 1/2 x 6', '1/2, 1, 2 1/2, 3')],
    ['a frame with returns on two sides', strip('8 x 4', '1, 2, 6, 7')],
  ])('has nothing said of it: %s', (_, piece) => {
    expect(said(piece)).toEqual([]);
  });
});
