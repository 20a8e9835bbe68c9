import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/project/finding.ts';
import { blamed, faultsOf, readSheet, sheetOf } from './reading.ts';

/** The faults of a sheet with these lines in its measurement block. */
function faultsIn(measurements: string): string[] {
  return faultsOf(readSheet(sheetOf(measurements)));
}

describe('a stamp, an ink and a color', () => {
  const sheetWith = (impression: string, supply: string): string =>
    sheetOf(`pieces:\n  a: { cut: 3 x 4, impressions: { ${impression}, size: 1 x 1 } }`).replace(
      'measurements:',
      `supplies: [${supply}]\nmeasurements:`,
    );
  const WHEAT = '{ item: Wheat ear stamp, kind: stamp }, { item: Moss dye ink, kind: ink }';

  it.each<[string, string, readonly string[]]>([
    ['stamp: wheat, ink: moss', WHEAT, []],
    ['stamp: Wheat ear stamp, ink: Moss', WHEAT, []],
    ['stamp: oats', WHEAT, ['unknown-reference: oats']],
    ['stamp: moss', WHEAT, ['unknown-reference: moss']],
    ['stamp: wheat, ink: straw', WHEAT, ['unknown-reference: straw']],
    ['stamp: oats', '', ['unknown-reference: oats']],
    ['stamp: pen', '{ item: Pen stamp, kind: stamp, color: moss }', ['unexpected-value: moss']],
  ])('%s of %s', (impression, supplies, expected) => {
    expect(faultsOf(readSheet(sheetWith(impression, supplies)))).toEqual(expected);
  });

  it('takes a bare # for a color without its quotes', () => {
    const supply = 'supplies:\n  - item: Pen stamp\n    kind: stamp\n    color: #abc';
    const sheet = sheetWith('stamp: pen', '').replace('supplies: []', supply);
    expect(faultsOf(readSheet(sheet))).toEqual(['unexpected-value: #abc']);
  });
});

describe('a dot in a name, which no reference could name', () => {
  it.each<[string, string]>([
    ['a.b: { cut: 3 x 4 }', 'a.b'],
    ['a: { cut: 3 x 4, openings: { b.c: { size: 1 x 1 } } }', 'b.c'],
    ['a: { cut: 3 x 4, openings: { b.c: { slot: 1 } } }', 'b.c'],
  ])('%s', (piece, name) => {
    const body = '## Cut\nTake :piece[a] and :piece[a.b].';
    const [first] = faultsOf(readSheet(sheetOf(`pieces:\n  ${piece}`, body)));
    expect(first).toBe(`unexpected-value: ${name}`);
  });
});

describe('corners', () => {
  it.each<[string, readonly string[]]>([
    ['1/4', []],
    ['{ top: 1/4, bottom left: 1/8 }', []],
    ['{ left: 1/4, right: 1/4 }', []],
    ['{ top: 1/4, top left: 1/8 }', ['unexpected-value: 1/8']],
    ['{ top left: 1/8, top: 1/8 }', ['unexpected-value: 1/8']],
    ['{ top: 1/4, left: 1/2, right: 3/4 }', ['unexpected-value: 1/2', 'unexpected-value: 3/4']],
    ['{ topp: 1/4 }', ['unknown-key: topp']],
    ['{ top: 0 }', ['unreadable-length: 0']],
    ['{ }', ['unexpected-value: { }']],
    ['[1/4]', ['unexpected-value: [1/4]']],
    ['1/4, shape: rectangle', []],
    ['1/4, shape: rectangel', ['unknown-reference: rectangel']],
    ['1/4, shape: rectangle, sides: 4', ['unexpected-value: 4']],
  ])('%s', (corners, expected) => {
    expect(faultsIn(`pieces: { a: { cut: 3 x 4, corners: ${corners} } }`)).toEqual(expected);
  });
});

