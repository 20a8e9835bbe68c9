import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { createRenderer } from '../../src/handout/render.ts';
import { bagLabels } from '../../src/kit-pages/bag-labels.ts';
import { layoutDrawing } from '../../src/kit-pages/layout-drawing.ts';
import { kitPage } from '../../src/kit-pages/page.ts';
import { costRows, shoppingGroups, withoutNote } from '../../src/kit-pages/shopping.ts';
import { stepRows } from '../../src/kit-pages/steps.ts';
import { kitWords } from '../../src/kit-pages/words.ts';
import { Length } from '../../src/measure/length.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { demoCopy, sheetwright } from '../cli/terminal.ts';
import { elementsOf } from '../drawing/drawn.ts';
import { labels, templates } from '../handout/sample.ts';
import { openBrowser, openPage } from '../page/browser.ts';
import { BENCH, order, planned, projectOf } from './kits.ts';

const DOLLAR = { code: 'USD', decimals: 2 };
const words = kitWords(voiceOf(labels), 'inch', DOLLAR);
const { site } = readWorkspaceFromTexts({ 'site.yaml': 'title: Bench' });

/** The only stock of a project of one stock, and its layouts. */
function planOf(
  measurements: string,
  attendees: number,
  more = {},
): ReturnType<typeof planned>['stocks'][number] {
  const [plan] = planned(projectOf(measurements), order(attendees, more)).stocks;
  if (!plan) throw new Error('no plan');
  return plan;
}

/** Markup as it is read. */
function text(markup: { toString(): string }): string {
  return String(markup)
    .replace(/<[^>]+>/gu, '')
    .replaceAll('&#39;', "'");
}

const FOUR =
  '  stock: { card: { name: Card, sheet: 8 x 11, color: "#336699", print: upright } }\n  pieces: { front: { stock: card, cut: 4 x 5 } }';

describe('the steps at the trimmer', () => {
  it('measure from one edge, cut equal parts together and set the trimmer as seldom as can be', () => {
    const plan = planOf(FOUR, 4);
    const [layout] = plan.layouts;
    const rows = layout ? stepRows(layout, words) : [];
    expect(rows.map(({ setting, cut, gives }) => [setting && text(setting), text(cut), text(gives)])).toEqual(
      [
        ['5 in', '2 cuts from the top edge of the sheet', '2\u00a0parts 8 × 5 in, offcut 8 × 1 in'],
        ['4 in', '1 cut from the left edge of each 8 × 5 in part (2 parts)', '4\u00a0×\u00a0A'],
      ],
    );
  });

  it('say where the setting stays, and where a cut is too long for the trimmer', () => {
    const plan = planOf(
      '  stock: { card: { sheet: 14 x 10, print: upright } }\n  pieces: { a: { stock: card, cut: 14 x 3 }, b: { stock: card, cut: 3 x 4 } }',
      2,
      { bench: { ...BENCH, trimmer: Length.of(12, 1, 'in') } },
    );
    const rows = plan.layouts.flatMap((layout) => stepRows(layout, words));
    expect(rows.map(({ tooLong }) => tooLong && text(tooLong))).toContain(
      'This 14 in cut is longer than your trimmer: use a craft knife and ruler.',
    );
    expect(rows.some(({ setting }) => setting === undefined)).toBe(true);
  });
});

describe('the drawing of a layout', () => {
  it('shows every piece to scale, what is kept, and a number for each step', () => {
    const plan = planOf(FOUR.replace('4 x 5', '4 x 4'), 4);
    const [layout] = plan.layouts;
    if (!layout) throw new Error('no layout');
    const drawing = layoutDrawing(plan, layout, words);
    const elements = elementsOf(drawing.svg);
    const tinted = elements.filter(({ attributes }) => attributes.class === 'paper tint');
    expect(tinted).toHaveLength(4);
    // 8 × 11 in are drawn 62 mm high.
    const side = (62 / 11) * 4;
    for (const { attributes } of tinted) expect(areaOf(attributes.d ?? '')).toBeCloseTo(side * side, 1);
    const written = elements.filter(({ name }) => name === 'text').map((each) => each.text);
    expect(written.filter((each) => each === 'A front')).toHaveLength(4);
    expect(written).toContain('keep');
    for (const number of layout.steps.keys()) expect(written).toContain(String(number + 1));
    expect(drawing.alternative).toBe(
      'A sheet of Card, 8 by 11 inches, cut into 4 front of 4 by 4 inches. Left to keep: 8 by 3 inches.',
    );
  });

  it('names pieces too small for their name by a letter', () => {
    const plan = planOf(
      '  stock: { card: { sheet: 8 x 11 } }\n  pieces: { long-name: { stock: card, cut: 1/2 x 1/2 } }',
      4,
    );
    const [layout] = plan.layouts;
    const svg = layout ? layoutDrawing(plan, layout, words).svg : '';
    expect(elementsOf(svg).filter((each) => each.name === 'text' && each.text === 'A')).toHaveLength(4);
  });
});

