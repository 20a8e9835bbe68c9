import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import type { KitOrder } from '../../src/kit/kit.ts';
import { parseAmount } from '../../src/kit/shopping/amount.ts';
import type { ShoppingLine } from '../../src/kit/shopping/line.ts';
import { shoppingList } from '../../src/kit/shopping/list.ts';
import type { Shares } from '../../src/kit/shopping/price.ts';
import { kitWords } from '../../src/kit-pages/words.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels } from '../handout/sample.ts';
import { order, planned, projectOf } from './kits.ts';

const CARD =
  '  stock: { card: { sheet: 8 1/2 x 11, price: 0.45, pack: 25 } }\n  pieces: { a: { stock: card, cut: 8 x 10 } }';

function linesOf(supplies: string, attendees: number, spares = 0): readonly ShoppingLine[] {
  return planned(projectOf(CARD, `supplies:\n${supplies}\n`), order(attendees, { spares })).shopping;
}

/** The line of the only supply. */
function lineOf(supply: string, attendees: number, spares = 0): ShoppingLine {
  const line = linesOf(`  - ${supply}`, attendees, spares)[1];
  if (!line) throw new Error('no line');
  return line;
}

describe('amounts', () => {
  it.each([
    ['24 in', 'length', 609.6],
    ['10 yd', 'length', 9144],
    ['2 ft', 'length', 609.6],
    ['60 cm', 'length', 600],
    ['1.5 m', 'length', 1500],
    ['60 Zentimeter', 'length', 600],
    ['1,5 mètres', 'length', 1500],
    ['1/2 in', 'length', 12.7],
    ['6', 'count', 6],
    ['1/2', 'count', 0.5],
    ['80 dots', 'count', 80],
    ['pack of 30', 'count', 30],
  ])('%s', (text, kind, value) => {
    const amount = parseAmount(text);
    expect([amount?.kind, amount?.value.valueOf()]).toEqual([kind, value]);
  });

  it.each(['a little', '', 'two', '1/0', '-3 in', '3 in 4', 'x'.repeat(100)])('no amount: %j', (text) => {
    expect(parseAmount(text)).toBeUndefined();
  });
});

