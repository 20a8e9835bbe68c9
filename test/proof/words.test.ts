import { describe, expect, it } from 'vitest';
import { Length, type Unit } from '../../src/measure/length.ts';
import { printNear } from '../../src/measure/print.ts';
import { quote, sayCount, sayLength, sayLengths, sayList, sayPlace } from '../../src/proof/words.ts';

describe('a length in a message', () => {
  it.each<[bigint, bigint, Unit, Unit, string]>([
    [13n, 4n, 'in', 'in', '3 1/4 in'],
    [1n, 32n, 'in', 'in', '1/32 in'],
    [41n, 10n, 'in', 'in', '4.1 in'],
    [57n, 1n, 'mm', 'in', '57 mm'],
    [575n, 10n, 'mm', 'in', '57.5 mm'],
    [1n, 3n, 'in', 'in', '≈5/16 in'],
    [1n, 1000n, 'mm', 'in', 'less than 1/32 in'],
    [1n, 64n, 'in', 'in', '1/64 in'],
    [12n, 10n, 'mm', 'in', '≈1/16 in'],
    [57n, 1n, 'mm', 'mm', '57 mm'],
    [115n, 2n, 'mm', 'mm', '57.5 mm'],
    [1n, 8n, 'in', 'mm', '≈3.2 mm'],
    [1n, 1000n, 'mm', 'mm', 'less than 0.1 mm'],
    [57n, 1n, 'mm', 'cm', '5.7 cm'],
    [115n, 2n, 'mm', 'cm', '5.75 cm'],
  ])('%d/%d %s in %s: %s', (top, bottom, written, unit, expected) => {
    expect(sayLength(Length.of(top, bottom, written), unit)).toBe(expected);
  });

  it('says what nobody wrote on the marks of a ruler, and what a ruler shows as it is', () => {
    const near = [
      Length.of(1617, 1000, 'in'),
      Length.of(29, 1000, 'in'),
      Length.of(5, 8, 'in'),
      Length.of(3, 10, 'mm'),
    ];
    expect(near.map((length) => printNear(length, 'in'))).toEqual([
      '≈1 5/8 in',
      '≈1/32 in',
      '5/8 in',
      'less than 1/32 in',
    ]);
    expect(printNear(Length.of(46, 10, 'mm'), 'mm')).toBe('4.6 mm');
  });

  it('says the unit of several once, unless one of them is not exact in it', () => {
    const inches = [Length.of(7, 2, 'in'), Length.of(1, 1, 'in'), Length.of(19, 4, 'in')];
    expect(sayLengths(inches, 'in')).toBe('3 1/2 × 1 × 4 3/4 in');
    expect(sayLengths([...inches, Length.of(57, 1, 'mm')], 'in')).toBe('3 1/2 in × 1 in × 4 3/4 in × 57 mm');
  });
});

describe('words', () => {
  it('counts, lists and quotes', () => {
    expect([sayCount(0, 'error'), sayCount(1, 'error'), sayCount(2, 'error')]).toEqual([
      '0 errors',
      '1 error',
      '2 errors',
    ]);
    expect([sayList([]), sayList(['a']), sayList(['a', 'b']), sayList(['a', 'b', 'c'], 'or')]).toEqual([
      '',
      'a',
      'a and b',
      'a, b or c',
    ]);
    expect(quote(' a\n  b ')).toBe('"a b"');
    expect(quote('x'.repeat(80))).toBe(`"${'x'.repeat(57)}…"`);
  });

  it.each<[string[], string]>([
    [['frontmatter'], 'the head of the sheet'],
    [['pieces', 'front'], 'front'],
    [['pieces', 'front', 'at'], '"at" of front'],
    [['pieces', 'a.b'], 'a.b'],
    [['pieces', 'pieces.x', 'at'], '"at" of pieces.x'],
    [['stock', 'moss'], 'moss'],
    [['holds'], '"holds"'],
    [['supplies'], 'a supply'],
    [['supplies', 'glue'], 'glue'],
    [['file', 'site.yaml'], 'site.yaml'],
    [['file', 'site.yaml', 'bench'], '"bench" of site.yaml'],
    [[':step'], '":step"'],
  ])('%j is %s', (where, expected) => {
    expect(sayPlace(where)).toBe(expected);
  });
});
