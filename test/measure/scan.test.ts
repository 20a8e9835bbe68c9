import { describe, expect, it } from 'vitest';
import { scanMeasurements } from '../../src/measure/scan.ts';

function found(text: string): string[] {
  return scanMeasurements(text).map(
    ({ lengths, start, end }) => `${text.slice(start, end)} = ${lengths.join(' x ')}`,
  );
}

describe('measurements in running text', () => {
  it.each<[string, string[]]>([
    ['leave 1/8 in all round', ['1/8 in = 1/8 in']],
    ['leave 1 in all round', ['1 in = 1 in']],
    ['some 1/2-inch tape', ['1/2-inch = 1/2 in']],
    ['a 12-inch trimmer', ['12-inch = 12 in']],
    ['2¼ × 4"', ['2¼ × 4" = 9/4 in x 4 in']],
    ['a sheet 3 by 4 in', ['3 by 4 in = 3 in x 4 in']],
    ['8 1/2 x 11 in paper', ['8 1/2 x 11 in = 17/2 in x 11 in']],
    ['3 1/2 x 1 x 4 3/4 in inside', ['3 1/2 x 1 x 4 3/4 in = 7/2 in x 1 in x 19/4 in']],
    ['254 mm', ['254 mm = 10 in']],
    ['25.4 cm', ['25.4 cm = 10 in']],
    ['2 in x 127 mm', ['2 in x 127 mm = 2 in x 5 in']],
    ['cut (2 1/4 in)', ['2 1/4 in = 9/4 in']],
    ['score at 1 1/4 in, 3 3/4 in and 5 in', ['1 1/4 in = 5/4 in', '3 3/4 in = 15/4 in', '5 in = 5 in']],
    ['cut it at 4 in. Then fold', ['4 in = 4 in']],
    ['cut it at 4 in.', ['4 in = 4 in']],
    ['a 4 in. wide strip', ['4 in. = 4 in']],
    ['1/8 in (3 mm)', ['1/8 in = 1/8 in', '3 mm = 15/127 in']],
    ['4 in wide', ['4 in = 4 in']],
    ['with a 4 in die', ['4 in = 4 in']],
    ['2 1/4\nin wide', ['2 1/4\nin = 9/4 in']],
    ['1/4 in the middle', ['1/4 in = 1/4 in']],
  ])('%j', (text, expected) => {
    expect(found(text)).toEqual(expected);
  });

  it.each([
    '10 in the room',
    '2 in each bag',
    '6 in a row',
    '4 in all',
    'at 3:15 in the hall',
    'fold the 8 in half',
    'die 6 in den Umschlag',
    'die 6 in die Tasche',
    'de 6 in het vakje',
    'since 2026 in Harbour Street',
    'take 3 of them',
    'on page 2 1/4',
    'version 1.2.3 in',
    '5,7 cm',
    '1/0 in',
    '0 in',
    '3 mmol',
    '4 inner flaps',
    '2-3 in',
    'x4 in',
  ])('nothing in %j', (text) => {
    expect(found(text)).toEqual([]);
  });

  it('comes to the end of a long text', () => {
    const text = `${'1 '.repeat(20_000)}${' '.repeat(50_000)}in${'9'.repeat(20_000)}`;
    expect(found(`${text} 2 in`)).toEqual(['2 in = 2 in']);
  });
});
