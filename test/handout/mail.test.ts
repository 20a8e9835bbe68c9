import { describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import { finishedSize, mainPiece } from '../../src/handout/finished-size.ts';
import { mailView } from '../../src/handout/mail.ts';
import type { Target } from '../../src/handout/setting.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { ownNet } from '../../src/shape/shapes.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { all, one, parseMarkup, textOf } from './markup.ts';
import { type Sample, sampleOf, settingFor, sheetHtml } from './sample.ts';

const read = (markup: unknown): string => textOf(parseMarkup(String(markup)));

const CARD = `
unit: in
stock:
  base: { name: Base, sheet: 12 x 12, weight: 80 lb cover }
pieces:
  card: { stock: base, form: single-fold card, size: 5 1/2 x 4 1/4 }
  mat:  { stock: base, cut: 5 1/4 x 4, on: card.front }
`;

function rows(from: Sample, target: Target = 'letter'): string[][] {
  const view = mailView(settingFor(from, target));
  return (view?.things ?? []).map(({ envelopes }) =>
    envelopes.map(({ name, size, spare, letter }) => `${name}, ${read(size)}: ${read(spare)}. ${letter}`),
  );
}

const words = (from: Sample): string[] =>
  mailView(settingFor(from))?.things.map((thing) => read(thing.words)) ?? [];

describe('what is said of a card in the mail', () => {
  it('is its closed size, its estimated thickness and weight', () => {
    // Three sheets of 9.5 points (0.0095 in): 0.0285 in, 0.72 mm. 216 g/m² of 11 × 4 1/4 and of 5 1/4 × 4 in: 9.47 g.
    expect(words(sampleOf(CARD))).toEqual([
      'Closed, the card is 5 1/2 × 4 1/4 in (140 × 108 mm) and about 0.03 in (0.7 mm) thick, by its papers; glue and foam come on top. Its paper weighs about 10 g.',
    ]);
  });

  it('is what envelopes it fits, with what room, and what they are in the post', () => {
    expect(rows(sampleOf(CARD))).toEqual([
      [
        'C6, 6 3/8 × 4 1/2 in (162 × 114 mm): 7/8 × 1/4 in (22 × 6 mm) to spare. US letter',
        'A2, 5 3/4 × 4 3/8 in (146 × 111 mm): 1/4 × 1/8 in (6 × 3 mm) to spare, which is snug: try one first. US letter',
        'A6, 6 1/2 × 4 3/4 in (165 × 121 mm): 1 × 1/2 in (25 × 13 mm) to spare. US letter',
      ],
    ]);
    expect(rows(sampleOf(CARD), 'a4')[0]?.[0]).toBe(
      'C6, 162 × 114 mm (6 3/8 × 4 1/2 in): 22 × 6 mm (7/8 × 1/4 in) to spare. US letter',
    );
  });

  it('leaves out the envelope that is made for another card', () => {
    const both = sampleOf(`${CARD}
  little: { stock: base, form: single-fold card, size: 4 x 3 }
  cover: { stock: base, form: envelope, card: 5 1/2 x 4 1/4, holds: card }
  sleeve: { stock: base, form: envelope, card: 4 x 3, holds: little }`);
    const first = rows(both).map(([name = '']) => name.slice(0, name.indexOf(',')));
    expect(first).toEqual(['The cover of this sheet', 'The sleeve of this sheet']);
    expect(
      rows(both)
        .flat()
        .filter((row) => row.includes('of this sheet')),
    ).toHaveLength(2);
  });

  it('begins with its own envelope, which may be too square for the machines', () => {
    // 5 1/2 + 1/4 and 4 1/4 + 1/4: 5 3/4 × 4 1/2 in, 1.278 times as long as high, less than 1.3.
    const both = sampleOf(`${CARD}  cover: { stock: base, form: envelope, card: 5 1/2 x 4 1/4 }`);
    expect(rows(both)[0]?.[0]).toMatch(
      /^The cover of this sheet, 5 3\/4 × 4 1\/2 in .*US letter too square for the machines, which costs extra$/u,
    );
  });

  it('says so where no envelope takes it', () => {
    const large = sampleOf('unit: in\npieces:\n  card: { form: single-fold card, size: 9 x 14 }');
    expect(mailView(settingFor(large))?.things[0]?.isTooLarge).toBe(true);
    expect(sheetHtml(large, 'page')).toContain('None of the common envelopes takes it.');
  });

  it('counts loose sheets in, and speaks of no weight it does not know', () => {
    const loose = sampleOf(`${CARD}  note: { cut: 5 x 4, count: 10 }`);
    // Ten sheets of unknown paper, reckoned at 0.3 mm each, besides the 0.72 mm of the card.
    expect(words(loose)[0]).toMatch(/about 0\.15 in \(3\.7 mm\) thick/u);
    expect(words(loose)[0]).not.toContain('weighs');
    // Then it bends an envelope round its edges by more than an A2 has to spare.
    expect(rows(loose)[0]?.some((row) => row.startsWith('A2,'))).toBe(false);
  });
});

describe('what is spoken of', () => {
  it.each<[string, string, number]>([
    ['a gate-fold card', 'card: { form: gate-fold card, size: 5 1/2 x 4 1/4 }', 1],
    ['an accordion', 'card: { form: accordion card, size: 2 3/4 x 4 1/4 }', 1],
    ['an envelope alone', 'cover: { form: envelope, outside: 6 x 4 }', 1],
    ['a tag', 'tag: { form: tag, size: 2 x 4 }', 1],
    ['a flat piece with layers', 'base: { cut: 2 x 7 }\n  mat: { cut: 1 3/4 x 6 3/4, on: base }', 1],
    ['score lines that close flat', 'card: { cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }] }', 1],
    [
      'two cards',
      'a: { form: single-fold card, size: 3 x 4 }\n  b: { form: single-fold card, size: 4 x 5 }',
      2,
    ],
    ['a box', 'box: { form: tray, inside: 3 x 3 x 1 }', 0],
    [
      'a box with a tag',
      'box: { form: tuck-end box, inside: 3 x 2 x 4 }\n  tag: { form: tag, size: 2 x 4 }',
      0,
    ],
    ['a band', 'band: { form: belly band, around: 4 x 1/4, height: 2 }', 0],
    ['nothing', 'lost: { form: no such form }', 0],
  ])('%s', (_, pieces, count) => {
    const from = sampleOf(`unit: in\npieces:\n  ${pieces}`);
    expect(mailView(settingFor(from))?.things.length ?? 0).toBe(count);
    expect(sheetHtml(from, 'page').includes('class="mail"')).toBe(count > 0);
  });

  it.each(forms.map((form) => [form.name, form] as const))('a %s, if the form says so', (name, form) => {
    const from = sampleOf(`unit: in\npieces:\n  own: { form: ${name}, ${form.example.settings.join(', ')} }`);
    const isFlat = ownNet(from.editions.inch.shapes.nets, 'own')?.folds.length === 0;
    expect(mailView(settingFor(from)) !== undefined).toBe(form.mailed !== undefined || isFlat);
  });

  it('is an envelope as it is mailed, where there is no card', () => {
    const square = sampleOf('unit: in\npieces:\n  cover: { form: envelope, outside: 6 x 6 }');
    expect(words(square)[0]).toMatch(
      /6 × 6 in .* US letter too square for the machines, which costs extra\.$/u,
    );
    const small = sampleOf('unit: mm\npieces:\n  cover: { form: envelope, outside: 114 x 81 }');
    expect(words(small)[0]).toMatch(/In the USA too small to be mailed\.$/u);
  });
});

describe('on the sheet', () => {
  it.each<Target>(['page', 'letter', 'a4', 'large-print'])(
    'for %s it is dated and defers to the post office',
    (target) => {
      const section = one(parseMarkup(sheetHtml(sampleOf(CARD), target)), '.mail');
      const text = textOf(section);
      expect(text).toContain('as of January 4, 2010 (USPS Domestic Mail Manual 101)');
      expect(text).toContain('Check with your post office.');
      expect(text).toContain('up to 3.5 oz');
      expect(all(section, 'li')).toHaveLength(3);
      expect(text).not.toMatch(/\{\w+\}|undefined|\[object/u);
    },
  );

  it('the limits are those of the manual', () => {
    const text = textOf(one(parseMarkup(sheetHtml(sampleOf(CARD), 'letter')), '.mail-limits'));
    expect(text).toContain('at least 5 × 3 1/2 in (127 × 89 mm), at most 11 1/2 × 6 1/8 × 1/4 in');
    expect(text).toContain('less than 1.3 or more than 2.5 times');
  });

  it('agrees with the finished size, in every project of the demo', async () => {
    const root = new URL('../../projects', import.meta.url).pathname;
    const workspace = await loadWorkspace(root, { namedFrom: root });
    let compared = 0;
    for (const { editions, project } of examine(workspace)) {
      const setting = settingFor({ editions, project, site: workspace.site } as Sample);
      const [thing] = mailView(setting)?.things ?? [];
      const size = finishedSize(editions);
      if (!thing || !size || !mainPiece(editions)) continue;
      const [first, second] = size.toSorted((a, b) => b.inch.compare(a.inch));
      if (!first || !second) continue;
      expect(read(thing.words)).toContain(read(setting.measures.both([first, second])));
      compared += 1;
    }
    expect(compared).toBeGreaterThanOrEqual(6);
  });
});