describe('the numbers of the cuts', () => {
  // Pieces of 1 in, and a sheet of small ones beside large ones.
  it.each([
    ['8 1/2 x 11', '{ a: { stock: card, cut: 1 x 1 } }', 80],
    ['12 x 12', '{ a: { stock: card, cut: 1 x 3 }, b: { stock: card, cut: 4 1/2 x 3 1/4 } }', 12],
    ['8 1/2 x 11', '{ a: { stock: card, cut: 1/2 x 2 1/2 }, b: { stock: card, cut: 5 x 7 } }', 8],
  ])('lie on no label and on no other, on a sheet of %s', (sheet, pieces, count) => {
    const plan = planOf(`  stock: { card: { sheet: ${sheet} } }\n  pieces: ${pieces}`, count);
    for (const layout of plan.layouts) {
      const circles = elementsOf(layoutDrawing(plan, layout, words).svg).flatMap(circleOf);
      const letters = elementsOf(layoutDrawing(plan, layout, words).svg).flatMap(letterOf);
      expect(circles.length).toBeGreaterThanOrEqual(layout.steps.length);
      expect(letters.length).toBeGreaterThan(0);
      for (const [index, one] of circles.entries())
        for (const other of [...circles.slice(index + 1), ...letters])
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(
            one.radius + other.radius - 0.02,
          );
    }
  });
});

type Round = { readonly x: number; readonly y: number; readonly radius: number };

function circleOf({
  name,
  attributes: { cx, cy, r },
}: ReturnType<typeof elementsOf>[number]): readonly Round[] {
  return name === 'circle' ? [{ x: Number(cx), y: Number(cy), radius: Number(r) }] : [];
}

/** The middle of a piece's letter, and half the height of a capital, 0.7 of the type's. */
function letterOf({
  name,
  text: letter,
  attributes: { x, y, 'font-size': size },
}: ReturnType<typeof elementsOf>[number]): readonly Round[] {
  if (name !== 'text' || !/^[A-Z]$/u.test(letter)) return [];
  const radius = 0.35 * Number(size);
  return [{ x: Number(x), y: Number(y) - radius, radius }];
}

