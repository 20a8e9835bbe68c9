import { describe, expect, it } from 'vitest';
import { templateDrawing } from '../../src/drawing/template.ts';
import { cutList } from '../../src/handout/cut-list.ts';
import { factsOf } from '../../src/handout/facts.ts';
import { referrer } from '../../src/handout/references.ts';
import { scoreList } from '../../src/handout/score-list.ts';
import type { Setting } from '../../src/handout/setting.ts';
import { supplyGroups } from '../../src/handout/supplies.ts';
import { Length } from '../../src/measure/length.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { openingNotes } from '../../src/words/opening-words.ts';
import { scoreMoves } from '../../src/words/score-moves.ts';
import { all, one, parseMarkup, textOf } from './markup.ts';
import { sample, sampleOf, settingFor, sheetHtml } from './sample.ts';

const inch = Length.of(1, 1, 'in');

const read = (markup: unknown): string => textOf(parseMarkup(String(markup)));

/**
 * A sheet 8 × 6 3/4 in scored from the left at 1 1/4, 3 3/4, 5 and 7 1/2 and, after a quarter turn, at 1 1/4, 5 1/2
 * and 6 1/8 has a front of 2 1/2 × 4 1/4 in, on which a layer of 2 1/4 × 4 in shows 1/8 in all round. Common
 * practice, no source.
 */
const BOX = `
unit: in
stock:
  blue: { name: Blue cardstock, sheet: 8 1/2 x 11, weight: 110 lb index, color: "#2f4b66" }
  print: { name: Wave print, sheet: 12 x 12, weight: 120 gsm, print: upright }
pieces:
  box:
    stock: blue
    cut: 8 x 6 3/4
    score:
      - { from: left,   at: [1 1/4, 3 3/4, 5, 7 1/2] }
      - { from: bottom, at: [1 1/4, 5 1/2, 6 1/8] }
    panels: { left: A3, front: B3, right: C3, back: D3, tab: E3, bottom: B4 }
    trim:   [A1, C1, E1, E2, E4]
    slit:   [A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4]
    taper:  [A2, C2, A4, C4, tab]
    folds:  { 1|2: valley 90 }
    glue:   { tab: left, A4: D4, C4: D4, bottom: D4 }
  layer: { stock: print, cut: 2 1/4 x 4, on: box.front, corners: 1/4 }
  star:  { stock: blue, cut: 1 x 1, on: layer, at: { top: 1/2, turn: 45 }, count: 3 }
holds: { item: short pencil, size: 5/16 x 3 1/2 x 5/16, count: 12 }
`;
const box = sampleOf(BOX);
const setting = settingFor(box);

