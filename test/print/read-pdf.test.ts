import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { linesAt } from './pdf-lines.ts';
import { type Pdf, readPdf } from './read-pdf.ts';

/**
 * A PDF of one page with these operators, written by hand after ISO 32000-1 (7.5, 8.2), so that the reader is measured
 * against the standard and not against a browser.
 */
function onePage(operators: string, form = ''): Uint8Array {
  const objects = [
    '<</Type /Catalog /Pages 2 0 R>>',
    '<</Type /Pages /Kids [3 0 R] /Count 1>>',
    '<</Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources <</XObject <</Form 5 0 R>>>>>>',
    `<</Length ${operators.length}>> stream\n${operators}\nendstream`,
    `<</Type /XObject /Subtype /Form /BBox [0 0 612 792] /Matrix [1 0 0 1 36 0] /Length ${form.length}>> stream\n${form}\nendstream`,
  ];
  let file = '%PDF-1.4\n';
  const offsets = objects.map((object, index) => {
    const offset = file.length;
    file += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return offset;
  });
  const table = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  file += `xref\n0 6\n0000000000 65535 f \n${table}trailer <</Size 6 /Root 1 0 R>>\nstartxref\n${file.length}\n%%EOF`;
  return Buffer.from(file, 'latin1');
}

async function firstPage(operators: string, form?: string): Promise<Pdf['pages'][number]> {
  const { pages } = await readPdf(onePage(operators, form));
  const [page] = pages;
  if (!page) throw new Error('no page was read');
  return page;
}

const HAIR = { beside: 1e-3, ends: 1e-3 };

describe('pdf.js', () => {
  it('leaves what the engine has to the tests that run after it', () => {
    // What a replaced function says of itself may be made up; another realm asks.
    const sourceOf = runInNewContext('(each) => Function.prototype.toString.call(each)');
    for (const own of [[].push, JSON.parse, JSON.stringify, Function.prototype.toString])
      expect(sourceOf(own)).toContain('[native code]');
  });
});

describe('reading what a page draws', () => {
  it('measures from the top left corner, in millimeters', async () => {
    const page = await firstPage('2 w 72 720 m 144 720 l S');
    expect([page.widthMm, page.heightMm]).toEqual([expect.closeTo(215.9, 6), expect.closeTo(279.4, 6)]);
    expect(page.lines).toHaveLength(1);
    expect(linesAt(page.lines, { x: 25.4, y: 25.4 }, { x: 50.8, y: 25.4 }, HAIR)).toHaveLength(1);
    expect(page.lines[0]?.width).toBeCloseTo((2 * 25.4) / 72, 6);
  });

  it('honors transforms, one within the other, and forgets them on restore', async () => {
    // Moved by one inch, then turned by a quarter anticlockwise, then doubled: (36, 0) comes to (72, 72 + 72).
    const page = await firstPage(
      'q 1 0 0 1 72 72 cm 0 1 -1 0 0 0 cm 2 0 0 2 0 0 cm 1 w 0 0 m 36 0 l S Q 0 0 m 72 0 l S',
    );
    const bottom = 279.4;
    expect(
      linesAt(page.lines, { x: 25.4, y: bottom - 25.4 }, { x: 25.4, y: bottom - 50.8 }, HAIR),
    ).toHaveLength(1);
    expect(linesAt(page.lines, { x: 0, y: bottom }, { x: 25.4, y: bottom }, HAIR)).toHaveLength(1);
    expect(page.lines[0]?.width).toBeCloseTo((2 * 25.4) / 72, 6);
  });

  it('follows a form by its own matrix and comes back', async () => {
    const page = await firstPage('/Form Do 0 36 m 72 36 l S', '0 72 m 72 72 l S');
    const bottom = 279.4;
    expect(
      linesAt(page.lines, { x: 12.7, y: bottom - 25.4 }, { x: 38.1, y: bottom - 25.4 }, HAIR),
    ).toHaveLength(1);
    expect(linesAt(page.lines, { x: 0, y: bottom - 12.7 }, { x: 25.4, y: bottom - 12.7 }, HAIR)).toHaveLength(
      1,
    );
  });

  it('closes rectangles and outlines, and keeps their color', async () => {
    const page = await firstPage('1 0 0 RG 72 72 144 36 re S 300 300 m 372 300 l 372 372 l s');
    expect(page.marks.map(({ edges }) => edges.length)).toEqual([4, 3]);
    expect(page.marks.map(({ color }) => color)).toEqual(['#ff0000', '#ff0000']);
  });

  it('cuts a curve into chords that keep to it', async () => {
    // The usual quarter circle of radius 72 pt: control points at 0.5523 of the radius (within 0.03 % of a circle).
    const page = await firstPage('72 0 m 72 39.765 39.765 72 0 72 c S');
    expect(page.lines).toEqual([]);
    for (const { to } of page.marks[0]?.edges ?? []) {
      expect(Math.hypot(to.x, 279.4 - to.y)).toBeCloseTo(25.4, 1);
    }
  });

  it('reads the dashes of a line, drawn as ink, as one line, and a thick shape as none', async () => {
    const dash = (x: number): string => `${x} 99.5 m ${x + 6} 99.5 l ${x + 6} 100.5 l ${x} 100.5 l h`;
    const page = await firstPage(`${[72, 82, 92, 102].map(dash).join(' ')} f 200 200 72 72 re f`);
    expect(page.lines).toHaveLength(1);
    expect(page.lines[0]?.dashes).toBe(4);
    const y = 279.4 - (100 * 25.4) / 72;
    expect(linesAt(page.lines, { x: 25.4, y }, { x: (108 * 25.4) / 72, y }, HAIR)).toHaveLength(1);
  });

  it('does not join dashes round a corner', async () => {
    const along = [72, 82].map((x) => `${x} 99.5 6 1 re`);
    const up = [110, 120].map((y) => `99.5 ${y} 1 6 re`);
    const page = await firstPage(`${[...along, ...up].join(' ')} f`);
    expect(page.lines.map(({ dashes }) => dashes)).toEqual([2, 2]);
  });

  it('finds no line where none is', async () => {
    const page = await firstPage('72 720 m 144 720 l S');
    const off = { beside: 0.1, ends: 0.1 };
    expect(linesAt(page.lines, { x: 25.4, y: 25.55 }, { x: 50.8, y: 25.55 }, off)).toEqual([]);
    expect(linesAt(page.lines, { x: 25.4, y: 25.45 }, { x: 50.8, y: 25.45 }, off)).toHaveLength(1);
    expect(linesAt(page.lines, { x: 25.4, y: 25.4 }, { x: 51.1, y: 25.4 }, off)).toEqual([]);
  });
});