describe('a measurement that is none', () => {
  it.each<[string, string]>([
    ['2 1/0 x 4', '2 1/0'],
    ['4 x 2 1/0', '2 1/0'],
    ['1/4/2', '1/4/2'],
    ['1/4/2 x 3', '1/4/2'],
    ['-3 x 4', '-3'],
    ['-3', '-3'],
    ['99999 x 4', '99999'],
    ['4 x 99999', '99999'],
    ['two inches', 'two inches'],
    ['two inches x 4', 'two inches'],
    ['0 x 4', '0'],
    ['"5,700 x 4 mm"', '5,700'],
    ['3', '3'],
    ['3 x 4 x 5', '3 x 4 x 5'],
    ['"3 x two"', 'two'],
    ['57 x 1o2 mm', '1o2 mm'],
    ['57 x 102 mn', '102 mn'],
    ['1o2 x 57', '1o2'],
  ])('cut: %s', (cut, characters) => {
    expect(faultsIn(`pieces:\n  a: { cut: ${cut} }`)).toEqual([`unreadable-length: ${characters}`]);
  });

  it.each<[string, string]>([
    ['pieces: { a: { cut: 3 x 4, corners: 1/0 } }', '1/0'],
    ['pieces: { b: { cut: 5 x 5 }, a: { cut: 3 x 4, on: b, at: { left: 1/4, top: -one } } }', '-one'],
    ['pieces: { a: { cut: 3 x 4, score: [{ from: left, at: [1, one] }] } }', 'one'],
    ['holds: { item: x, size: 1 x 2 x 0 }', '0'],
    ['stock: { m: { caliper: thick } }', 'thick'],
    ['stock: { m: { sheet: 8 1/2 x 1l } }', '1l'],
    ['stock: { m: { sheets: [12 x 12, { size: 8 x -1 }] } }', '-1'],
  ])('%s', (measurements, characters) => {
    expect(faultsIn(measurements)).toEqual([`unreadable-length: ${characters}`]);
  });

  it('names what it was for, and quotes it', () => {
    const [fault] = readSheet(sheetOf('pieces: { a: { cut: 3 x 2 1/0 } }')).findings;
    expect(fault).toMatchObject({ facts: { text: '2 1/0', problem: 'denominator of zero', what: 'cut' } });
  });

  it('drops the piece, but not its name: what names it is no fault too', () => {
    const body = '## Cut\nTake :piece[a], leaving :reveal[b].\n';
    const project = readSheet(
      sheetOf('stock: { m: {} }\npieces: { a: { stock: m, cut: 3 x } , b: { cut: 1 x 1, on: a } }', body),
    );
    expect(faultsOf(project)).toHaveLength(1);
    expect([...project.pieces.keys()]).toEqual(['b']);
    expect(project.names.pieces).toEqual(['a', 'b']);
  });

  it('goes on to the next: every fault of a sheet is found at once', () => {
    expect(faultsIn('unit: ell\npieces: { a: { cut: x }, b: { cut: 1 x 0 }, c: { kut: 1 x 1 } }')).toEqual([
      'unexpected-value: ell',
      'unreadable-length: x',
      'unreadable-length: 0',
      'unknown-key: kut',
    ]);
  });
});

describe('a word that is not known', () => {
  const known = (findings: readonly Finding[]): unknown[] =>
    findings.map((fault) =>
      fault.rule === 'unknown-key'
        ? [fault.facts.key, fault.facts.where, fault.facts.known.length > 1]
        : fault,
    );

  it.each<[string, string, string[]]>([
    ['units: in', 'units', ['measurements']],
    ['stock: { m: { colour: "#6b7f5b" } }', 'colour', ['stock', 'm']],
    ['pieces: { a: { cut: 1 x 1, coner: 1/8 } }', 'coner', ['pieces', 'a']],
    ['pieces: { a b: { cut: 1 x 1, coner: 1/8 } }', 'coner', ['pieces', 'a b']],
    ['pieces: { a: { cut: 1 x 1, at: { lfet: 1 } } }', 'lfet', ['pieces', 'a', 'at']],
    ['pieces: { a: { cut: 1 x 1, score: [{ form: left, from: left, at: [1/2] }] } }', 'form', ['score']],
    ['holds: { item: x, coutn: 2 }', 'coutn', ['holds']],
  ])('%s', (measurements, key, where) => {
    expect(known(readSheet(sheetOf(measurements)).findings)).toEqual([[key, where, true]]);
  });

  it('in the head, and in a supply', () => {
    const project = readSheet(
      '---\ntitle: A\ntitel: B\nmeasurements: { unit: in }\nsupplies: [{ item: x, kidn: tool }]\n---\n',
    );
    expect(known(project.findings)).toEqual([
      ['titel', ['frontmatter'], true],
      ['kidn', ['supplies'], true],
    ]);
    expect(faultsOf(project)).toEqual(['unknown-key: titel', 'unknown-key: kidn']);
  });

  it('is one of the form where there is one', () => {
    const project = readSheet(sheetOf('pieces: { a: { form: tray, insde: 3 x 4 x 1 } }'));
    expect(faultsOf(project)).toEqual(['unknown-key: insde']);
  });
});

