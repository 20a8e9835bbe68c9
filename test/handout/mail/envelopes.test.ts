import { describe, expect, it } from 'vitest';
import { closestFits, ENVELOPES, fitIn, type Series } from '../../../src/handout/mail/envelopes.ts';
import { Length } from '../../../src/measure/length.ts';
import { parseSizes } from '../../../src/measure/notation.ts';
import type { Size } from '../../../src/measure/size.ts';

function size(text: string): Size {
  const parsed = parseSizes(text, 'in', 2);
  if (!parsed.ok) throw new Error(`${text} is no size`);
  const [width, height] = parsed.value;
  if (!width || !height) throw new Error(`${text} is no size`);
  return { width: width.length, height: height.length };
}

function named(name: string): { readonly name: string; readonly size: Size } {
  const found = Object.values(ENVELOPES)
    .flat()
    .find((envelope) => envelope.name === name);
  if (!found) throw new Error(`no envelope ${name}`);
  return found;
}

const THIN = Length.of(1, 2, 'mm');
const fitOf = (thing: string, envelope: string, thickness = THIN): ReturnType<typeof fitIn> =>
  fitIn({ size: size(thing), thickness }, named(envelope));

describe('the envelopes', () => {
  /** The C series in mm: tryckipedia.se/c-format; DL and C6/C5: DIN 678-1:1998 as quoted on the ntg-context list. */
  it.each([
    ['C4', 324, 229],
    ['C5', 229, 162],
    ['C6', 162, 114],
    ['C7', 114, 81],
    ['DL', 220, 110],
    ['C6/C5', 229, 114],
  ])('%s is %i × %i mm', (name, width, height) => {
    const { size: own } = named(name);
    expect([own.width.mm, own.height.mm]).toEqual([width, height]);
  });

  /** ISO 216: a C size is the geometric mean of the A and the B size of its number, to the millimeter. */
  it.each([4, 5, 6, 7])('C%i lies half way between A and B', (number) => {
    // A0 is a square meter, B0 a meter wide, each long side the short one times the root of two.
    const a = 1000 * 2 ** (1 / 4 - number / 2);
    const b = 1000 * 2 ** (1 / 2 - number / 2);
    const { size: own } = named(`C${number}`);
    const long = Math.sqrt(a * b);
    expect(Math.abs(own.width.mm - long)).toBeLessThan(1);
    expect(Math.abs(own.height.mm - long / Math.SQRT2)).toBeLessThan(1);
  });

  /**
   * Outer sizes, inches, and length over height: thoughtco.com/envelope-design-styles-4122796, again on
   * ebaprinting.com. The quotients are reckoned from them.
   */
  it.each([
    ['A1 (4-bar)', '5 1/8 x 3 5/8', 1.4138],
    ['A2', '5 3/4 x 4 3/8', 1.3143],
    ['A6', '6 1/2 x 4 3/4', 1.3684],
    ['A7', '7 1/4 x 5 1/4', 1.381],
    ['A8', '8 1/8 x 5 1/2', 1.4773],
    ['A9', '8 3/4 x 5 3/4', 1.5217],
    ['A10', '9 1/2 x 6', 1.5833],
    ['Slimline', '8 7/8 x 3 7/8', 2.2903],
    ['#10', '9 1/2 x 4 1/8', 2.30303],
  ])('%s is %s in', (name, text, quotient) => {
    const { size: own } = named(name);
    expect(own).toEqual(size(text));
    expect(own.width.mm / own.height.mm).toBeCloseTo(quotient, 4);
  });

  it.each<Series>(['iso', 'north-america'])('of %s come smallest first, the longer side across', (series) => {
    const areas = ENVELOPES[series].map(({ size: { width, height } }) => width.mm * height.mm);
    expect(areas).toEqual(areas.toSorted((a, b) => a - b));
    expect(ENVELOPES[series].every(({ size: own }) => own.height.lessThan(own.width))).toBe(true);
  });
});

describe('what goes in', () => {
  /** The largest insert as ThoughtCo lists it; the A6 row of the second page is a misprint. */
  it.each([
    ['A1 (4-bar)', '4 3/4 x 3 1/2', 'snug'],
    ['A2', '5 1/2 x 4 1/8', 'easy'],
    ['A6', '6 1/4 x 4 1/2', 'easy'],
    ['A7', '7 x 5', 'easy'],
    ['A8', '7 7/8 x 5 1/4', 'easy'],
    ['A9', '8 1/2 x 5 1/2', 'easy'],
    ['A10', '9 1/4 x 5 3/4', 'easy'],
    ['Slimline', '8 5/8 x 3 5/8', 'easy'],
    // Cards of this size are sold for A2.
    ['A2', '5 1/2 x 4 1/4', 'snug'],
  ])('%s takes %s', (name, insert, ease) => {
    expect(fitOf(insert, name)?.ease).toBe(ease);
  });

  /** A4 in half goes in C5, in half again in C6, in thirds in DL: copies of ISO 216 and 269. */
  it.each([
    ['C5', '210 mm x 148 mm'],
    ['C6', '148 mm x 105 mm'],
    ['DL', '210 mm x 99 mm'],
  ])('%s takes %s, whichever way it is turned', (name, insert) => {
    expect(fitOf(insert, name)?.ease).toBe('easy');
    expect(fitOf(insert.split(' x ').toReversed().join(' x '), name)).toEqual(fitOf(insert, name));
  });

  it.each([
    ['A2', '5 3/4 x 4 3/8'],
    ['A2', '5 1/2 x 4 5/16'],
    ['A6', '6 1/4 x 4 3/4'],
    ['C6', '210 mm x 148 mm'],
    ['DL', '148 mm x 108 mm'],
  ])('%s does not take %s', (name, insert) => {
    expect(fitOf(insert, name)).toBeUndefined();
  });

  it('says what is left of both sides, exactly', () => {
    const { spare } = fitOf('4 1/4 x 5 1/2', 'A2') ?? {};
    expect(spare).toEqual({ width: Length.of(1, 4, 'in'), height: Length.of(1, 8, 'in') });
  });

  /** Round a thing of thickness t the envelope bends: its girth 2W holds 2(w + t). Plain geometry. */
  it('is the less, the thicker it is', () => {
    const thick = (eighths: number): Length => Length.of(eighths, 8, 'in');
    expect(fitOf('5 1/2 x 4 1/4', 'A2', thick(1))).toBeUndefined();
    expect(fitOf('5 1/4 x 4', 'A2', thick(2))?.ease).toBe('easy');
    expect(fitOf('5 1/4 x 4', 'A2', thick(3))).toBeUndefined();
  });

  it('goes into the smallest, and others in which it does not slide about', () => {
    const names = (thing: string, series: Series): string[] =>
      closestFits({ size: size(thing), thickness: THIN }, series).map(({ envelope }) => envelope.name);
    expect(names('5 1/2 x 4 1/4', 'iso')).toEqual(['C6']);
    expect(names('5 1/2 x 4 1/4', 'north-america')).toEqual(['A2', 'A6']);
    expect(names('148 mm x 105 mm', 'iso')).toEqual(['C6']);
    expect(names('1 x 1', 'north-america')).toEqual(['A1 (4-bar)']);
    expect(names('11 x 8 1/2', 'north-america')).toEqual([]);
  });
});
