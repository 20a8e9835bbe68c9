import { describe, expect, it } from 'vitest';
import { scanMeasurements } from '../../src/measure/scan.ts';
import { spellingIn } from '../../src/project/language.ts';

function found(text: string, language?: string): string[] {
  const spelling = language === undefined ? undefined : spellingIn(language);
  return scanMeasurements(text, spelling).map(
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
    ['254 MM by 2 In', ['254 MM by 2 In = 10 in x 2 in']],
    // A letter that becomes two in lowercase.
    ['İpek İplik: 2 X 4 IN', ['2 X 4 IN = 2 in x 4 in']],
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

  it.each<[string, string, string[]]>([
    ['en', 'a strip of 5 centimeters, 2.54 cm', ['5 centimeters = 250/127 in', '2.54 cm = 1 in']],
    ['de', 'ringsum 2,54 cm', ['2,54 cm = 1 in']],
    ['de', '25,4 x 50,8 mm groß', ['25,4 x 50,8 mm = 1 in x 2 in']],
    ['de', 'die Lasche ist 6 Zoll breit, die andere 2 1/2 Zoll', ['6 Zoll = 6 in', '2 1/2 Zoll = 5/2 in']],
    ['de-AT', '254 Millimeter mal', ['254 Millimeter = 10 in']],
    ['de', '3 mal 4 Zoll', ['3 mal 4 Zoll = 3 in x 4 in']],
    ['fr', 'couper à 2,54 cm, puis 3 pouces', ['2,54 cm = 1 in', '3 pouces = 3 in']],
    ['fr', '254 millimètres, 1 pouce', ['254 millimètres = 10 in', '1 pouce = 1 in']],
    ['nl', 'laat 2,54 cm vrij; 3 duim, 4 inch', ['2,54 cm = 1 in', '3 duim = 3 in', '4 inch = 4 in']],
    ['es', '2,54 cm y 3 pulgadas', ['2,54 cm = 1 in', '3 pulgadas = 3 in']],
  ])('in %s: %j', (language, text, expected) => {
    expect(found(text, language)).toEqual(expected);
  });

  it.each([
    ['en', 'cut 1,2 cm'],
    ['en', '6 Zoll'],
    ['de', '6 Zollstöcke'],
    ['de', 'Seite 3,4 und 5'],
    ['nl', '3 duimstokken'],
    ['fr', 'les 3 poucettes'],
    ['de', '1.2,5 cm'],
  ])('nothing in %s in %j', (language, text) => {
    expect(found(text, language)).toEqual([]);
  });

  it('comes to the end of a long text', () => {
    const text = `${'1 '.repeat(20_000)}${' '.repeat(50_000)}in${'9'.repeat(20_000)}`;
    expect(found(`${text} 2 in`)).toEqual(['2 in = 2 in']);
    expect(found(`${text.replaceAll('1 ', '1,1 ')} 2 Zoll`, 'de')).toEqual(['2 Zoll = 2 in']);
  });
});
