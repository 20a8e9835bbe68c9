import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Unit } from '../../src/measure/length.ts';
import { type LengthProblem, parseLength, parseSizes } from '../../src/measure/notation.ts';

/** The exact value in inches, or the problem; then where the text read stands. */
function read(text: string, unit: Unit = 'in'): string {
  const reading = parseLength(text, unit);
  return reading.ok ? reading.value.toString() : reading.problem;
}

describe('a length as people type it', () => {
  it.each([
    '2 1/4',
    '2-1/4',
    '2 - 1/4',
    '2 1⁄4',
    '2 1 / 4',
    '2¼',
    '2 ¼',
    '2.25',
    '2.250',
    '2,25',
    '2,25 in',
    '02.25',
    '9/4',
    '2 1/4 in',
    '2 1/4in',
    '2 1/4 in.',
    '2 1/4 inch',
    '2 1/4 Inches',
    '2 1/4"',
    '2 1/4″',
    '2 1/4”',
    "2 1/4''",
    '2¼″',
    '2¼ in',
    '57.15 mm',
    '57.15mm',
    '5.715 cm',
    '  2 1/4  ',
    '2\t1/4',
    '2\u00a01/4',
    '2,25 Zoll',
    '2 1/4 pouces',
    '2¼ pulgadas',
    '2,25 duim',
    '57,15 Millimeter',
    '57,15 millimètres',
    '57,15milímetros',
  ])('%j is 9/4 in', (text) => {
    expect(read(text)).toBe('9/4 in');
  });

  it.each<[string, string]>([
    ['3', '3 in'],
    ['010', '10 in'],
    ['.5', '1/2 in'],
    ['0.1', '1/10 in'],
    ['⅛', '1/8 in'],
    ['⅔', '2/3 in'],
    ['1/3', '1/3 in'],
    ['0.123456789', '123456789/1000000000 in'],
    ['0,125', '1/8 in'],
    ['25,4 mm', '1 in'],
    ['1000 mm', '5000/127 in'],
  ])('%j is exactly %s', (text, expected) => {
    expect(read(text)).toBe(expected);
  });

  it('takes a bare number in the unit it is told', () => {
    expect(read('57', 'mm')).toBe('285/127 in');
    expect(read('5.7', 'cm')).toBe('285/127 in');
    expect(read('2 1/4 in', 'mm')).toBe('9/4 in');
  });

  it.each<[string, LengthProblem]>([
    ['', 'empty'],
    ['   ', 'empty'],
    ['2 1/0', 'denominator of zero'],
    ['1/0 in', 'denominator of zero'],
    ['1/4/2', 'not a length'],
    ['two inches', 'not a length'],
    ['2 1/', 'not a length'],
    ['2..5', 'not a length'],
    ['2.', 'not a length'],
    ['2 1 4', 'not a length'],
    ['2 x 4', 'not a length'],
    ['1:2', 'not a length'],
    ['1e3', 'not a length'],
    ['0x10', 'not a length'],
    ['null', 'not a length'],
    ['2 ft', 'not a length'],
    ['2 Zollstock', 'not a length'],
    ['+3', 'not a length'],
    ['--3', 'not a length'],
    ['٣', 'not a length'],
    [`1${'0'.repeat(60)}`, 'not a length'],
    ['1,000 mm', 'comma of a thousand'],
    ['2,125', 'comma of a thousand'],
    ['1,2,3', 'not a length'],
    ['5,', 'not a length'],
    ['-3', 'negative'],
    ['−3', 'negative'],
    ['- 2 1/4 in', 'negative'],
    ['0', 'zero'],
    ['0.0 mm', 'zero'],
    ['0/4', 'zero'],
    ['-0', 'zero'],
    ['99999', 'too long'],
    ['1000.0001 mm', 'too long'],
    ['39 3/8 in', 'too long'],
  ])('%j: %s', (text, problem) => {
    expect(read(text)).toBe(problem);
  });

  it('points at what it could not read, without the blanks round it', () => {
    expect(parseLength('  two inches ', 'in')).toMatchObject({ start: 2, end: 12 });
  });

  it('never throws and never gives nonsense, whatever it is given', () => {
    const alphabet = fc.constantFrom(...'0123456789 /.-−⁄¼½"″xXin mcby,');
    fc.assert(
      fc.property(fc.string({ unit: alphabet, maxLength: 24 }), (text) => {
        const reading = parseLength(text, 'in');
        if (reading.ok) expect(reading.value.sign).toBe(1);
        else expect(reading.start <= reading.end && reading.end <= text.length).toBe(true);
      }),
      { seed: 7, numRuns: 3000 },
    );
  });
});

describe('a size', () => {
  const sizes = (text: string, count: 2 | 3 = 2, unit: Unit = 'in'): string[] => {
    const reading = parseSizes(text, unit, count);
    if (!reading.ok) return [reading.problem, text.slice(reading.start, reading.end)];
    return reading.value.map(({ length, start, end }) => `${length} at ${text.slice(start, end)}`);
  };

  it.each<[string, string[]]>([
    ['2 1/4 x 4', ['9/4 in at 2 1/4', '4 in at 4']],
    ['2¼ × 4"', ['9/4 in at 2¼', '4 in at 4"']],
    ['2 1/4x4', ['9/4 in at 2 1/4', '4 in at 4']],
    ['3 by 4 in', ['3 in at 3', '4 in at 4 in']],
    ['3 X 4', ['3 in at 3', '4 in at 4']],
    [' 8 1/2  x  11 ', ['17/2 in at 8 1/2', '11 in at 11']],
    ['254 x 127 mm', ['10 in at 254', '5 in at 127 mm']],
    ['254 mm x 127', ['10 in at 254 mm', '5 in at 127']],
    ['2 in x 127 mm', ['2 in at 2 in', '5 in at 127 mm']],
    ['25,4 mal 12,7 Zentimeter', ['10 in at 25,4', '5 in at 12,7 Zentimeter']],
    ['254 sur 127 mm', ['10 in at 254', '5 in at 127 mm']],
    ['10 por 5 pulgadas', ['10 in at 10', '5 in at 5 pulgadas']],
    ['25,4 x 12,7 cm', ['10 in at 25,4', '5 in at 12,7 cm']],
  ])('%j', (text, expected) => {
    expect(sizes(text)).toEqual(expected);
  });

  it('of three', () => {
    expect(sizes('3 1/2 x 1 x 4 3/4', 3)).toEqual(['7/2 in at 3 1/2', '1 in at 1', '19/4 in at 4 3/4']);
  });

  it.each<[string, string[]]>([
    ['3 x 2 1/0', ['denominator of zero', '2 1/0']],
    ['3 x two', ['not a length', 'two']],
    ['3 x -4', ['negative', '-4']],
    ['3 x', ['empty', '']],
    ['x 4', ['empty', '']],
    ['3', ['too few sizes', '3']],
    ['3 x 4 x 5', ['too many sizes', '3 x 4 x 5']],
    ['1/4/2', ['not a length', '1/4/2']],
    ['two inches', ['not a length', 'two inches']],
    ['-3', ['negative', '-3']],
    ['99999', ['too long', '99999']],
    ['3,500 x 4', ['comma of a thousand', '3,500']],
  ])('%j is refused where it is wrong', (text, expected) => {
    expect(sizes(text)).toEqual(expected);
  });

  it('comes to the end of a long text that is no size', () => {
    expect(sizes(`3${' '.repeat(100_000)}x`)[0]).toBe('not a length');
  });
});
