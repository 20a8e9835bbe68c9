import { describe, expect, it } from 'vitest';
import { isWholeFile } from '../../src/project/source.ts';
import { allergensIn } from '../../src/proof/allergens.ts';
import { blamed, ofRule } from './workspace.ts';

describe('piece-exceeds-sheet', () => {
  const cut = (sheet: string, size: string, unit = 'in'): string[] =>
    ofRule('piece-exceeds-sheet', {
      unit,
      stock: `paper: { name: Paper, ${sheet} }`,
      pieces: `wrap: { stock: paper, cut: ${size} }`,
    })
      .filter(({ severity }) => severity === 'error')
      .map(({ message, remedy }) => `${message}; ${remedy}`);

  it('lays an envelope across that stands upright, for its card has to go in', () => {
    const told = (card: string): readonly (string | undefined)[] =>
      ofRule('piece-exceeds-sheet', {
        stock: 'paper: { name: Paper, sheet: 12 x 12 }',
        pieces: `envelope: { stock: paper, form: envelope, card: ${card} }`,
      }).map(({ remedy }) => remedy);
    expect(told('4 x 5 1/4')).toEqual([
      'lay it across, with "card: 5 1/4 x 4 in", or cut it from a larger stock',
    ]);
    expect(told('5 1/4 x 4 in')).toEqual([]);
  });

  it.each<[string, string, string[]]>([
    ['sheet: 8 1/2 x 11', '8 1/2 x 11', []],
    ['sheet: 8 1/2 x 11', '11 x 8 1/2', []],
    [
      'sheet: 8 1/2 x 11',
      '8 1/2 x 11 1/32',
      [
        'wrap is 8 1/2 × 11 1/32 in, but paper comes in sheets of 8 1/2 × 11 in; cut it at most 8 1/2 × 11 in, or from a larger stock',
      ],
    ],
    ['sheets: [8 1/2 x 11, 12 x 12]', '11 1/2 x 11 1/2', []],
    [
      'sheets: [8 1/2 x 11, 12 x 12]',
      '13 x 2',
      [
        'wrap is 13 × 2 in, but paper comes in sheets of 8 1/2 × 11 in and 12 × 12 in; cut it at most 12 × 2 in, or from a larger stock',
      ],
    ],
    [
      'sheet: 8 1/2 x 11, print: upright',
      '11 x 8',
      [
        'wrap is 11 × 8 in, but paper comes in sheets of 8 1/2 × 11 in; it would fit turned, but the print must stay upright: cut it at most 8 1/2 × 8 in, or from another stock',
      ],
    ],
    ['sheet: 8 1/2 x 11, print: any way', '11 x 8', []],
    [
      'sheet: 8 1/2 x 11, grain: height',
      '11 x 8',
      [
        'wrap is 11 × 8 in, but paper comes in sheets of 8 1/2 × 11 in; it would fit turned, but the grain must run as on the sheet: cut it at most 8 1/2 × 8 in, or from another stock',
      ],
    ],
    ['weight: 80 lb cover', '30 x 30', []],
  ])('%s, %s', (sheet, size, expected) => {
    expect(cut(sheet, size)).toEqual(expected);
  });

  it('asks a form for smaller measurements, as its size follows from them', () => {
    const pieces = 'box: { stock: cream, form: polygon box, sides: 6, side: 2 1/2, height: 2 }';
    const [found] = ofRule('piece-exceeds-sheet', { stock: 'cream: { sheet: 12 x 12 }', pieces });
    expect(found?.remedy).toBe(
      'give its form smaller measurements, so that it takes 12 × 6 3/8 in at most, or cut it from a larger stock',
    );
  });

  // ISO 216: A4 is 210 x 297 mm.
  it('measures in the unit of the sheet', () => {
    expect(cut('sheet: 210 x 297', '297 x 210', 'mm')).toEqual([]);
    expect(cut('sheet: 210 x 297', '211 x 297', 'mm')).toEqual([
      'wrap is 211 × 297 mm, but paper comes in sheets of 210 × 297 mm; cut it at most 210 × 297 mm, or from a larger stock',
    ]);
  });

  it('names a sheet by its own ruler, and the most there is by that of the project', () => {
    // 210 mm is 8.27 in, of which a ruler shows 8 1/4.
    expect(cut('sheet: A4', '8 3/8 x 11 5/8')).toEqual([
      'wrap is 8 3/8 × 11 5/8 in, but paper comes in sheets of 210 × 297 mm; cut it at most 8 1/4 × 11 5/8 in, or from a larger stock',
    ]);
    expect(cut('sheet: Letter', '216 x 270', 'mm')).toEqual([
      'wrap is 216 × 270 mm, but paper comes in sheets of 8 1/2 × 11 in; cut it at most 215 × 270 mm, or from a larger stock',
    ]);
  });

  // ANSI Y14.1: Letter is 8 1/2 x 11 in, 215.9 x 279.4 mm.
  it.each<[string, string, string, string, readonly (string | undefined)[]]>([
    [
      'both',
      'mm',
      'sheet: Letter',
      '212 x 260',
      [
        'wrap is 212 × 260 mm, more than the paper of readers who measure in millimeters (210 × 297 mm)',
        'tell readers with that paper to cut wrap from a larger sheet, and name one with "metric sheet:" in paper',
        'note',
      ],
    ],
    [
      'both',
      'in',
      'sheet: A4',
      '8 x 11 1/2',
      [
        'wrap is 8 × 11 1/2 in, more than the paper of readers who measure in inches (8 1/2 × 11 in)',
        'tell readers with that paper to cut wrap from a larger sheet, and name one with "inch sheet:" in paper',
        'note',
      ],
    ],
    ['both', 'mm', 'sheet: Letter, metric sheet: 216 x 279', '212 x 260', []],
    ['both', 'mm', 'sheet: Letter', '210 x 260', []],
    ['metric', 'mm', 'sheet: Letter', '212 x 260', []],
  ])('units %s, %s, %s, %s: a note if readers have other paper', (units, unit, sheet, size, expected) => {
    const found = ofRule('piece-exceeds-sheet', {
      head: `units: ${units}`,
      unit,
      stock: `paper: { name: Paper, ${sheet} }`,
      pieces: `wrap: { stock: paper, cut: ${size} }`,
    });
    expect(found.flatMap(({ message, remedy, severity }) => [message, remedy, severity])).toEqual(expected);
  });

  it('measures the flat sheet of a form', () => {
    const pieces = 'box: { stock: cream, form: tray, inside: 7 x 9 x 2 }';
    const [finding] = ofRule('piece-exceeds-sheet', { pieces });
    expect(finding?.message).toMatch(/^box is .* in, but cream comes in sheets of 8 1\/2 × 11 in$/u);
    expect(finding && blamed(finding)).toBe('tray');
  });
});