describe('the cut list', () => {
  const rows = (from: Setting) => cutList(from).groups.flatMap((group) => group.rows);

  it('lies by paper, with what the paper is', () => {
    const [blue, print] = cutList(setting).groups;
    expect(blue?.rows.map(({ name }) => name)).toEqual(['box', 'star']);
    // 110 lb index is 198.875 g/m² (Government Paper Specification Standards No. 11: 200 nominal).
    expect(read(blue?.facts)).toBe(
      '110 lb index (199 g/m²), sheet Letter (8 1/2 × 11 in) or A4 (210 × 297 mm)',
    );
    expect(read(print?.facts)).toBe('120 g/m², sheet 12 × 12 in (305 × 305 mm), keep the pattern upright');
  });

  it('says each size in both editions, the leading one first', () => {
    const sizes = rows(setting).map(({ lead, second }) => [read(lead), read(second)]);
    expect(sizes[0]).toEqual(['8 × 6 3/4 in', '205 × 172 mm']);
    const a4 = settingFor(box, 'a4');
    expect(cutList(a4).columns.lead.heading).toBe('Millimeters');
    expect(read(rows(a4)[0]?.lead)).toBe('205 × 172 mm');
  });

  it('says what each lies on and what shows', () => {
    const notes = rows(setting).map((row) => row.notes.map(read));
    expect(notes).toEqual([
      [],
      [
        'on the layer; nearest corner 7/16 in (11 mm) from the edge, 1/2 in (13 mm) from the top, turned 45° clockwise',
      ],
      ['on the front of the box, showing 1/8 in (3 mm) all round', 'corners rounded to 1/4 in (6 mm)'],
    ]);
  });

  it.each<[string, readonly string[]]>([
    ['{ top: 1/4 }', ['upper corners rounded to 1/4 in (6 mm)']],
    ['{ top: 1/4, bottom: 1/4 }', ['corners rounded to 1/4 in (6 mm)']],
    [
      '{ right: 1/8, top left: 1/4 }',
      ['right corners rounded to 1/8 in (3 mm)', 'upper left corner rounded to 1/4 in (6 mm)'],
    ],
    [
      '{ top left: 1/4, bottom right: 1/4 }',
      ['upper left corner rounded to 1/4 in (6 mm)', 'lower right corner rounded to 1/4 in (6 mm)'],
    ],
  ])('says which corners are rounded: %s', (corners, expected) => {
    const from = sampleOf(`unit: in\npieces: { mat: { cut: 2 x 3, corners: ${corners} } }`);
    expect(rows(settingFor(from))[0]?.notes.map(read)).toEqual(expected);
  });

  it('says how far a turned piece passes its base', () => {
    const from = sampleOf(
      'unit: in\npieces:\n  base: { cut: 2 x 2 }\n  top: { cut: 2 x 2, on: base, at: { turn: 45 }, overhang: yes }',
    );
    const [note] = rows(settingFor(from))[1]?.notes.map(read) ?? [];
    // Half the diagonal of 2 in is √2 in: 0.414 in over the edge.
    expect(note).toBe('on the base; farthest corner 7/16 in (11 mm) past the edge, turned 45° clockwise');
  });

  it.each([
    ['{ bottom: 1 }', 'at least 1/16 in (2 mm) showing, 1 in (25 mm) from the bottom'],
    ['{ top: 3/4 }', 'at least 1/16 in (2 mm) showing, 3/4 in (19 mm) from the top'],
    // From the edge that the author measures from, though the bottom is nearer.
    ['{ top: 2 1/2 }', 'at least 1/16 in (2 mm) showing, 2 1/2 in (64 mm) from the top'],
    ['{}', 'at least 1/16 in (2 mm) showing'],
  ])('says where what has no even border lies, as far as it is not centered: %s', (at, expected) => {
    const from = sampleOf(
      `unit: in\npieces:\n  tower: { shape: arch, cut: 3/4 x 3 1/2 }\n  band: { cut: 5/8 x 3/8, on: tower, at: ${at} }`,
    );
    expect(rows(settingFor(from))[1]?.notes.map(read)[0]).toBe(`on the tower, ${expected}`);
  });

  it('says how many, where there is more than one', () => {
    expect(rows(setting).map(({ times }) => times)).toEqual([undefined, '× 3', undefined]);
  });

  it('has a row for each sheet of a form made of several', () => {
    const tray = settingFor(sampleOf('unit: in\npieces:\n  tray: { form: lidded tray, inside: 3 x 3 x 1 }'));
    expect(rows(tray).map(({ name }) => name)).toEqual(['tray', 'tray lid']);
  });
});

describe('what shows round a layer', () => {
  const note = (cut: string, at = ''): string => {
    const placed = at && `, at: ${at}`;
    const from = sampleOf(
      `unit: in\npieces:\n  base: { cut: 4 x 4 }\n  top: { cut: ${cut}, on: base${placed} }`,
    );
    return read(cutList(settingFor(from)).groups[0]?.rows[1]?.notes[0]);
  };

  it.each([
    ['3 1/2 x 3 1/2', '', 'on the base, showing 1/4 in (6 mm) all round'],
    ['3 x 3 1/2', '', 'on the base, showing 1/2 in (13 mm) left and right and 1/4 in (6 mm) top and bottom'],
    ['4 x 4', '', 'on the base, the same size'],
    [
      '1 x 4',
      '{ left: 1/4 }',
      'on the base, 1/4 in (6 mm) left, 2 3/4 in (70 mm) right, and flush top and bottom',
    ],
    ['5 x 4', '', 'on the base, 1/2 in (12.5 mm) past the edge (left and right) and flush top and bottom'],
  ])('of %s %s', (cut, at, words) => {
    expect(note(cut, at).replace(/\(≈?[\d.]+ mm\)/gu, '()')).toBe(words.replace(/\(≈?[\d.]+ mm\)/gu, '()'));
  });
});

describe('a tag for a string', () => {
  it('says on page one what is cut off its corners, and which others are rounded', () => {
    const from = sampleOf('unit: in\npieces: { mark: { form: tag, size: 2 x 6, corners: { bottom: 1/4 } } }');
    const notes = cutList(settingFor(from)).groups[0]?.rows[0]?.notes.map(read) ?? [];
    expect(notes[0]).toMatch(/^tag with 1\/2 in \(1[23](?:\.5)? mm\) cut off each upper corner$/u);
    expect(notes.join('; ')).toContain('rounded to 1/4 in (6 mm)');
  });
});

