import { describe, expect, it } from 'vitest';
import { pointAt } from '../../src/project/source.ts';
import { cutOf, faultsOf, pieceOf, readSheet, sheetOf } from './reading.ts';

describe('the place of a number is the number itself', () => {
  const size = ['9/4 in from 2 1/4', '4 in from 4'];

  it.each<[string, string, string[]]>([
    ['in a flow map', 'pieces: { a: { cut: 2 1/4 x 4 } }', size],
    ['in a block map', 'pieces:\n  a:\n    cut: 2 1/4 x 4', size],
    ['behind many blanks', 'pieces: { a: { cut:    2 1/4   x   4   } }', size],
    ['in double quotes', 'pieces: { a: { cut: "2 1/4 x 4" } }', size],
    ['in double quotes with blanks inside', 'pieces: { a: { cut: "  2 1/4 x 4  " } }', size],
    ['in single quotes', "pieces: { a: { cut: '2 1/4 x 4' } }", size],
    ['in a block of lines', 'pieces:\n  a:\n    cut: |\n      2 1/4 x 4', size],
    ['in a folded block', 'pieces:\n  a:\n    cut: >-\n      2 1/4\n      x 4', size],
    ['over two lines', 'pieces:\n  a:\n    cut: 2 1/4\n      x 4', size],
    ['before a comment', 'pieces:\n  a:\n    cut: 2 1/4 x 4 # not 2 1/2', size],
    ['with inch marks', 'pieces: { a: { cut: 2 1/4" x 4" } }', ['9/4 in from 2 1/4"', '4 in from 4"']],
    [
      'with escaped inch marks',
      String.raw`pieces: { a: { cut: "2 1/4\" x 4\"" } }`,
      [String.raw`9/4 in from 2 1/4\"`, String.raw`4 in from 4\"`],
    ],
    [
      'with an escaped fraction',
      String.raw`pieces: { a: { cut: "2\u00bc x 4" } }`,
      [String.raw`9/4 in from 2\u00bc`, '4 in from 4'],
    ],
    [
      'with doubled quotes',
      "pieces: { a: { cut: '2 1/4'' x 4' } }".replace("''", "''''"),
      ["9/4 in from 2 1/4''''", '4 in from 4'],
    ],
    ['with a fraction character', 'pieces: { a: { cut: 2¼ × 4 } }', ['9/4 in from 2¼', '4 in from 4']],
    ['behind an anchor', 'pieces: { a: { cut: &card 2 1/4 x 4 } }', size],
    ['behind a tag', 'pieces: { a: { cut: !!str 2 1/4 x 4 } }', size],
    [
      'through an alias',
      'holds: { item: x, size: 1 x 1 x 1 }\npieces: { b: { cut: &c 2 1/4 x 4 }, a: { cut: *c } }',
      size,
    ],
    ['as a long key', 'pieces:\n  ? a\n  : cut: 2 1/4 x 4', size],
  ])('%s', (_, measurements, expected) => {
    const project = readSheet(sheetOf(measurements));
    expect(faultsOf(project)).toEqual([]);
    expect(cutOf(project, 'a')).toEqual(expected);
  });

  it.each([
    ['\r\n', 'Windows'],
    ['\r', 'an old Macintosh'],
  ])('with the line ends of %j (%s)', (end) => {
    const text = sheetOf(
      'pieces:\n  a:\n    cut: 2 1/4 x 4',
      '## Cut\nTake :piece[a] and 2 1/4 in.',
    ).replaceAll('\n', end);
    const project = readSheet(text);
    expect(faultsOf(project)).toEqual([]);
    expect(cutOf(project, 'a')).toEqual(['9/4 in from 2 1/4', '4 in from 4']);
    expect(project.steps[0]?.prose.references[0]?.of.at.start).toBe(text.indexOf('a]'));
    const { body } = pieceOf(project, 'a');
    expect(body.kind === 'flat' && pointAt(text, body.cut.height.at.start)).toEqual({ line: 6, column: 20 });
  });

  it('does not count a byte order mark', () => {
    const project = readSheet(`\uFEFF${sheetOf('pieces: { a: { cut: 2 1/4 x 4 } }')}`);
    expect(faultsOf(project)).toEqual([]);
    expect(project.file.text.startsWith('---')).toBe(true);
    expect(cutOf(project, 'a')).toEqual(['9/4 in from 2 1/4', '4 in from 4']);
  });

  it('counts characters beyond the basic plane as the file does', () => {
    const text = sheetOf('stock: { m: { name: "🌱\\U0001f331 moss" } }\npieces: { a: { cut: 2 1/4 x 4 } }');
    const project = readSheet(text);
    expect(cutOf(project, 'a')).toEqual(['9/4 in from 2 1/4', '4 in from 4']);
    expect(project.stock.get('m')?.name).toBe('🌱🌱 moss');
  });

  it('allows blank lines before the head', () => {
    const project = readSheet(`\n \n${sheetOf('pieces: { a: { cut: 2 1/4 x 4 } }')}`);
    expect(faultsOf(project)).toEqual([]);
    expect(cutOf(project, 'a')).toEqual(['9/4 in from 2 1/4', '4 in from 4']);
  });
});

describe('YAML never guesses', () => {
  it.each<[string, string]>([
    ['010 x 1e1', 'unreadable-length: 1e1'],
    ['0x10 x 4', 'unreadable-length: 0x10 x 4'],
    ['.inf x 4', 'unreadable-length: .inf'],
    ['null', 'unreadable-length: null'],
    ['~', 'unreadable-length: ~'],
    ['true', 'unreadable-length: true'],
    ['12:30', 'unreadable-length: 12:30'],
  ])('cut: %s', (cut, fault) => {
    expect(faultsOf(readSheet(sheetOf(`pieces:\n  a:\n    cut: ${cut}`)))).toEqual([fault]);
  });

  it('reads decimals exactly', () => {
    const project = readSheet(sheetOf('pieces: { a: { cut: 0.1 x 010 } }'));
    expect(cutOf(project, 'a')).toEqual(['1/10 in from 0.1', '10 in from 010']);
  });
});
