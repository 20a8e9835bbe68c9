import { describe, expect, it } from 'vitest';
import { blamed, faultsOf, pieceOf, readSheet, sheetOf } from './reading.ts';

/** The cut of a piece in a sheet, with the very characters it was read from. */
function cutOf(piece: string): string {
  const project = readSheet(sheetOf(`unit: cm\npieces: ${piece}`));
  expect(faultsOf(project)).toEqual([]);
  const { body } = pieceOf(project, 'a');
  if (body.kind !== 'flat') throw new Error('a is not flat');
  const { width, height, at } = body.cut;
  return `${width.value.mm} x ${height.value.mm}: ${blamed(at)}`;
}

describe('a decimal comma in braces, where YAML ends a value', () => {
  it.each<[string, string]>([
    ['{ a: { cut: 7,4 x 7,4 } }', '74 x 74: 7,4 x 7,4'],
    ['{ a: { cut: 21 x 29,7, corners: 0,5 } }', '210 x 297: 21 x 29,7'],
    ['{ a: { corners: 1, cut: 21 x 29,7 cm } }', '210 x 297: 21 x 29,7 cm'],
    ['{ a: { cut: "7,4 x 7,4" } }', '74 x 74: 7,4 x 7,4'],
    ['\n    a:\n      cut: 7,4 x 7,4', '74 x 74: 7,4 x 7,4'],
  ])('%s', (piece, cut) => {
    expect(cutOf(piece)).toBe(cut);
  });

  it('is read in a price, a weight and a turn too', () => {
    const { stock, pieces, findings } = readSheet(
      sheetOf(
        'stock: { m: { price: 0,45, weight: 216,5 gsm } }\npieces: { b: { cut: 5 x 5 }, a: { cut: 1 x 1, on: b, at: { turn: 22,5 } } }',
      ),
    );
    expect(findings).toEqual([]);
    expect(stock.get('m')?.weight?.value).toEqual({ kind: 'grammage', gsm: 216.5 });
    expect(pieces.get('a')?.placement.turn?.value).toBe(22.5);
  });

  it('points at the place of each number', () => {
    const [fault] = readSheet(sheetOf('pieces: { a: { cut: 7,4 x 7,4 x 7,4, corners: 1 } }')).findings;
    expect(fault && blamed(fault.at)).toBe('7,4 x 7,4 x 7,4');
  });

  it.each<[string, string[]]>([
    // What has a blank behind the comma is no decimal, and a list is a list.
    ['pieces: { a: { cut: 7, 4 x 7 } }', ['unknown-key: 4 x 7', 'unreadable-length: 7']],
    ['pieces: { a: { cut: 3 x 4, 5 } }', ['unknown-key: 5']],
    ['pieces: { a: { cut: 3 x 4, score: [{ from: left, at: [1,2] }] } }', []],
    ['pieces: { a: { cut: 3 x 4,corners: 1 } }', []],
  ])('%s', (block, faults) => {
    const found = faultsOf(readSheet(sheetOf(block)));
    expect(found.filter((fault) => !fault.startsWith('missing-value'))).toEqual(faults);
  });
});
