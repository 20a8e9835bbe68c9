import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { type CopyLayout, layCopies } from '../../src/print/copies.ts';
import { folderWith, sheetwright } from '../cli/terminal.ts';
import { getDocument } from './pdfjs.ts';

const LETTER = [612, 792] as const;
/** 210 by 297 mm (ISO 216) in points, as a browser rounds them. */
const A4 = [594.96, 841.92] as const;

async function handout(pages: number, size: readonly [number, number] = LETTER): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  const font = await pdf.embedFont(StandardFonts.Helvetica);
  for (let page = 1; page <= pages; page++) {
    pdf.addPage([...size]).drawText(`page ${page}`, { x: 72, y: 700, size: 12, font });
  }
  return pdf.save();
}

async function laid(from: Uint8Array, count: number, layout: CopyLayout) {
  const copies = await layCopies(from, count, layout);
  if (!copies) throw new Error('a PDF was taken for none');
  return copies;
}

/** What pdfjs reads on each side, from left to right: the words, and how far from the left they begin. */
async function sidesOf(pages: number, count: number, layout: CopyLayout) {
  const { pdf, sheets } = await laid(await handout(pages), count, layout);
  const read = await getDocument({ data: Uint8Array.from(pdf), verbosity: 0 }).promise;
  const sides: {
    readonly words: readonly string[];
    readonly at: readonly number[];
    readonly size: unknown;
  }[] = [];
  for (let number = 1; number <= read.numPages; number++) {
    const page = await read.getPage(number);
    const { items } = await page.getTextContent();
    const texts = items
      .flatMap((item) =>
        'str' in item && item.str.trim() ? [{ text: item.str, x: item.transform[4] as number }] : [],
      )
      .toSorted((a, b) => a.x - b.x);
    const { width, height } = page.getViewport({ scale: 1 });
    sides.push({ words: texts.map(({ text }) => text), at: texts.map(({ x }) => x), size: [width, height] });
  }
  return { sides, sheets };
}

describe('copies for the copy shop', () => {
  it('begin on the front of a sheet, each of them', async () => {
    const { sides, sheets } = await sidesOf(3, 2, 'single');
    const copy = [['page 1'], ['page 2'], ['page 3'], []];
    expect(sides.map(({ words }) => words)).toEqual([...copy, ...copy]);
    expect(sides.every(({ size }) => JSON.stringify(size) === JSON.stringify(LETTER))).toBe(true);
    expect(sheets).toBe(4);
  });

  it('lie two beside each other at their own size, on paper twice as large', async () => {
    const { sides, sheets } = await sidesOf(3, 1, 'two-up');
    expect(sides.map(({ words }) => words)).toEqual([['page 1', 'page 2'], ['page 3']]);
    expect(sides[0]).toMatchObject({ size: [1224, 792], at: [72, 612 + 72] });
    expect(sheets).toBe(1);
  });

  // The order of an eight-page saddle-stitched booklet: 8-1, 2-7, 6-3, 4-5; common practice, no source.
  it('fold into a booklet', async () => {
    const eight = await sidesOf(8, 1, 'booklet');
    const numbers = eight.sides.map(({ words }) => words.map((word) => Number(word.slice(5))));
    expect(numbers).toEqual([
      [8, 1],
      [2, 7],
      [6, 3],
      [4, 5],
    ]);
    // Of three pages the fourth, outside at the back, is blank.
    const three = await sidesOf(3, 1, 'booklet');
    expect(three.sides.map(({ words }) => words)).toEqual([['page 1'], ['page 2', 'page 3']]);
    expect(three.sides[0]?.at).toEqual([612 + 72]);
  });

  it('are written where the demonstrator keeps what is theirs, with what to ask the shop for', async () => {
    const folder = folderWith({
      'dist/site/card/card-letter.pdf': await handout(2),
      'dist/site/card/card-a4.pdf': await handout(2, A4),
    });
    for (const [print, sheet] of [
      ['letter', '17 x 11 in'],
      ['a4', 'A3'],
    ] as const) {
      const asked = ['--count', '12', '--layout', 'two-up', '--print', print];
      const done = await sheetwright(folder, 'copies', 'card', ...asked);
      expect(done).toMatchObject({ code: 0, err: '' });
      const path = `dist/host/card-copies/card-${print}-12-two-up.pdf`;
      expect(done.out).toContain(
        `${path}: 12 copies on 12 sheets of ${sheet}\nPrint on both sides, flipped on the short edge, at 100 %`,
      );
      expect(existsSync(join(folder, path))).toBe(true);
    }
  });

  it('hold each page once, and are the same bytes each time', async () => {
    const from = await handout(4);
    const [one, many, again] = await Promise.all([
      laid(from, 1, 'single'),
      laid(from, 40, 'single'),
      laid(from, 40, 'single'),
    ]);
    expect(many.pdf.length).toBeLessThan(20 * one.pdf.length);
    expect(Buffer.from(many.pdf).equals(Buffer.from(again.pdf))).toBe(true);
  });

  it('are not made of what is no PDF, half of one, or one without pages', async () => {
    const whole = await handout(2);
    const empty = await (await PDFDocument.create()).save({ addDefaultPage: false });
    const broken = [
      Buffer.from(''),
      Buffer.from('%PDF-1.7\nbroken'),
      whole.slice(0, whole.length / 2),
      empty,
    ];
    for (const pdf of broken) expect(await layCopies(pdf, 2, 'single')).toBeUndefined();
  });
});