describe('the shopping list', () => {
  it('rounds sheets up to packs, after what is on hand', () => {
    const project = projectOf(CARD.replace('pack: 25', 'pack: 25, on hand: 4'));
    const [paper] = planned(project, order(30)).shopping;
    // 30 sheets, 4 there, 26 to get: 2 packs of 25 at 0.45 a sheet.
    expect(paper).toMatchObject({ buy: 2n, cost: { minor: 2250n }, gaps: [] });
    expect(paper?.used?.valueOf()).toBe(30 * 45);
  });

  it('measures lengths out of packs sold by the yard, spares too', () => {
    const tape = '{ item: Tape, kind: adhesive, each: 14 in, pack: 10 yd, price: 3.80 }';
    // 26 × 14 in are 364 in, 4 in more than 10 yd.
    expect(lineOf(tape, 24, 2)).toMatchObject({ consumed: true, buy: 2n, cost: { minor: 760n } });
    expect(lineOf(tape, 24, 1)).toMatchObject({ buy: 1n });
    expect(lineOf(tape, 24).used?.equals(new Fraction(380n * 336n, 360n))).toBe(true);
  });

  it('shares tools among attendees only, and keeps them out of what is used up', () => {
    const cutter = lineOf('{ item: Trimmer, kind: tool, share: 4, price: 40 }', 22, 3);
    expect(cutter).toMatchObject({ consumed: false, share: 4, buy: 6n, cost: { minor: 24000n } });
    expect(lineOf('{ item: Bone folder, kind: tool }', 22)).toMatchObject({ buy: 22n, gaps: ['price'] });
  });

  it('subtracts what is on hand, in things or in packs, and never buys less than nothing', () => {
    const clips = '{ item: Clip, kind: embellishment, each: 1, pack: 24, price: 2.90';
    expect(lineOf(`${clips}, on hand: 2 }`, 26)).toMatchObject({ buy: 1n });
    expect(lineOf(`${clips}, on hand: 1 pack }`, 26)).toMatchObject({ buy: 1n });
    expect(lineOf(`${clips}, on hand: 90 }`, 26)).toMatchObject({ buy: 0n, cost: { minor: 0n } });
  });

  it('says what is not known, and never makes it zero', () => {
    const gapsOf = (supply: string): unknown => {
      const { gaps, cost, buy } = lineOf(supply, 10);
      return { gaps, cost, buy };
    };
    expect(gapsOf('{ item: Tape, kind: adhesive }')).toEqual({
      gaps: ['amount'],
      cost: undefined,
      buy: undefined,
    });
    expect(gapsOf('{ item: Glitter, kind: embellishment, each: a little, price: 2 }')).toEqual({
      gaps: ['amount'],
      cost: undefined,
      buy: undefined,
    });
    expect(gapsOf('{ item: Bead, kind: embellishment, each: 2 }')).toEqual({
      gaps: ['price'],
      cost: undefined,
      buy: 20n,
    });
    expect(gapsOf('{ item: Ribbon, kind: embellishment, each: 2 in, pack: 30, price: 2 }')).toEqual({
      gaps: ['pack'],
      cost: undefined,
      buy: undefined,
    });
  });

  it('buys a shared supply once, and one that only a case, a blank or a word for the unit tells apart', () => {
    const stocked = (supplies: string): string =>
      `---\ntitle: Trial\nsupplies:\n${supplies}\nmeasurements:\n  unit: in\n${CARD}\n---\nText.\n`;
    const { projects } = readWorkspaceFromTexts({
      'shared/all.yaml': 'supplies: { tape: { item: Tape, kind: adhesive, pack: 10 yd, price: 3.80 } }\n',
      'one/sheet.md': stocked(
        '  - { use: shared.tape, each: 14 in }\n  - { item: Red  Twine, each: 1 ft, pack: 2 yards }\n  - { item: Dots, each: 2 }',
      ),
      'two/sheet.md': stocked(
        '  - { use: shared.tape, item: Sticky tape, each: 4 in }\n  - { item: red twine, each: 2 ft, pack: 2yd }\n  - { item: Dots, each: 2, pack: 10 }',
      ),
    });
    const lines = shoppingList(
      projects.map((project) => ({ project, attendees: 10, kits: 10 })),
      [],
    );
    // 180 in of tape are half a roll of 360; 30 ft of twine are five packs of 6. Dots are sold in two ways.
    expect(lines.map(({ item, buy }) => [item, buy])).toEqual([
      ['Tape', 1n],
      ['Red  Twine', 5n],
      ['Dots', 20n],
      ['Dots', 2n],
    ]);
  });

  it('buys a shared supply for all of its projects as the one that says how it is sold', () => {
    const sheet = (more: string): string =>
      `---\ntitle: Trial\nsupplies:\n  - { use: shared.tape, each: 100 in${more} }\nmeasurements:\n  unit: in\n${CARD}\n---\nText.\n`;
    const { projects } = readWorkspaceFromTexts({
      'shared/all.yaml': 'supplies: { tape: { item: Tape, kind: adhesive } }\n',
      'one/sheet.md': sheet(''),
      'two/sheet.md': sheet(', pack: 10 yd, price: 3.80, on hand: 1 pack'),
      'other/sheet.md': sheet(', pack: 5 yd, price: 2.00'),
    });
    const lines = shoppingList(
      projects.map((project) => ({ project, attendees: 9, kits: 9 })),
      [],
    );
    // As the first of them says: 1,800 in are ten rolls of 180. The last has rolls of 360, and one of them is there.
    expect(lines.map(({ item, buy, cost }) => [item, buy, cost?.minor])).toEqual([
      ['Tape', 10n, 2000n],
      ['Tape', 2n, 760n],
    ]);
  });

  it('lists each size of sheet that is cut', () => {
    const project = projectOf(
      '  stock: { card: { sheets: [{ size: 6 x 4, price: 0.30 }, { size: 12 x 12, price: 0.90 }] } }\n  pieces:\n    a: { stock: card, cut: 12 x 12 }\n    b: { stock: card, cut: 6 x 4 }',
    );
    const lines = planned(project, order(2)).shopping;
    expect(lines.map(({ sheet, needed }) => [sheet?.width.toString(), needed?.value.valueOf()])).toEqual([
      ['6 in', 2],
      ['12 in', 2],
    ]);
  });
});

