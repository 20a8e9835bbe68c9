import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Item = {
  readonly high: number;
  readonly isWide: boolean;
  readonly held: boolean;
  readonly atPage: number;
  readonly atColumn: number;
  readonly nth?: number;
  readonly under?: number;
};
type Band = { readonly split: number; readonly down: number; readonly high: number };
type Page = {
  readonly from: number;
  readonly to: number;
  readonly full: number;
  readonly bands: readonly Band[];
};
type Plan = { readonly cost: number; readonly faults: number; readonly pages: readonly Page[] };
type Room = { readonly height: number; readonly head: number; readonly columns: 1 | 2 };

const script = readFileSync(new URL('../../templates/print/plan-pages.js', import.meta.url), 'utf8');
const planPages = new Function(`${script}; return planPages;`)() as (
  items: readonly Item[],
  room: Room,
) => Plan;

const HEIGHT = 1000;

function item(high: number, more: Partial<Item> = {}): Item {
  return { high, isWide: false, held: false, atPage: 0, atColumn: 0, ...more };
}

/** Supplies, a net across both columns, and five steps of so many paragraphs, two of them with a picture. */
function sheetOf(paragraphs: number): readonly Item[] {
  const supplies = [item(40, { held: true }), ...Array.from({ length: 14 }, () => item(36, { atPage: 0.4 }))];
  const steps = Array.from({ length: 5 }, (_, step) => {
    if (step % 2 === 1) return [item(300 + 20 * paragraphs)];
    const prose = Array.from({ length: paragraphs }, () => item(45, { atPage: 0.5, atColumn: 0.2 }));
    return [item(35, { held: true }), ...prose];
  });
  return [...supplies, item(520, { isWide: true }), ...steps.flat()];
}

describe('the plan of pages', () => {
  it.each(Array.from({ length: 24 }, (_, index) => index + 1))(
    'fills pages of a sheet with steps of %i paragraphs: half at the least, the last a third, no heading at a foot',
    (paragraphs) => {
      const items = sheetOf(paragraphs);
      for (const head of [550, 700, 850]) {
        const { pages } = planPages(items, { height: HEIGHT, head, columns: 2 });
        expect(pages.at(-1)?.to).toBe(items.length);
        const sparse = pages.filter(({ full }, page) => full < (page < pages.length - 1 ? 1 / 2 : 1 / 3));
        expect(sparse).toEqual([]);
        expect(pages.filter(({ to }) => items[to - 1]?.held)).toEqual([]);
        const taken = items.reduce((sum, { high, isWide }) => sum + (isWide ? high : high / 2), head);
        expect(pages.length).toBeLessThanOrEqual(Math.ceil(taken / HEIGHT) + 1);
      }
    },
  );

  it('leaves room for a third of the last page, where all but a little would go on the one before', () => {
    const lines = Array.from({ length: 21 }, () => item(50));
    const { pages } = planPages(lines, { height: HEIGHT, head: 0, columns: 1 });
    expect(pages.map(({ from, to }) => to - from).at(-1)).toBeGreaterThanOrEqual(7);
    expect(pages).toHaveLength(2);
  });

  it('begins a second column as far down as its list, where there is room and the heading stands in the first', () => {
    const list = [item(60, { held: true }), ...Array.from({ length: 10 }, () => item(100))];
    const items = list.map((each, nth) => ({ ...each, nth, under: 60 }));
    const bandsIn = (height: number): readonly Band[] =>
      planPages(items, { height, head: 0, columns: 2 }).pages.flatMap(({ bands }) => bands);
    expect(bandsIn(560)).toMatchObject([{ split: 6, down: 60, high: 560 }]);
    expect(bandsIn(559)).not.toMatchObject([{ down: 60 }]);
    const onLaterPages = bandsIn(260).slice(1);
    expect(onLaterPages.map(({ down }) => down)).toEqual(onLaterPages.map(() => 0));
  });

  it('finds the cheapest of all ways to break, tried one after the other', () => {
    const highs = [310, 120, 260, 90, 410, 200, 150, 330];
    const items = highs.map((high, index) => item(high, { atPage: index % 3, held: index === 3 }));
    const ways = Array.from({ length: 2 ** 7 }, (_, bits) => costOfWay(items, bits));
    const { cost } = planPages(items, { height: HEIGHT, head: 0, columns: 1 });
    expect(cost).toBeCloseTo(Math.min(...ways), 9);
  });
});

/** The cost of a way to break, a bit for each item but the first: ten a page, what is blank, and what is torn. */
function costOfWay(items: readonly Item[], bits: number): number {
  const starts = items.flatMap((_, index) => (index === 0 || (bits >> (index - 1)) & 1 ? [index] : []));
  return starts.reduce((cost, from, page) => {
    const to = starts[page + 1] ?? items.length;
    const full = items.slice(from, to).reduce((sum, { high }) => sum + high, 0) / HEIGHT;
    if (full > 1 || (to < items.length && items[to - 1]?.held)) return Number.POSITIVE_INFINITY;
    const least = to < items.length ? 0.53 : 0.37;
    const sparse = full < least ? 12 * (1 + least - full) : 0;
    const blank = to < items.length ? 2 * (1 - full) ** 2 : 0;
    return cost + 10 + sparse + blank + (from > 0 ? (items[from]?.atPage ?? 0) : 0);
  }, 0);
}
