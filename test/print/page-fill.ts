import type { Box } from './pdf-marks.ts';
import type { PdfPage, Words } from './read-pdf.ts';

/** What a handout's page keeps free on each side, with the running head and foot in it, in millimeters. */
const MARGIN = 14;
/** What a browser lays under a page is no ink. */
const WHITE = '#ffffff';
/** About how wide a letter is for its height. */
const LETTER = 0.5;
/** Ink this near the middle of a page is in the gap between its columns. */
const GAP = 5;

/** Everything that a page shows within its margins, each by the box about it, in millimeters. */
export function inkOf(page: PdfPage): readonly Box[] {
  const boxes = [...page.words.map(wordBox), ...page.pictures, ...markBoxes(page)];
  return boxes.filter(({ y, height }) => y > MARGIN - 1 && y + height < page.heightMm - MARGIN + 1);
}

export function wordBox({ text, x, y, size }: Words): Box {
  return { x, y: y - size, width: text.length * size * LETTER, height: size };
}

const known = new WeakMap<PdfPage, readonly Box[]>();

/** What is drawn on a page, each by the box about it: several tests ask. */
export function markBoxes(page: PdfPage): readonly Box[] {
  const boxes =
    known.get(page) ?? page.marks.filter(({ color }) => color !== WHITE).map(({ edges }) => boxAbout(edges));
  known.set(page, boxes);
  return boxes;
}

/** From the top of Public Sans's capitals to the foot of its descenders; how wide they are is not known. */
export function lettersBox({ x, y, size }: Words): Box {
  return { x, y: y - 0.72 * size, width: 0, height: 0.92 * size };
}

function boxAbout(edges: PdfPage['marks'][number]['edges']): Box {
  const [xs, ys] = [
    edges.flatMap(({ from, to }) => [from.x, to.x]),
    edges.flatMap(({ from, to }) => [from.y, to.y]),
  ];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** Whether something lies in the left or in the right column of its page; what is wide lies in both. */
export function isInColumn(column: 'left' | 'right', { x, width }: Box, { widthMm }: PdfPage): boolean {
  return column === 'left' ? x < widthMm / 2 - GAP : x + width > widthMm / 2 + GAP;
}

/** How far down a page is filled, as a part of the height between its margins: the mean of its two columns. */
export function fillOf(page: PdfPage): number {
  const ink = inkOf(page);
  const depths = (['left', 'right'] as const).map((column) => {
    const own = ink.filter((box) => isInColumn(column, box, page));
    return Math.max(0, ...own.map(({ y, height }) => y + height - MARGIN));
  });
  return depths.reduce((sum, depth) => sum + depth, 0) / 2 / (page.heightMm - 2 * MARGIN);
}