describe('the cost', () => {
  const supplies =
    'supplies:\n  - { item: Tape, kind: adhesive, each: 14 in, pack: 10 yd, price: 3.80 }\n  - { item: Seeds, kind: filling, each: 6 }\n  - { item: Trimmer, kind: tool, share: 4 }\n';

  it('adds what is to be paid, exactly, and names what it leaves out', () => {
    const { cost } = planned(projectOf(CARD, supplies), order(24));
    // 24 sheets make a pack of 25: 11.25; 336 in of tape make one roll: 3.80.
    expect(cost.toBuy).toEqual({ total: { minor: 1505n }, without: ['Seeds', 'Trimmer'] });
    // 24 × 0.45 + 3.80 × 336/360 = 14.34666…; a twenty-fourth of it is 0.59777…
    expect(cost.used).toEqual({ total: { minor: 1435n }, without: ['Seeds'] });
    expect(cost.perAttendee).toEqual({ minor: 60n });
    expect(cost.price).toBeUndefined();
  });

  it('takes the margin as a part of the price, rounded up', () => {
    const priceAt = (percent: bigint): unknown =>
      planned(projectOf(CARD), order(10, { pricing: { margin: new Fraction(percent, 1n) } })).cost.price
        ?.price?.each;
    // A sheet each at 0.45: at 10 % the price is 0.50, at 40 % 0.75, at 50 % 0.90, at 33 % 0.6716… or 0.68.
    expect([0n, 10n, 40n, 50n, 33n].map(priceAt)).toEqual(
      [45n, 50n, 75n, 90n, 68n].map((minor) => ({ minor })),
    );
  });

  it('names the price of a place part by part, as it is worked out by hand', () => {
    const { site } = readWorkspaceFromTexts({
      'site.yaml':
        'pricing: { rate: 24, hours: 3 1/2, tool wear: 0.40, room: 40, platform: 0.30, platform share: 5 %, postage: 4.85, margin: 20 }',
    });
    expect(site.findings).toEqual([]);
    const asked = order(24, { parcels: 7, ...(site.pricing && { pricing: site.pricing }) });
    const { price } = planned(projectOf(CARD, supplies), asked).cost;
    // By hand, for the class: materials 14.34666… (above), wear 24 × 0.40 = 9.60, work 3.5 × 24 = 84.00, room 40.00,
    // platform 24 × 0.30 = 7.20, postage 7 × 4.85 = 33.95: 189.09666…, or 7.87902… for each of 24. That is 75 % of
    // the price: 10.50537…, so 10.51 a place and 252.24 for all, of which the platform takes 12.612 more: 19.812.
    const cents = (shares: Shares | undefined): unknown => shares && [shares.all.minor, shares.each.minor];
    expect(price?.parts.map(({ kind, shares }) => [kind, cents(shares)])).toEqual([
      ['materials', [1435n, 60n]],
      ['wear', [960n, 40n]],
      ['work', [8400n, 350n]],
      ['room', [4000n, 167n]],
      ['platform', [1981n, 83n]],
      ['postage', [3395n, 141n]],
    ]);
    expect(cents(price?.price)).toEqual([25224n, 1051n]);
    // What is left: 252.24 − 201.71 and 10.51 − 8.41; a fifth of the price, 50.448 and 2.102, and what rounding leaves.
    expect(cents(price?.left)).toEqual([5053n, 210n]);
  });

  it('takes prices in the currency of the settings, and no shares that leave nothing to pay with', () => {
    const read = (text: string) => readWorkspaceFromTexts({ 'site.yaml': text }).site;
    const yen = read('pricing: { room: 4000 }\ncurrency: JPY');
    expect([yen.findings, yen.pricing?.room]).toEqual([[], { minor: 4000n }]);
    const greedy = read('pricing: { platform share: 60 %, margin: 40 %, room: 40 }');
    expect(greedy.findings.map(({ at }) => at?.start)).toEqual([41]);
    expect(greedy.pricing).toMatchObject({ room: { minor: 4000n } });
    expect(greedy.pricing?.margin).toBeUndefined();
  });

  it('leaves out of the price what is not given, and takes the time of the sheet for that of the class', () => {
    const rate = { minor: 2400n };
    const project = projectOf(CARD, 'minutes: 45\n');
    const priced = (more: Partial<KitOrder>) => planned(project, order(10, more)).cost.price;
    expect(priced({})).toBeUndefined();
    const price = priced({ pricing: { rate, postage: { minor: 500n } } });
    expect(price?.parts.filter(({ shares }) => shares).map(({ kind }) => kind)).toEqual([
      'materials',
      'work',
    ]);
    // 10 × 0.45 and three quarters of 24.00: 22.50, or 2.25 a place.
    expect(price?.price).toEqual({ all: { minor: 2250n }, each: { minor: 225n } });
    expect(price?.left).toEqual({ all: { minor: 0n }, each: { minor: 0n } });
    const unpriced = projectOf(
      '  stock: { card: { sheet: 4 x 4 } }\n  pieces: { a: { stock: card, cut: 4 x 4 } }',
    );
    const unknown = planned(unpriced, order(2, { pricing: { margin: new Fraction(20n, 1n) } })).cost.price;
    expect([unknown?.price, unknown?.left]).toEqual([undefined, undefined]);
  });

  it('is exact where floating point is not', () => {
    const project = projectOf(
      '  stock: { card: { sheet: 4 x 4, price: 0.10 } }\n  pieces: { a: { stock: card, cut: 4 x 4 } }',
    );
    // 0.1 + 0.2 ≠ 0.3 in floating point; three sheets at 0.10 are 0.30.
    expect(planned(project, order(3)).cost.toBuy.total).toEqual({ minor: 30n });
  });

  it('writes money as the language does, with the decimals of the currency (ISO 4217)', () => {
    const spaced = (text: string): string => text.replace(/[\u00a0\u202f]/gu, ' ');
    const write = (minor: bigint, code: string, decimals: number, language: string): string =>
      spaced(kitWords(voiceOf({ ...labels, language }), 'inch', { code, decimals }).money({ minor }));
    expect(write(123456n, 'USD', 2, 'en')).toBe('$1,234.56');
    expect(write(123456n, 'EUR', 2, 'de')).toBe('1.234,56 €');
    // The yen has no minor unit, the Bahraini dinar has three decimals.
    expect(write(1234n, 'JPY', 0, 'en')).toBe('¥1,234');
    expect(write(1234n, 'BHD', 3, 'en')).toBe('BHD 1.234');
    // More than floating point holds.
    expect(write(9007199254740993001n, 'USD', 2, 'en')).toBe('$90,071,992,547,409,930.01');
  });
});