describe('a turn', () => {
  it.each([
    ['7.3', 7.3],
    ['-0.1', 359.9],
    ['367,4', 7.4],
    ['359.999999', 359.999999],
    ['-0', 0],
    ['360', 0],
    ['-720', 0],
  ])('is one from 0 to less than 360, as it was written: %s', (written, turn) => {
    const { pieces } = readSheet(
      sheetOf(`pieces: { a: { cut: 5 x 5 }, b: { cut: 1 x 1, on: a, turn: ${written} } }`),
    );
    expect(pieces.get('b')?.placement.turn?.value).toBe(turn);
  });
});

describe('a turn said twice', () => {
  it.each([
    ['turn: 90, at: { turn: 45 }', 90, '45'],
    ['at: { turn: 45 }, turn: 90', 45, '90'],
  ])('is found, and the first counts: %s', (turns, turn, second) => {
    const project = readSheet(sheetOf(`pieces: { b: { cut: 5 x 5 }, a: { cut: 3 x 4, on: b, ${turns} } }`));
    expect(faultsOf(project)).toEqual([`repeated-key: ${second}`]);
    expect(project.pieces.get('a')?.placement.turn?.value).toBe(turn);
  });
});

describe('a value of the wrong kind', () => {
  it.each<[string, string]>([
    ['unit: ell', 'ell'],
    ['metric: quarter', 'quarter'],
    ['pieces: [a, b]', '[a, b]'],
    ['pieces: { a: card }', 'card'],
    ['pieces: { a: }', 'a'],
    ['pieces: { a: { cut: [3, 4] } }', '[3, 4]'],
    ['pieces: { a: { cut: 3 x 4, count: 0 } }', '0'],
    ['pieces: { a: { cut: 3 x 4, count: 1.5 } }', '1.5'],
    ['pieces: { a: { cut: 3 x 4, count: many } }', 'many'],
    ['pieces: { a: { cut: 3 x 4, overhang: perhaps } }', 'perhaps'],
    ['pieces: { a: { cut: 3 x 4, turn: left } }', 'left'],
    ['pieces: { a: { cut: 3 x 4, at: middle } }', 'middle'],
    ['pieces: { a: { cut: 3 x 4, on: a.b.c } }', 'a.b.c'],
    ['pieces: { a: { cut: 3 x 4, score: left } }', 'left'],
    ['pieces: { a: { cut: 3 x 4, score: [{ from: west, at: [1] }] } }', 'west'],
    ['pieces: { a: { cut: 3 x 4, panels: { front: 3B } } }', '3B'],
    ['pieces: { a: { cut: 3 x 4, panels: { front: B0 } } }', 'B0'],
    ['pieces: { a: { cut: 3 x 4, slit: [A|C 1] } }', 'A|C 1'],
    ['pieces: { a: { cut: 3 x 4, slit: [A|B] } }', 'A|B'],
    ['pieces: { a: { cut: 3 x 4, slit: [A|B 2-1] } }', 'A|B 2-1'],
    ['pieces: { a: { cut: 3 x 4, slit: [A|B C] } }', 'A|B C'],
    ['pieces: { a: { cut: 3 x 4, folds: { 1|3: valley } } }', '1|3'],
    ['pieces: { a: { cut: 3 x 4, folds: { 1|2: up 90 } } }', 'up 90'],
    ['pieces: { a: { cut: 3 x 4, folds: { 1|2: valley 270 } } }', 'valley 270'],
    ['pieces: { a: { cut: 3 x 4, folds: { 1|2: flat 90 } } }', 'flat 90'],
    ['stock: { m: { color: green } }', 'green'],
    ['stock: { m: { color: "#12345" } }', '#12345'],
    ['stock: { m: { weight: 80 lb } }', '80 lb'],
    ['stock: { m: { weight: 80 lb carton } }', '80 lb carton'],
    ['stock: { m: { weight: heavy } }', 'heavy'],
    ['stock: { m: { print: sideways } }', 'sideways'],
    ['stock: { m: { price: 0.455 } }', '0.455'],
    ['stock: { m: { price: "1,000" } }', '1,000'],
    ['stock: { m: { price: cheap } }', 'cheap'],
    ['stock: { m: { pack: 0 } }', '0'],
    ['stock: { m: plain }', 'plain'],
    ['holds: a seed packet', 'a seed packet'],
    ['holds: { item: x, food: maybe }', 'maybe'],
  ])('%s', (measurements, characters) => {
    expect(faultsIn(measurements)).toEqual([`unexpected-value: ${characters}`]);
  });

  it.each<[string, string]>([
    ['minutes: a while', 'a while'],
    ['minutes: 0', '0'],
    ['session: soon', 'soon'],
    ['session: 12/10/2026', '12/10/2026'],
    ['lang: English please', 'English please'],
    ['title: [a, b]', '[a, b]'],
    ['supplies: { item: x, kind: gadget }', 'gadget'],
    ['supplies: [[a]]', '[a]'],
  ])('%s', (head, characters) => {
    const title = head.startsWith('title') ? '' : 'title: A\n';
    const project = readSheet(`---\n${title}${head}\nmeasurements: { unit: in }\n---\n`);
    expect(faultsOf(project)).toEqual([`unexpected-value: ${characters}`]);
  });

  it('of a color typed without quotes says that # begins a comment', () => {
    const [fault] = readSheet(sheetOf('stock:\n  m:\n    color: #6b7f5b\n    name: Moss')).findings;
    const expected = expect.stringContaining('in quotes');
    expect(fault).toMatchObject({ rule: 'unexpected-value', facts: { actual: '#6b7f5b', expected } });
    expect(fault && blamed(fault.at)).toBe('#6b7f5b');
  });
});

