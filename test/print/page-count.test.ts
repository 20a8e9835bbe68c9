import { afterAll, describe, expect, it } from 'vitest';
import { pageCount } from '../../src/print/pdf.ts';
import { openPrinter } from '../../src/print/printer.ts';
import { readPdf } from './read-pdf.ts';

describe('the number of pages', () => {
  const printer = openPrinter();
  afterAll(() => printer.close());

  it.each([1, 2, 3, 8, 9, 40, 100])('is %i, as another reader counts them', async (count) => {
    const pages = Array.from({ length: count }, (_, index) => `<h2 style="break-after: page">${index}</h2>`);
    const last = pages.at(-1)?.replace(/ style="[^"]*"/u, '');
    const html = `<!doctype html><html lang="en"><title>t</title>${[...pages.slice(0, -1), last].join('')}`;
    const bytes = await printer.pdf(html, { title: 't', date: '2026-12-10' });
    expect((await readPdf(bytes)).pages).toHaveLength(count);
    expect(pageCount(bytes)).toBe(count);
  });

  it('is not guessed', () => {
    expect(() => pageCount(new TextEncoder().encode('%PDF-1.4'))).toThrow('without a table of its objects');
  });
});