describe('the name of a paper', () => {
  it.each<[string, string]>([
    ['A4x', 'write "A4"'],
    ['Leter', 'write "Letter"'],
    ['half-letter', 'write "Half letter"'],
    ['Foolscap', 'write one of: A3, A4, A5, A6, Letter, Legal, Half letter, its size, such as 8 1/2 x 11'],
  ])('that is none, %s', (name, remedy) => {
    const found = ofRule('unknown-reference', { stock: `paper: { name: Paper, sheet: ${name} }` });
    expect(found.map((each) => [each.message, each.remedy])).toEqual([
      [`there is no paper "${name}"`, remedy],
    ]);
  });
});

describe('unknown-allergen', () => {
  const held = (allergens: string): string[] =>
    ofRule('unknown-allergen', {
      more: `holds: { item: Biscuits, food: yes, allergens: [${allergens}] }`,
    }).map((finding) => `${blamed(finding)}: ${finding.remedy}`);

  // 21 USC 321(qq) as amended by the FASTER Act 2021.
  it('knows the nine of the United States', () => {
    expect(
      held('milk, eggs, fish, crustacean shellfish, tree nuts, peanuts, wheat, soybeans, sesame'),
    ).toEqual([]);
  });

  // Regulation (EU) No 1169/2011, Annex II.
  it('knows the fourteen of the European Union', () => {
    const fourteen =
      'cereals containing gluten, crustaceans, eggs, fish, peanuts, soybeans, milk, nuts, celery, mustard, sesame, sulphur dioxide and sulphites, lupin, molluscs';
    expect(fourteen.split(', ')).toHaveLength(14);
    expect(held(fourteen)).toEqual([]);
  });

  it('names the nearest', () => {
    expect(held('Milk')).toEqual([]);
    expect(held('eggz')).toEqual(['eggz: write "eggs"']);
    expect(held('shellfish')).toEqual(['shellfish: write "crustacean shellfish"']);
    expect(held('dust')[0]).toContain(allergensIn('en').names.join(', ').slice(0, 40));
  });
});