describe('what is missing points at what it is missing from', () => {
  it.each<[string, string, string]>([
    ['pieces: { front: { stock: m } }\nstock: { m: {} }', 'cut', 'front'],
    ['pieces: { front: { cut: } }', 'cut', 'cut'],
    ['pieces: { cut: {} }', 'cut', 'cut'],
    ['pieces: { front: { cut: 3 x 4, score: [{ at: [1] }] } }', 'from', '{ at: [1] }'],
    ['pieces: { front: { cut: 3 x 4, score: [{ from: left }] } }', 'at', '{ from: left }'],
    ['holds: { count: 2 }', 'item', '{ count: 2 }'],
    ['stock: { m: { sheets: [{ price: 1 }] } }', 'size', '{ price: 1 }'],
  ])('%s', (measurements, key, characters) => {
    const { findings } = readSheet(sheetOf(measurements));
    expect(findings).toMatchObject([{ rule: 'missing-value', facts: { key } }]);
    expect(findings.map(({ at }) => blamed(at))).toEqual([characters]);
  });

  it('a title, or the whole block, points at the line the head begins with', () => {
    expect(faultsOf(readSheet('---\nsummary: A\n---\n'))).toEqual([
      'missing-value: ---',
      'missing-value: ---',
    ]);
    expect(faultsOf(readSheet('---\n---\nText.'))).toEqual(['missing-value: ---', 'missing-value: ---']);
  });

  it('empty lists and maps are simply empty', () => {
    const project = readSheet('---\ntitle: A\ntags:\nsupplies:\nmeasurements:\n  stock:\n  pieces:\n---\n');
    expect(project.findings).toEqual([]);
  });
});

describe('what is written twice', () => {
  it('counts the first and points at both', () => {
    const text = sheetOf(
      'pieces:\n  a: { cut: 3 x 4 }\n  b: { cut: 1 x 1, cut: 2 x 2 }\n  a: { cut: 5 x 6 }',
    );
    const { findings, pieces } = readSheet(text);
    expect(
      findings.map(
        (fault) =>
          fault.rule === 'repeated-key' && [fault.facts.key, fault.facts.first.start, fault.at.start],
      ),
    ).toEqual([
      ['cut', text.indexOf('cut: 1'), text.indexOf('cut: 2')],
      ['a', text.indexOf('a: { cut: 3'), text.indexOf('a: { cut: 5')],
    ]);
    const body = pieces.get('a')?.body;
    expect(body?.kind === 'flat' && body.cut.width.value.toString()).toBe('3 in');
  });

  it('also in the head', () => {
    expect(faultsOf(readSheet('---\ntitle: A\ntitle: B\nmeasurements: { unit: in }\n---\n'))).toEqual([
      'repeated-key: title',
    ]);
  });
});

describe('a name that is not there', () => {
  it.each<[string, string, string, readonly string[]]>([
    ['pieces: { a: { stock: mos, cut: 1 x 1 } }\nstock: { moss: {} }', 'mos', 'stock', ['moss']],
    ['pieces: { a: { cut: 1 x 1, on: bx.front } }', 'bx', 'piece', ['a']],
    ['pieces: { a: { stock: shared.moss, cut: 1 x 1 } }', 'shared.moss', 'stock', []],
    ['pieces: { a: { use: shared.box } }', 'shared.box', 'piece', []],
    ['pieces: { a: { use: box, cut: 1 x 1 } }', 'box', 'piece', []],
  ])('%s', (measurements, name, what, among) => {
    const { findings } = readSheet(sheetOf(measurements));
    expect(findings).toMatchObject([{ rule: 'unknown-reference', facts: { name, what, among } }]);
    expect(findings.map(({ at }) => blamed(at))).toEqual([name]);
  });

  it('in the prose', () => {
    const body =
      'See :piece[bax].\n\n## Cut :piece[lid]\n:size[box.front] :count[c]\n\n::drawing{of=bix view=flat}\n';
    const project = readSheet(sheetOf('pieces: { box: { form: tray, inside: 3 x 4 x 1 } }', body));
    expect(faultsOf(project)).toEqual(['bax', 'lid', 'c', 'bix'].map((name) => `unknown-reference: ${name}`));
  });
});

