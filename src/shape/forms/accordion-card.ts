import type { Form } from '../form.ts';
import { sizeOfCard } from '../forming/box.ts';
import { form, optional } from '../forming/form.ts';
import { mountain, valley } from '../forming/layout.ts';

const LEAST_PAGES = 2;
const MOST_PAGES = 12;

/** A strip folded back and forth into pages of equal width; the first is the front of the closed card. */
export const accordionCard: Form = form({
  name: 'accordion card',
  summary: 'A strip folded back and forth into pages of equal width.',
  size: sizeOfCard('width x height of the folded card'),
  parameters: {
    pages: optional('count', 'how many pages, 2 to 12; 4 by default'),
  },
  panels: ['page-1', 'page-2', 'page-3', 'page-4'],
  example: {
    settings: ['size: 2 1/8 x 5 1/2', 'pages: 4'],
    layer: { panel: 'page-1', cut: '1 7/8 x 5 1/4' },
  },
  closing: 'Fold back and forth, the first fold away from you, and burnish the stack.',
  mailed: 'card',
  measure: (settings, size) => {
    const pages = settings.count('pages', 4);
    const right = pages.value >= LEAST_PAGES && pages.value <= MOST_PAGES;
    if (!right) {
      const message = `pages of ${settings.piece}: ${pages.value}; an accordion card has ${LEAST_PAGES} to ${MOST_PAGES}`;
      settings.refuse(pages.at, message, `write a number from ${LEAST_PAGES} to ${MOST_PAGES}`);
    }
    return { ...size, pages: Array.from({ length: pages.value }, (_, index) => `page-${index + 1}`) };
  },
  layout: ({ width, height, pages }) => ({
    columns: pages.map(() => width),
    rows: [height],
    cells: [pages],
    bends: pages.slice(1).map((page, index) => {
      const pair = [`${pages[index]}|${page}`];
      return index % 2 === 0 ? mountain(index + 1, pair, 180) : valley(index + 1, pair, 180);
    }),
  }),
});