describe('the score list', () => {
  it('is said as at the board', () => {
    const [piece] = scoreList(setting)?.pieces ?? [];
    const rows = piece?.rows.map(({ words, positions }) => [
      read(words),
      read(positions.lead),
      read(positions.second),
    ]);
    expect(rows).toEqual([
      ['top edge along the top, 8 in (205 mm)', '1 1/4, 3 3/4, 5, 7 1/2 in mountain', '32, 96, 128, 192 mm'],
      [
        'Quarter turn clockwise: left edge along the top, 6 3/4 in (172 mm)',
        '1 1/4, 5 1/2 in mountain; 6 1/8 in valley',
        '32, 140, 156 mm',
      ],
    ]);
    expect(piece?.cuts).toBe('then cut as shown on the template');
  });

  /** By turning a sheet of paper in the hand; common practice, no source. */
  it.each([
    ['left', 'none', 'top'],
    ['bottom', 'clockwise', 'left'],
    ['right', 'half', 'bottom'],
    ['top', 'anticlockwise', 'right'],
  ])('from the %s: turn %s, then the %s edge lies along the top', (from, turn, topEdge) => {
    const { editions } = sampleOf(
      `unit: in\npieces:\n  p: { cut: 4 x 5, score: [{ from: ${from}, at: [1] }] }`,
    );
    expect(scoreMoves(editions, 'p')).toMatchObject([{ turn, topEdge, from }]);
  });

  it('turns on from where the last row left the sheet', () => {
    const edges = ['left', 'bottom', 'right', 'top', 'left'];
    const score = edges.map((from, index) => `{ from: ${from}, at: [${index + 1}] }`);
    const { editions } = sampleOf(`unit: in\npieces:\n  p: { cut: 10 x 10, score: [${score.join(', ')}] }`);
    const turns = scoreMoves(editions, 'p').map(({ turn }) => turn);
    expect(turns).toEqual(['none', 'clockwise', 'clockwise', 'clockwise', 'clockwise']);
  });

  it('says of a line that folds nowhere that it is only cut, once all is scored', () => {
    const step = `unit: in
pieces:
  p:
    cut: 5 1/2 x 8 1/2
    score: [{ from: left, at: [2, 3 1/2] }, { from: top, at: [3 1/4, 4 1/4, 5 1/4] }]
    slit: [A|B 2-3, B|C 2-3]
    folds: { 2|3: mountain 90, B2|B3: valley 90, 1|2: none, 3|4: none, B1|B2: mountain 90, B3|B4: mountain 90,
      A|B 1: none, B|C 1: none, A|B 4: none, B|C 4: none }`;
    const stepped = settingFor(sampleOf(step));
    const rows = scoreList(stepped)?.pieces[0]?.rows ?? [];
    const said = rows.map(
      ({ words, positions }) => `${read(positions.lead)}${read(words).replace(/^[^;]*/u, '')}`,
    );
    expect(said.map((row) => row.replace(/ \([^)]*\)/gu, ''))).toEqual([
      '4 1/4 in mountain and valley',
      '3 1/4, 5 1/4 in mountain; each line only from 2 in to 3 1/2 in below that edge',
      '2, 3 1/2 in; cut instead of scoring, from 3 1/4 in to 5 1/4 in below that edge',
    ]);
    const inline = read(referrer(stepped.editions, stepped.measures, stepped.voice)('scores', 'p'));
    expect(inline).toMatch(/With its top edge along the top, cut at 2 and 3 1\/2 in/u);
    expect(inline).not.toMatch(/score at 2 /u);
  });

  /** Each fold as it is written, by its position and direction; a line of two stretches that fold two ways says both. */
  it('says beside each position which way the paper folds there', () => {
    const said = (folds: string, more = ''): string => {
      const net = `cut: 8 x 4, score: [{ from: left, at: [2, 4, 6] }${more}], folds: ${folds}`;
      const one = settingFor(
        sampleOf(`unit: in\nunits: inch\npieces:\n  p: { ${net} }`, '', 'units: inch\n'),
      );
      const [row] = scoreList(one)?.pieces[0]?.rows ?? [];
      const inline = read(referrer(one.editions, one.measures, one.voice)('scores', 'p'));
      return `${read(row?.positions?.lead)} | ${inline}`;
    };
    expect(said('{ A|B: mountain 180, B|C: valley 180, C|D: mountain 180 }')).toBe(
      '2 in mountain; 4 in valley; 6 in mountain | From the left edge, score at 2 in, mountain; 4 in, valley; 6 in, mountain.',
    );
    expect(said('{ A|B: valley 90, B|C: valley 90, C|D: flat }')).toMatch(
      /^2, 4 in valley; 6 in kept flat \|/u,
    );
    const twice = said('{ A1|B1: valley 90, A2|B2: mountain 90 }', ', { from: top, at: [2] }');
    expect(twice).toMatch(/^2 in (?:valley and mountain|mountain and valley); 4, 6 in mountain \|/u);
  });

  it('is not there when nothing is scored', () => {
    expect(scoreList(settingFor(sampleOf('unit: in\npieces:\n  p: { cut: 4 x 5 }')))).toBeUndefined();
  });
});

