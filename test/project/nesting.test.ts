import { describe, expect, it } from 'vitest';
import { blamed, readSheet, sheetOf } from './reading.ts';

const listOf = (levels: number): string =>
  Array.from({ length: levels }, (_, level) => `${'  '.repeat(level)}- x`).join('\n');

function tooDeep(body: string): readonly string[] {
  const { findings } = readSheet(sheetOf('pieces: { box: { cut: 3 x 4 } }', body));
  return findings.filter(({ rule }) => rule === 'nested-too-deep').map(({ at }) => blamed(at));
}

/** Where in a sheet too much of something is told of, and what. */
function tooMany(pieces: string, body = ''): readonly string[] {
  const { findings } = readSheet(sheetOf(pieces, `${body}\n\n## Cut\nCut :piece[box].\n`));
  return findings.flatMap((each) =>
    each.rule === 'too-many'
      ? `${each.facts.count} of ${each.facts.most} ${each.facts.what}: ${blamed(each.at)}`
      : [],
  );
}

const lines = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index)).join('\n');

describe('More than anybody means', () => {
  it.each([
    ['*a* ', '*', 6000],
    ['[a', '[', 3000],
    ['`a` ', '`', 6000],
    [':piece[box] ', ':', 9000],
    ['<b>', '<', 3000],
  ])('is a paragraph of thousands of %s, and the others are read', (mark, at, count) => {
    const told = `${count} of 1000 marks in this paragraph: ${at}`;
    const body = `${mark.repeat(3000)}\n\nCut :piece[nobody].`;
    const sheet = sheetOf(
      'pieces: { box: { cut: 3 x 4 } }',
      `Take :piece[box].\n\n${body}\n\n## Cut\nCut :piece[box].\n`,
    );
    expect(tooMany('pieces: { box: { cut: 3 x 4 } }', body)).toEqual([told]);
    const { findings, introduction } = readSheet(sheet);
    expect(findings.map(({ rule, at: place }) => [rule, blamed(place)])).toEqual([
      ['unknown-reference', 'nobody'],
      ['too-many', at],
    ]);
    expect(introduction.references).toHaveLength(2);
  });

  it('is a text of such paragraphs, of which nothing is read once they are more than ten', () => {
    const bodyOf = (count: number): string => `${'*a* '.repeat(600)}\n\n`.repeat(count);
    const told = '1200 of 1000 marks in this paragraph: *';
    expect(tooMany('pieces: { box: { cut: 3 x 4 } }', bodyOf(10))).toEqual(Array(10).fill(told));
    expect(tooMany('pieces: { box: { cut: 3 x 4 } }', bodyOf(12))).toEqual(Array(11).fill(told));
  });

  it.each([
    ['quotes', '> a\n\n', '>'],
    ['quotes in quotes, which would break the parser', '> ', '>'],
    ['notes', '[^a]: Note.\n\n', '['],
  ])('is a text of thousands of %s', (_, item, at) => {
    const told = `3000 of 1000 quotes and notes in this text: ${at}`;
    expect(tooMany('pieces: { box: { cut: 3 x 4 } }', item.repeat(3000))).toEqual([told]);
  });

  it('is a text of thousands of rows, of which the first and all else are read', () => {
    const table = `| of |\n| - |\n${'| :piece[rows] |\n'.repeat(3000)}`;
    const body = `${table}\nTake :piece[nobody].`;
    expect(tooMany('pieces: { box: { cut: 3 x 4 }, rows: { cut: 3 x 4 } }', body)).toEqual([
      '3002 of 1000 rows of tables in this text: | :piece[rows] |',
    ]);
    const { findings, introduction } = readSheet(
      sheetOf(
        'pieces: { box: { cut: 3 x 4 }, rows: { cut: 3 x 4 } }',
        `${body}\n\n## Cut\nCut :piece[box].\n`,
      ),
    );
    expect(introduction.references).toHaveLength(999);
    expect(findings.map(({ rule, at }) => [rule, blamed(at)])).toContainEqual([
      'unknown-reference',
      'nobody',
    ]);
  });

  it.each([
    [
      100,
      'score lines',
      (count: number) =>
        `    box: { cut: 8 x 10, score: [{ from: left, at: [${lines(count, (n) => `${n + 1}/16,`).replaceAll('\n', ' ')}] }] }`,
      '101/16',
    ],
    [
      200,
      'openings',
      (count: number) =>
        `    box: { cut: 8 x 10, openings: { ${lines(count, (n) => `o${n}: { size: 1 x 1 },`).replaceAll('\n', ' ')} } }`,
      'o200',
    ],
    [
      500,
      'layers on box',
      (count: number) =>
        `    box: { cut: 8 x 10 }\n${lines(count, (n) => `    p${n}: { cut: 1 x 1, on: box }`)}`,
      'box',
    ],
  ] as const)('is one more than %i %s', (most, what, pieces, at) => {
    expect(tooMany(`pieces:\n${pieces(most)}`)).toEqual([]);
    expect(tooMany(`pieces:\n${pieces(most + 1)}`)).toEqual([`${most + 1} of ${most} ${what}: ${at}`]);
  });

  it('is one more than 50 variants, and those are read', () => {
    const { findings, others } = readSheet(
      sheetOf(
        `pieces: { box: { cut: 3 x 4 } }\nvariants:\n${lines(51, (n) => `  v${n}: { box.cut: 3 x ${n + 5} }`)}`,
        '## Cut\nCut :piece[box].\n',
      ),
    );
    expect(findings.map(({ rule, at }) => [rule, blamed(at)])).toEqual([['too-many', 'v50']]);
    expect(others).toHaveLength(49);
  });
});

describe('A paragraph', () => {
  it('of marks that are many and not too many is read', () => {
    const body = `${'*a* '.repeat(300)}\n\n`.repeat(4);
    const { findings } = readSheet(
      sheetOf('pieces: { box: { cut: 3 x 4 } }', `${body}## Cut\nCut :piece[box].\n`),
    );
    expect(findings).toEqual([]);
  });
});

describe('Markdown nested', () => {
  it.each([
    ['a list of eight levels', listOf(8)],
    ['a quote of twenty', `${'> '.repeat(20)}x`],
    ['a line far in that is no item', `${' '.repeat(300_000)}x - y`],
    ['many marks that nest nothing', '*a '.repeat(5000)],
    ['brackets that are never closed', '['.repeat(5000)],
  ])('no deeper than %s is read', (_, body) => {
    expect(tooDeep(`${body}\n\n## Cut\nCut :piece[box].\n`)).toEqual([]);
  });

  it.each([
    ['a list of a hundred and one', listOf(101), '-'],
    ['a list of thousands, which would take a reader minutes', listOf(3000), '-'],
    ['a quote of a hundred and one', `${'> '.repeat(101)}x`, '>'],
    ['emphasis', `${'**a _b '.repeat(60)}x${' c_ d**'.repeat(60)}`, 'a'],
  ])('as deep as %s is said and left out, not a crash', (_, body, at) => {
    const places = tooDeep(`${body}\n\n## Cut\nCut :piece[box].\n`);
    expect(places).toEqual([at]);
  });
});