describe('the pages of a kit', () => {
  it('say everything a project says as text, never as markup', () => {
    const project = projectOf(
      "  stock: { card: { name: '<b>Card</b>', sheet: 8 x 11 } }\n  pieces: { a: { stock: card, cut: 4 x 4 } }",
      "supplies:\n  - { item: '<script>alert(1)</script>', kind: ink }\n",
    );
    const kit = planned(project, order(2));
    const { html } = kitPage({
      kit,
      site,
      currency: DOLLAR,
      labels,
      renderer: createRenderer(templates),
      target: 'page',
      styles: { kind: 'linked', hrefs: [] },
    });
    expect(html).not.toMatch(/<script|<b>/u);
    expect(html).toContain('&lt;b&gt;Card&lt;/b&gt;');
    expect(html).toContain('&lt;script&gt;');
  });

  // Six circles 4 in across: a sheet of 8 x 11 in holds 2 x 2 boxes of that size and no fifth, so two sheets it is.
  it('lay out the box round an outline, and say that it is then cut out', () => {
    const project = projectOf(
      '  stock: { card: { sheet: 8 x 11 } }\n  pieces: { seal: { stock: card, cut: 4 x 4, shape: circle, openings: { eye: { slot: 1 } } } }',
    );
    const kit = planned(project, order(6));
    expect(kit.stocks.map(({ total, proven }) => [total, proven])).toEqual([[2, true]]);
    const renderer = createRenderer(templates);
    const styles = { kind: 'linked', hrefs: [] } as const;
    const { html } = kitPage({ kit, site, currency: DOLLAR, labels, renderer, target: 'page', styles });
    expect(text(html)).toContain(
      'The trimmer cuts each of these as the smallest rectangle around its outline; then cut it out by hand or with a die: the seal (× 6).',
    );
    expect(text(html)).toContain('Then by hand, with a craft knife on a mat: the eye of the seal (× 6).');
  });

  it('say what is unknown, and what a sum leaves out', () => {
    const project = projectOf(
      '  stock: { card: { name: Card, sheet: 8 x 11, price: 0.5 }, other: { name: Other, sheet: 8 x 11 } }\n  pieces: { a: { stock: card, cut: 4 x 4 }, b: { stock: other, cut: 4 x 4 } }',
    );
    const { shopping, cost } = planned(project, order(2));
    const [paper] = shoppingGroups(shopping, words);
    const [buying] = costRows(cost, words);
    expect(withoutNote({ total: undefined, without: [...'abcdefg'] }, words)).toBe(
      'without 7 items on the list: amount or price unknown',
    );
    expect(paper?.rows.map((row) => row.cost)).toEqual(['$0.50', 'price unknown']);
    expect(buying).toMatchObject({ value: '$0.50', note: 'without Other: amount or price unknown' });
  });

  it('have a line for each part of the price that is given, and say which are not', () => {
    const project = projectOf(
      '  stock: { card: { name: Card, sheet: 8 x 11, price: 0.5 } }\n  pieces: { a: { stock: card, cut: 8 x 11 } }',
    );
    const kit = planned(project, order(2, { pricing: { room: { minor: 900n } } }));
    const renderer = createRenderer(templates);
    const styles = { kind: 'linked', hrefs: [] } as const;
    const { html } = kitPage({ kit, site, currency: DOLLAR, labels, renderer, target: 'page', styles });
    const [, price = ''] = html.split('Price of a place');
    expect(text(price.split('</table>')[0] ?? '').replace(/\s+/gu, ' ')).toContain(
      'Materials used$1.00$0.50 Room$9.00$4.50 Tool wear · Your work · Booking platform · Postagenot given Rounding$0.00$0.00 Price$10.00$5.00',
    );
  });

  it('have a label for every bag, with what the food in it may contain', () => {
    const project = projectOf(
      '  stock: { card: { name: Card, sheet: 8 x 11 } }\n  pieces: { tray: { stock: card, cut: 4 x 4 } }\n  holds: { item: biscuit, food: yes, allergens: [wheat, milk] }',
    );
    const renderer = createRenderer(templates);
    const styles = { kind: 'linked', hrefs: [] } as const;
    const kit = planned(project, order(3));
    const { html } = bagLabels({ kit, site, currency: DOLLAR, labels, renderer, target: 'letter', styles });
    expect(html.match(/Contains or may contain wheat and milk\./gu)).toHaveLength(3);
    expect(html.match(/Kit \d of 3/gu)).toHaveLength(3);
  });

  it('speak the unit the project is measured in', () => {
    const inMetric = kitWords(voiceOf(labels), 'metric', DOLLAR);
    expect(text(inMetric.size({ width: Length.of(57, 1, 'mm'), height: Length.of(7, 2, 'mm') }))).toBe(
      '57 × 3.5 mm',
    );
    // Nothing on a ruler: it is said that it was rounded.
    expect(text(inMetric.length(Length.of(1, 3, 'in')))).toBe('≈8 mm');
    expect(text(words.length(Length.of(1, 3, 'in')))).toBe('≈5/16 in');
    expect(text(words.length(Length.of(9, 4, 'in')))).toBe('2 1/4 in');
  });
});

describe('the page on a screen', async () => {
  const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  const browser = await openBrowser();
  afterAll(() => browser.stop());
  const folder = demoCopy();
  await sheetwright(folder, 'kit', 'story-slide-box', '--attendees', '24', '--quiet', '--margin', '25');
  const address = pathToFileURL(join(folder, 'dist/host/story-slide-box-kit-24/index.html')).href;

  it.each([320, 390, 1280])(
    'has no fault that axe-core finds, and nothing to scroll aside, at %i px',
    async (width) => {
      const { page, complaints, requests } = await openPage(browser, address, { width });
      expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
      await page.evaluate(axe);
      const violations = await page.evaluate(
        `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => String(target))]))`,
      );
      expect(violations).toEqual([]);
      expect(complaints).toEqual([]);
      expect(requests.filter((request) => !request.startsWith('data:'))).toEqual([address]);
      await page.close();
    },
  );
});

/** The area of a closed path of absolute straight lines. */
function areaOf(path: string): number {
  const points = [...path.matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/gu)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
  return Math.abs(
    points.reduce((sum, [x, y], index) => {
      const [nextX = 0, nextY = 0] = points[(index + 1) % points.length] ?? [];
      return sum + x * nextY - y * nextX;
    }, 0) / 2,
  );
}
