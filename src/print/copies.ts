import { PDFDocument, type PDFEmbeddedPage } from '@cantoo/pdf-lib';

/** How copies lie on a copy shop's paper: a page on a page; two beside each other on a sheet twice as large; or so that a stack folds into a booklet. */
export const LAYOUTS = ['single', 'two-up', 'booklet'] as const;
export type CopyLayout = (typeof LAYOUTS)[number];

/** The copies, and what to ask the shop for: a sheet's size in points, and how many sheets if both sides are printed. */
export type Copies = {
  readonly pdf: Uint8Array;
  readonly sheet: { readonly width: number; readonly height: number };
  readonly sheets: number;
};

/**
 * One PDF of several copies of another, in order, every one beginning on the front of a sheet. Pages keep their size.
 * Each is in the file once, however many copies are.
 * The same PDF gives the same bytes: it says it was made when the other was. Undefined for bytes that are no whole PDF.
 */
export async function layCopies(
  pdf: Uint8Array,
  count: number,
  layout: CopyLayout,
): Promise<Copies | undefined> {
  const to = await PDFDocument.create({ updateMetadata: false });
  const read = await readInto(to, pdf);
  if (!read) return undefined;
  const { from, pages } = read;
  to.setTitle(from.getTitle() ?? '');
  const date = from.getCreationDate();
  if (date) to.setCreationDate(date);
  const [first] = pages;
  if (!first) return undefined;
  const across = layout === 'single' ? 1 : 2;
  const sheet = { width: first.width * across, height: first.height };
  const sides = sidesOf(pages.length, layout);
  for (let copy = 0; copy < count; copy++) {
    for (const side of sides) {
      const page = to.addPage([sheet.width, sheet.height]);
      for (const [place, number] of side.entries()) {
        const shown: PDFEmbeddedPage | undefined = number === undefined ? undefined : pages[number];
        if (shown) page.drawPage(shown, { x: place * first.width, y: 0 });
      }
    }
  }
  return { pdf: await to.save(), sheet, sheets: (count * sides.length) / 2 };
}

type OpenedCopy = { readonly from: PDFDocument; readonly pages: readonly PDFEmbeddedPage[] };

/** A PDF and its pages, taken over whole; the library throws errors of any kind at what is none, or half of one. */
async function readInto(to: PDFDocument, pdf: Uint8Array): Promise<OpenedCopy | undefined> {
  try {
    const from = await PDFDocument.load(pdf, { updateMetadata: false });
    const pages = await to.embedPages(from.getPages());
    for (const page of pages) await page.embed();
    return { from, pages };
  } catch {
    return undefined;
  }
}

/** The pages, by their numbers from 0, on each side of one copy's sheets; nothing on a blank one. Always an even number of sides. */
function sidesOf(pages: number, layout: CopyLayout): readonly (readonly (number | undefined)[])[] {
  const whole = roundUp(pages, layout === 'single' ? 2 : 4);
  const numbers = Array.from({ length: whole }, (_, index) => (index < pages ? index : undefined));
  if (layout === 'single') return numbers.map((number) => [number]);
  const sides = Array.from({ length: whole / 2 }, (_, side) => side);
  if (layout === 'two-up') return sides.map((side) => [numbers[2 * side], numbers[2 * side + 1]]);
  // The outermost sheet has the last page beside the first on its front, the second beside the last but one on its back.
  return sides.map((side) => {
    const [front, back] = [numbers[side], numbers[whole - 1 - side]];
    return side % 2 === 0 ? [back, front] : [front, back];
  });
}

function roundUp(count: number, step: number): number {
  return Math.ceil(count / step) * step;
}