describe('session-off-schedule', () => {
  const on = (date: string, sessions: string): string[] =>
    ofRule(
      'session-off-schedule',
      { head: `session: ${date}` },
      { 'site.yaml': `sessions: { ${sessions} }` },
    ).map(({ message }) => message);
  const FORTNIGHT = 'every: 2 weeks, on: thursday, from: 2026-10-01, except: [2026-12-24]';

  it.each<[string, string, string[]]>([
    ['2026-10-01', FORTNIGHT, []],
    ['2026-10-15', FORTNIGHT, []],
    ['2027-01-07', FORTNIGHT, []],
    ['2026-10-08', FORTNIGHT, ['2026-10-08 is not on the schedule: it is every 2 weeks from 2026-10-01']],
    ['2026-10-14', FORTNIGHT, ['2026-10-14 is not on the schedule: that day is a Wednesday']],
    ['2026-12-24', FORTNIGHT, ['2026-12-24 is not on the schedule: it leaves that day out']],
    ['2026-09-17', FORTNIGHT, ['2026-09-17 is not on the schedule: it does not begin until 2026-10-01']],
    ['2026-10-08', 'every: week, on: thursday, from: 2026-10-01', []],
    ['2026-10-06', 'every: week, on: tuesday and thursday, from: 2026-10-01', []],
    ['2026-10-08', 'every: month, on: thursday', []],
  ])('%s, %s', (date, sessions, expected) => {
    expect(on(date, sessions)).toEqual(expected);
  });

  // RFC 5545 3.8.5.3, "Every other week - forever": from 2 September 1997, a Tuesday, with its first dates.
  it.each(['1997-09-02', '1997-09-16', '1997-09-30', '1997-10-14', '1997-10-28', '1997-11-11', '1998-01-06'])(
    'every other week has %s',
    (date) => {
      expect(on(date, 'every: 2 weeks, on: tuesday, from: 1997-09-02')).toEqual([]);
      const weekLater = new Date(Date.parse(date) + 7 * 86_400_000).toISOString().slice(0, 10);
      expect(on(weekLater, 'every: 2 weeks, on: tuesday, from: 1997-09-02')).toHaveLength(1);
    },
  );
});

describe('same-slug', () => {
  it('is said in both sheets, without a place', () => {
    const sheet = '---\ntitle: Card\n---\n';
    const found = ofRule('same-slug', {}, { 'Card!/sheet.md': sheet, 'tag/sheet.md': sheet });
    expect(found.map(({ at, message }) => [at.file.path, isWholeFile(at), message])).toEqual([
      ['Card!/sheet.md', true, 'the folders "Card!" and "card" both become the address card/'],
      ['card/sheet.md', true, 'the folders "card" and "Card!" both become the address card/'],
    ]);
  });
});