describe('what is cut and stuck', () => {
  const { editions, voice, measures } = setting;
  const refer = referrer(editions, measures, voice);

  it('is said by the names that stand on the drawing, by rows and columns where there is none', () => {
    expect(read(refer('trims', 'box'))).toBe(
      [
        'Cuts that end inside the sheet are made with scissors or a craft knife, not with the trimmer.',
        'Cut away the hatched parts: A1, C1, E1, E2, and E4.',
        'Cut straight beside B2, D2, bottom, and D4, and at a slant on A2, C2, tab, A4, and C4, as far as the fold.',
      ].join(''),
    );
  });

  it('says of two whole neighbors that they are cut apart, of three in one go', () => {
    const said = (slit: string): string => {
      const net = `cut: 4 x 6, score: [{ from: left, at: [2] }, { from: bottom, at: [2, 4] }], slit: ${slit}`;
      const one = settingFor(
        sampleOf(`unit: in\npieces:\n  p: { ${net}, panels: { door: A2 }, folds: { A|B 1: flat } }`),
      );
      return read(referrer(one.editions, one.measures, one.voice)('trims', 'p'));
    };
    expect(said('[A|B 3]')).toContain('Cut the line between A3 and B3.');
    expect(said('[1|2 A, 2|3 A]')).toMatch(/Cut the line between A1, door, and A3\./u);
  });

  it('has a row for each angled line, and names the edges that it begins and ends on', () => {
    const score = '[{ from: corner A1, to: corner B2 }, { from: left, at: [1] }, { from: top, at: [2] }]';
    const one = settingFor(
      sampleOf(
        `unit: in\npieces:\n  p: { cut: 4 x 6, score: ${score}, folds: { A1 left|A1 right: valley 90 } }`,
      ),
    );
    expect(scoreList(one)?.pieces[0]?.slants.map((line) => line.map(read))).toEqual([
      ['left edge', 'top edge', '1 in (≈25 mm)', '2 in (≈51 mm)', 'valley'],
    ]);
    expect(read(referrer(one.editions, one.measures, one.voice)('scores', 'p'))).toContain(
      'score the angled lines with a ruler and bone folder, as listed under Score.',
    );
  });

  it.each([
    ['a corner cut away', 'trim: [A1]', true],
    ['two of three corners of a column', 'trim: [A1, A2]', true],
    ['a column cut off from edge to edge', 'trim: [A1, A2, A3]', false],
    ['the corners of a tab along the sheet’s edge', 'taper: [A1]', false],
  ])('names scissors for %s: %s', (_, cut, byHand) => {
    const rows = cut.startsWith('trim') ? ', { from: top, at: [2, 4] }' : '';
    const grid = `cut: 4 x 6, score: [{ from: left, at: [1, 3] }${rows}]`;
    const made = settingFor(sampleOf(`unit: in\npieces:\n  p: { ${grid}, ${cut} }`));
    const words = read(referrer(made.editions, made.measures, made.voice)('trims', 'p'));
    expect(words.includes('Cuts that end inside the sheet')).toBe(byHand);
  });

  it('says once what is cut by hand, of all sheets of a piece', () => {
    const made = settingFor(
      sampleOf('unit: in\npieces:\n  box: { form: lidded tray, inside: 3 x 2 x 1, lid: 1/2 }'),
    );
    const words = read(referrer(made.editions, made.measures, made.voice)('trims', 'box'));
    expect(words.match(/Cuts that end inside the sheet/gu)).toHaveLength(1);
    expect(words).toMatch(/^Cuts that end inside the sheet/u);
  });

  it('says an outline in a sentence by its name, and of a drawn one its size alone', () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="60mm" viewBox="0 0 40 60">';
    const pieces =
      '  pieces:\n    leaf: { drawn: leaf.svg }\n    comb: { cut: 2 x 2, shape: polygon, sides: 6 }';
    const from = sample(`---\ntitle: A sample\nmeasurements:\n  unit: in\n${pieces}\n---\n`, {
      'sample/leaf.svg': `${svg}<path d="M0 0 H40 V60 H0 Z"/></svg>`,
    });
    const { editions, measures, voice } = settingFor(from);
    const said = (piece: string): string => read(referrer(editions, measures, voice)('piece', piece));
    expect(said('comb')).toMatch(/2 × 2 in .* polygon with 6 equal sides$/u);
    expect(said('leaf')).toMatch(/^leaf [\d /]+ × [\d /]+ in \(40 × 60 mm\)$/u);
  });

  it('says the outline of an opening as that of a piece', () => {
    const opening = (words: string): string =>
      `unit: in\npieces:\n  card: { cut: 4 x 5, openings: { window: { ${words} } } }`;
    const said = (words: string): string => {
      const { editions, measures, voice } = settingFor(sampleOf(opening(words)));
      return openingNotes(editions, 'card', measures, voice).map(read).join('; ');
    };
    expect(said('shape: polygon, sides: 8, size: 2 x 2')).toContain('polygon with 8 equal sides');
    expect(said('shape: arch, rise: 1/2, size: 2 x 3')).toMatch(/arch with a round top 1\/2 in.* high/u);
    expect(said('size: 2 x 3')).toContain('with a craft knife: 2 × 3 in');
    expect(said('size: 2 x 3, corners: { top: 1/4, bottom left: 1/8 }')).toContain(
      'upper corners rounded to 1/4 in (6 mm), lower left corner rounded to 1/8 in (3 mm), 2 × 3 in',
    );
    expect(said('shape: scalloped circle, size: 2 x 2')).toContain(
      'with 12 scallops, 2 in (51 mm), in the middle',
    );
  });

  it.each([
    [
      'en',
      'shape: arch, rise: 1/2',
      'Opening: window, arch with a round top ½ inch (13 millimeters) high, 2 by 3',
    ],
    ['en', 'corners: 1/4', 'Opening: window, corners rounded to ¼ inch (6 millimeters), 2 by 3'],
    ['de', 'shape: oval', 'Öffnung: window, Oval, 2'],
    ['es', 'shape: oval', 'Abertura: window, óvalo, 2'],
    ['fr', 'shape: oval', 'window, ovale, 2'],
    ['nl', 'shape: oval', 'Opening: window, ovaal, 2'],
  ])('tells in %s of the outline of an opening to who cannot see it: %s', (lang, words, expected) => {
    const card = `unit: in\npieces:\n  card: { cut: 4 x 5, openings: { window: { size: 2 x 3, ${words} } } }`;
    const { editions, voice } = settingFor(sampleOf(card, '', `lang: ${lang}\n`));
    const style = { shown: ['inch', 'metric'], say: voice.say } as const;
    expect(templateDrawing(editions, 'card', 2, style)?.alternative).toContain(expected);
  });

  it('names the knife for a cut that scissors do not get into', () => {
    const pop = sampleOf(
      'unit: in\npieces:\n  pop: { cut: 4 x 6, score: [{ from: left, at: [1, 3] }, { from: top, at: [2, 4] }], slit: [A|B 2, B|C 2-3] }',
    );
    const made = settingFor(pop);
    const words = read(referrer(made.editions, made.measures, made.voice)('trims', 'pop'));
    const knife =
      'Cut the lines that begin and end inside the sheet with a craft knife, as drawn and no further.';
    expect(words).toContain(knife);
    expect(words).toContain('Cuts that end inside the sheet are made with scissors or a craft knife');
    // The slits of a pop-up run across the fold, beside no panel as far as a fold.
    const card = settingFor(
      sampleOf(
        'unit: in\npieces:\n  card: { form: single-fold card, size: 5 x 4, openings: { step: { pop-up: 2, depth: 1 } } }',
      ),
    );
    expect(read(referrer(card.editions, card.measures, card.voice)('trims', 'card'))).toBe(knife);
  });

  /** By hand: the tab goes behind the left wall; the bottom is folded in last, over the flap of the back. */
  it('says which sides of which panels are stuck together', () => {
    expect(read(refer('assembly', 'box'))).toBe(
      [
        'Glue the outside of tab to the inside of left.',
        'Glue the outside of A4 to the inside of D4.',
        'Glue the outside of C4 to the inside of D4.',
        'Glue the inside of bottom to the outside of D4.',
      ].join(''),
    );
  });

  it('ends with how a ready-made form is closed', () => {
    const made = settingFor(sampleOf('unit: in\npieces:\n  tray: { form: tray, inside: 3 x 3 x 1 }'));
    const words = read(referrer(made.editions, made.measures, made.voice)('assembly', 'tray'));
    expect(words).toMatch(/\.$/u);
  });

  it('is nothing for a flat piece', () => {
    expect(refer('trims', 'layer')).toBeUndefined();
    expect(refer('assembly', 'layer')).toBeUndefined();
  });
});