describe('a date', () => {
  const dated = (date: string): string[] =>
    faultsOf(readSheet(`---\ntitle: A\nsession: ${date}\nmeasurements: { unit: in }\n---\n`));

  it.each(['2026-02-30', '2026-13-01', '2026-00-10', '2027-02-29', '1900-02-29', '2026-04-31', '0000-00-00'])(
    '%s is no day',
    (date) => {
      expect(dated(date)).toEqual([`no-such-date: ${date}`]);
    },
  );

  it.each(['2026-12-10', '2028-02-29', '2000-02-29', '"2026-12-10"', '2026-1-7'])('%s is one', (date) => {
    expect(dated(date)).toEqual([]);
  });

  it('is written with two digits each', () => {
    expect(readSheet('---\ntitle: A\nsession: 2026-1-7\nmeasurements: {}\n---\n').session?.value).toBe(
      '2026-01-07',
    );
  });
});

describe('a link of a supply', () => {
  it.each([
    'javascript:alert(1)',
    'data:text/html,x',
    'ftp://example.org/x',
    '//example.org',
    'example.org',
    'https://',
  ])('%s is refused', (link) => {
    const project = readSheet(
      `---\ntitle: A\nmeasurements: {}\nsupplies: [{ item: x, link: "${link}" }]\n---\n`,
    );
    expect(faultsOf(project)).toEqual([`unsafe-content: ${link}`]);
    expect(project.supplies[0]?.link).toBeUndefined();
  });
});

describe('a piece that could not be read whole', () => {
  it('has its other names checked all the same, so that one run finds everything', () => {
    const project = readSheet(
      sheetOf('stock: { moss: {} }\npieces: { a: { stock: mos, cut: 2 1/0 x 4, on: bx } }'),
    );
    expect(faultsOf(project)).toEqual([
      'unreadable-length: 2 1/0',
      'unknown-reference: mos',
      'unknown-reference: bx',
    ]);
  });

  it('is told of shared stock when its own is not there', () => {
    const project = readSheet(sheetOf('pieces: { a: { stock: moss, cut: 1 x 1 } }'), {
      'shared/stock.yaml': 'stock: { moss: {} }\n',
    });
    expect(project.findings).toMatchObject([{ facts: { name: 'moss', among: ['shared.moss'] } }]);
  });
});

describe('a unit of a supply', () => {
  // One letter wrong in a word of each of our languages.
  it.each([
    ['24 inn', 'in'],
    ['24 inchs', 'inch'],
    ['2 fft', 'ft'],
    ['10 yrads', 'yards'],
    ['60 cmm', 'cm'],
    ['60 Zentimeterr', 'zentimeter'],
    ['4 Zolll', 'zoll'],
    ['4 puoces', 'pouces'],
    ['60 centímetrros', 'centímetros'],
    ['3 pulgdas', 'pulgadas'],
    ['60 millimeeter', 'millimeter'],
    ['4 dium', 'duim'],
  ])('is told of a slip in it: %s', (each, other) => {
    const faults = readSheet(
      `---\ntitle: A\nmeasurements: {}\nsupplies: [{ item: x, each: ${each} }]\n---\n`,
    ).findings;
    expect(faults).toMatchObject([{ rule: 'unexpected-value', facts: { misfit: 'unit misspelled', other } }]);
  });

  it.each(
    '24 buttons, 10 yd, 2 cards, 6 pins, 4 tins, 2 pinches, 3 pouches, 2 yarn, 1 felt, 5 g, 2 oz, 1 lb, 30 ml, 3 m, 24, 1 ink, 6 feet, 2 sheets, 4 bins, 1 inner, 3 Inch, 2 Bögen, 5 mètres, a few in each, 12 dots, 3 rings'.split(
      ', ',
    ),
  )('and a thing is none: %s', (each) => {
    expect(
      faultsOf(readSheet(`---\ntitle: A\nmeasurements: {}\nsupplies: [{ item: x, each: ${each} }]\n---\n`)),
    ).toEqual([]);
  });
});
