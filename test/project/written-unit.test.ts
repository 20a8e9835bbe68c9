import { describe, expect, it } from 'vitest';
import { cutOf, faultsOf, pieceOf, readSheet, sheetOf } from './reading.ts';

/** Sizes of which every number is in millimeters, wherever the unit stands. */
const METRIC = ['57 mm x 102', '57 x 102 mm', '57mm x 102mm', '5.7 cm x 10.2', '"57 \\x6dm x 102"'];

describe('a unit behind one number of a size', () => {
  it.each(METRIC)('is that of the piece and of its lengths: %s', (cut) => {
    const project = readSheet(sheetOf(`pieces: { a: { cut: ${cut} } }`));
    expect(faultsOf(project)).toEqual([]);
    const { body } = pieceOf(project, 'a');
    expect(body.kind === 'flat' && body.cut.unit).toBe(cut.includes('cm') ? 'cm' : 'mm');
    expect(cutOf(project, 'a').map((each) => each.split(' in ')[0])).toEqual(['285/127', '510/127']);
  });

  it.each(METRIC)('is that of a sheet of paper: %s', (sheet) => {
    const project = readSheet(
      sheetOf(`stock: { m: { sheet: ${sheet} } }\npieces: { a: { stock: m, cut: 1 x 1 } }`),
    );
    const { sheets = [], otherSheets = [] } = project.stock.get('m') ?? {};
    expect([...sheets, ...otherSheets].map(({ unit, size }) => [unit, size.width.value.mm])).toEqual([
      ['mm', 57],
      ['mm', 57],
    ]);
  });

  it.each([
    ['80 mm x 60 x 20', 'mm'],
    ['80 x 60 mm x 20', 'mm'],
    ['80 x 60 x 20 mm', 'mm'],
    ['3 x 2 x 1', 'in'],
    ['80 mm x 60 mm x 1 in', 'in'],
  ])('is what a form measures with: %s', (inside, ruler) => {
    const project = readSheet(sheetOf(`pieces: { a: { form: tray, inside: ${inside} } }`));
    expect(pieceOf(project, 'a').body).toMatchObject({ ruler });
  });
});