describe('the facts', () => {
  const facts = (from: Setting): Record<string, string> =>
    Object.fromEntries(
      factsOf(from, { series: [], inUs: false }).map(({ term, value }) => [term, read(value)]),
    );

  it('give the size of the folded box and what it holds', () => {
    const { 'Finished size': size, Holds: holds } = facts(setting);
    // Front 2 1/2 wide, side 1 1/4 deep; 4 1/4 tall and a flange of 5/8 standing on it.
    expect(size).toMatch(/^2 1\/2 × 1 1\/4 × 4 7\/8 in \(/u);
    expect(holds).toBe('12 × short pencil, each 5/16 × 3 1/2 × 5/16 in (8 × 89 × 8 mm)');
  });

  it('give a folder with pockets closed, however it is shown', () => {
    const folder = sampleOf(`
unit: mm
pieces:
  folder:
    cut: 210 x 188
    score: [{ from: left, at: [105] }, { from: bottom, at: [40] }]
    panels: { back: A1, front: B1 }
    slit: [A|B 2]
    folds: { A|B: mountain 90, 1|2: mountain 180 }
    glue: { A2: back, B2: front }
`);
    expect(facts(settingFor(folder, 'a4'))['Finished size']).toMatch(/^105 × 148 mm \(/u);
  });

  it('say which pieces go together', () => {
    const sent = sampleOf(`
unit: in
pieces:
  card: { form: single-fold card, size: 5 1/2 x 4 1/4 }
  envelope: { form: envelope, card: 5 1/2 x 4 1/4, holds: card }
  band: { form: belly band, inside: 4 5/8 x 1/16, around: envelope }
`);
    expect(facts(settingFor(sent))['Goes together']).toBe('card in envelope, band around envelope');
  });

  it('are of the first thing that folds, not of its envelope', () => {
    const both = sampleOf(`
unit: in
pieces:
  note: { cut: 3 x 3 }
  card: { cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }] }
  envelope: { form: envelope, inside: 5 3/4 x 4 1/2 }
`);
    expect(facts(settingFor(both))['Finished size']).toMatch(/^card 4 1\/4 × 5 1\/2 in/u);
  });

  it('give a card closed, and a flat thing as cut', () => {
    const card = sampleOf(
      'unit: in\npieces:\n  card: { cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }] }',
    );
    expect(facts(settingFor(card))['Finished size']).toBe('4 1/4 × 5 1/2 in (108 × 140 mm)');
    const tag = sampleOf('unit: in\npieces:\n  tag: { cut: 2 x 6 }');
    expect(facts(settingFor(tag))['Finished size']).toMatch(/^2 × 6 in/u);
  });

  it('add up the steps where no time is given, and name waiting apart', () => {
    const steps = '## One :step{minutes=50}\nA.\n\n## Two :step{minutes=25 dry=10}\nB.';
    const from = sampleOf('unit: in\npieces:\n  tag: { cut: 2 x 6 }', steps);
    expect(facts(settingFor(from)).Time).toBe('1 hour 15 minutes, plus 10 minutes to dry');
  });

  it('take the day from the project', () => {
    const from = sampleOf(
      'unit: in\npieces:\n  tag: { cut: 2 x 6 }',
      '',
      'session: 2026-12-10\nlevel: beginner\n',
    );
    expect(facts(settingFor(from))).toMatchObject({
      Session: 'Thursday, December 10, 2026',
      Level: 'beginner',
    });
  });
});

describe('the supplies', () => {
  const supplies = `supplies:
  - { item: Bone folder, kind: tool, instead: the back of a spoon, share: 2 }
  - { item: Wheat stamp, kind: stamp, from: Meadow set, link: "https://example.org/wheat/", paid: true }
  - { item: Star stamp, kind: stamp }
  - { item: Poppy stamp, kind: stamp, from: Meadow set }
  - { item: Moss ink, kind: ink, color: "#6B7", for: the leaves }
  - { item: Twine, kind: embellishment, each: 24 in }
  - { item: Strong tape, kind: adhesive }
`;
  const groups = supplyGroups(settingFor(sampleOf(BOX, '', supplies)));
  const itemsOf = (heading: string) =>
    groups
      .filter((group) => group.heading === heading)
      .flatMap(({ sets }) => sets.flatMap(({ items }) => items));

  it('are grouped by kind, paper first', () => {
    expect(groups.map(({ heading }) => heading)).toEqual([
      'Paper',
      'Tools',
      'Stamps',
      'Ink',
      'Adhesive',
      'Embellishments',
    ]);
    expect(itemsOf('Paper').map(({ item }) => item.text)).toEqual(['Blue cardstock', 'Wave print']);
  });

  it('say what serves instead, how much and where', () => {
    const [tool] = itemsOf('Tools');
    expect([read(tool?.instead), read(tool?.amount)]).toEqual(['or the back of a spoon', 'shared by 2']);
    expect(itemsOf('Stamps')[1]?.link).toEqual({
      href: 'https://example.org/wheat/',
      address: 'example.org/wheat',
      paid: true,
    });
    expect(read(itemsOf('Embellishments')[0]?.amount)).toBe('24 in (610 mm) per person');
  });

  it('name a set once, behind what comes from none', () => {
    const sets = groups.find(({ heading }) => heading === 'Stamps')?.sets;
    expect(
      sets?.map(({ name, items }) => [name && read(name), ...items.map(({ item }) => read(item))]),
    ).toEqual([
      [undefined, 'Star stamp'],
      ['from the Meadow set:', 'Wheat stamp', 'Poppy stamp'],
    ]);
  });

  it('show the color of an ink, and say what it is for', () => {
    const [ink] = itemsOf('Ink');
    expect([ink?.color, read(ink?.use)]).toEqual(['#66bb77', 'for the leaves']);
    expect(sheetHtml(sampleOf(BOX, '', supplies), 'page')).toContain('style="background-color: #66bb77"');
  });

  it('have names of their own for ticks', () => {
    const ids = groups.flatMap(({ sets }) => sets.flatMap(({ items }) => items.map(({ id }) => id)));
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('a video', () => {
  const filmed = sampleOf(BOX, '', 'video: https://example.org/v/box/\n');

  it('is a link on the page, and an address to type beside a code on paper', () => {
    const [page, paper] = (['page', 'letter'] as const).map((target) =>
      parseMarkup(sheetHtml(filmed, target)),
    );
    if (!page || !paper) throw new Error('nothing was made');
    for (const sheet of [page, paper]) {
      const link = one(sheet, '.address');
      expect([link.attributes.href, textOf(link)]).toEqual([
        'https://example.org/v/box/',
        'example.org/v/box',
      ]);
    }
    expect(all(page, '.codes')).toEqual([]);
    expect(all(one(paper, '.codes'), 'figcaption').map(textOf)).toEqual(['Video']);
  });

  it.each(['javascript:alert(1)', 'example.org/v', 'data:text/html,x'])('%s is none', (address) => {
    const { project } = sampleOf(BOX, '', `video: "${address}"\n`);
    expect(project.video).toBeUndefined();
    expect(project.findings.map(({ rule }) => rule)).toEqual(['unsafe-content']);
  });
});

describe('a punched edge and a stamped image', () => {
  /** Worked out by hand: 17 motifs of 1/8 in every 1/4 in are 4 1/8 in long, which leaves 3/16 in at both ends of 4 1/2 in. */
  const MAT = `
unit: in
pieces:
  card: { cut: 4 1/4 x 5 1/2 }
  mat:
    cut: 3 1/2 x 4 1/2
    on: card
    edge: { along: [left, right], pitch: 1/4, hole: 1/8 }
    impressions: [{ stamp: wheat, ink: moss, size: 2 x 1, at: { left: 1/2 }, turn: 90 }, { stamp: star, size: 1 x 1, at: { top: 3 3/4 }, runs off: yes, covered: yes }]
`;
  const SUPPLIES =
    'supplies: [{ item: Wheat stamp, kind: stamp }, { item: Star stamp, kind: stamp }, { item: Moss ink, kind: ink }]\n';
  const mat = sampleOf(MAT, '## Punch\nPunch it: :edge[mat]. Stamp: :impressions[mat].\n', SUPPLIES);

  it('are said in the cut list, in both editions', () => {
    const notes = cutList(settingFor(mat))
      .groups.flatMap((group) => group.rows)[1]
      ?.notes.map(read);
    expect(notes?.slice(1)).toEqual([
      'punch the left edge and right edge: start 3/16 in (≈5 mm) from the end; 17 motifs, one of them in the middle, both ends the same',
      'stamped: Wheat stamp in Moss ink: 2 × 1 in (≈51 × ≈25 mm), 1/2 in (13 mm) from the left, centered from top to bottom, turned 90° clockwise; Star stamp: 1 × 1 in (≈25 × ≈25 mm), 3 3/4 in (95 mm) from the top, centered from side to side, running off the bottom edge',
    ]);
  });

  it('are said in a step', () => {
    const text = read(sheetHtml(mat, 'letter'));
    expect(text).toContain('Punch it: punch the left edge and right edge');
    expect(text).toContain('Stamp: Wheat stamp in Moss ink');
  });

  it('keep the lengths of their tools in the other edition, and are laid anew there', () => {
    const [own, other] = [mat.editions.inch, mat.editions.metric].map(
      ({ shapes }) => ownNet(shapes.nets, 'mat')?.rows?.[0],
    );
    expect(other?.pitch.equals(own?.pitch ?? inch)).toBe(true);
    // 114 mm less 17 motifs: (114 − 16 × 6.35 − 3.175) / 2.
    expect(other?.start.mm).toBeCloseTo(4.6125, 9);
  });
});

describe('a piece larger than the paper of an edition', () => {
  const notes = (sheet: string, target: 'a4' | 'letter', rest = ''): string[] =>
    cutList(settingFor(sampleOf(sheet, '', rest), target)).groups.flatMap(({ rows }) =>
      rows.flatMap((row) => row.notes.map(String)),
    );
  const WIDE = 'stock: { card: { sheet: Letter } }\npieces: { wrap: { stock: card, cut: 8 1/2 x 11 } }';
  // A4 is 210 × 297 mm (ISO 216), so 216 mm is too wide for it.
  const A4 = 'larger than A4: use a larger sheet';

  it('says so wherever that edition is shown', () => {
    expect(notes(WIDE, 'a4')).toEqual([A4]);
    expect(notes(WIDE, 'letter')).toEqual([A4]);
  });

  it('and not where it is not', () => {
    expect(notes(WIDE, 'letter', 'units: inch\n')).toEqual([]);
    expect(notes(WIDE.replace('11 }', '10 }').replace('8 1/2', '8'), 'a4')).toEqual([]);
  });

  it('names what has no name by its size', () => {
    const large = 'stock: { card: { sheet: 12 x 12 } }\npieces: { wrap: { stock: card, cut: 12 x 13 } }';
    expect(notes(large, 'letter')).toEqual([
      'larger than 12 × 12 in: use a larger sheet',
      'larger than 305 × 305 mm: use a larger sheet',
    ]);
  });

  it('holds a project in millimeters against the paper that its readers have', () => {
    const mm =
      'unit: mm\nstock: { card: { sheet: Letter } }\npieces: { wrap: { stock: card, cut: 212 x 260 } }';
    expect(notes(mm, 'a4')).toEqual([A4]);
  });
});

describe('the paper a stock is sold as', () => {
  const paperOf = (sheet: string, rest = ''): string => {
    const from = sampleOf(`${sheet}\npieces: { mat: { stock: card, cut: 50 x 50 mm } }`, '', rest);
    return read(cutList(settingFor(from)).groups[0]?.facts);
  };

  it.each<[string, string, string]>([
    ['unit: mm\nstock: { card: { sheet: Letter } }', '', 'sheet Letter (8 1/2 × 11 in) or A4 (210 × 297 mm)'],
    ['unit: in\nstock: { card: { sheet: A4 } }', '', 'sheet Letter (8 1/2 × 11 in) or A4 (210 × 297 mm)'],
    // Where there is no other edition it is the paper as written, in its own measure.
    ['unit: mm\nstock: { card: { sheet: Letter } }', 'units: metric\n', 'sheet Letter'],
    ['unit: in\nstock: { card: { sheet: A4 } }', 'units: inch\n', 'sheet A4'],
    ['unit: in\nstock: { card: { sheet: 12 x 12 } }', 'units: inch\n', 'sheet 12 × 12 in'],
  ])('%s %s is %s, by the ruler of each reader', (sheet, rest, paper) => {
    expect(paperOf(sheet, rest)).toBe(paper);
  });
});

describe('a piece that has a name of its own', () => {
  const gates = sampleOf(
    `
unit: in
pieces:
  gate-card: { name: Garden gate, form: single-fold card, size: 4 x 5 }
  left-gate: { name: Wicket, cut: 3 x 4, on: gate-card.front }
  knob_2: { cut: 1/2 x 1/2, on: left-gate }
`,
    '## Hang it\nStick :piece[left-gate] to :piece[gate-card.front] and :piece[knob_2] to it.\n\n::drawing{of=gate-card.front view=layers}\n',
  );

  it.each(['letter', 'page'] as const)('is called by it everywhere on the %s', (target) => {
    const said = sheetHtml(gates, target);
    expect(read(said)).toContain('on the front of the Garden gate');
    expect(said).toContain('Wicket');
    expect(said).toContain('on the Wicket');
    expect(said).toContain('knob 2');
    expect(said).not.toMatch(/left[- ]gate|gate[- ]card(?!")|Gate card|knob_2/u);
  });

  it('says of a drawing that a step asks for what the layers lie on, as of every other', () => {
    const figures = all(parseMarkup(sheetHtml(gates, 'letter')), 'figcaption').map(textOf);
    expect(figures).toContain('Layers on the front of the Garden gate');
  });
});
