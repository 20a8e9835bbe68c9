import { describe, expect, it } from 'vitest';
import { blamed, readSheet, sheetOf } from './reading.ts';

const listOf = (levels: number): string =>
  Array.from({ length: levels }, (_, level) => `${'  '.repeat(level)}- x`).join('\n');

function tooDeep(body: string): readonly string[] {
  const { findings } = readSheet(sheetOf('pieces: { box: { cut: 3 x 4 } }', body));
  return findings.filter(({ rule }) => rule === 'nested-too-deep').map(({ at }) => blamed(at));
}

describe('A paragraph', () => {
  it.each(['*a* ', '[', '`a` ', ':piece[box] ', '<b>'])(
    'of thousands of %s is told of at the mark too many',
    (mark) => {
      const body = `${mark.repeat(3000)}\n\n## Cut\nCut :piece[box].\n`;
      const { findings } = readSheet(sheetOf('pieces: { box: { cut: 3 x 4 } }', body));
      expect(findings.filter(({ rule }) => rule === 'too-many')).toHaveLength(1);
    },
  );

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
    ['a quote of thousands, which breaks the parser', `${'> '.repeat(8000)}x`, ''],
    ['emphasis', `${'**a _b '.repeat(60)}x${' c_ d**'.repeat(60)}`, 'a'],
  ])('as deep as %s is said and left out, not a crash', (_, body, at) => {
    const places = tooDeep(`${body}\n\n## Cut\nCut :piece[box].\n`);
    expect(places).toEqual([at]);
  });
});
