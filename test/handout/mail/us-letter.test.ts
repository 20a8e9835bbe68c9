import { describe, expect, it } from 'vitest';
import { letterVerdict } from '../../../src/handout/mail/us-letter.ts';
import { Length } from '../../../src/measure/length.ts';

type MailPiece = Parameters<typeof letterVerdict>[0];

const inches = (numerator: number, denominator = 1): Length => Length.of(numerator, denominator, 'in');
const mm = (count: number): Length => Length.of(count, 1, 'mm');
const THIN = inches(1, 50);

function piece(length: Length, height: Length, more: Partial<MailPiece> = {}): MailPiece {
  return { length, height, thickness: THIN, ...more };
}

/** USPS Domestic Mail Manual 101.1.1 and 1.2, archived 4 January 2010 (pe.usps.com). */
describe('a letter in the USA', () => {
  it('is at least 5 × 3 1/2 in and 0.007 in thick', () => {
    expect(letterVerdict(piece(inches(5), inches(7, 2)))).toBe('letter');
    expect(letterVerdict(piece(inches(79, 16), inches(7, 2)))).toBe('too-small');
    expect(letterVerdict(piece(inches(5), inches(55, 16)))).toBe('too-small');
    const thin = (thousandths: number): MailPiece =>
      piece(inches(6), inches(4), { thickness: inches(thousandths, 1000) });
    expect([6, 7].map((each) => letterVerdict(thin(each)))).toEqual(['too-small', 'letter']);
  });

  it('is at most 11 1/2 × 6 1/8 × 1/4 in', () => {
    expect(letterVerdict(piece(inches(23, 2), inches(49, 8)))).toBe('letter');
    expect(letterVerdict(piece(inches(185, 16), inches(49, 8)))).toBe('too-large');
    expect(letterVerdict(piece(inches(23, 2), inches(99, 16)))).toBe('too-large');
    const thick = (sixteenths: number): MailPiece =>
      piece(inches(6), inches(4), { thickness: inches(sixteenths, 16) });
    expect([4, 5].map((each) => letterVerdict(thick(each)))).toEqual(['letter', 'too-thick']);
  });

  it('weighs at most 3.5 oz, as far as its weight is known', () => {
    const heavy = (ounces: number | undefined): MailPiece => piece(inches(6), inches(4), { ounces });
    expect([3.5, 3.6, undefined].map((each) => letterVerdict(heavy(each)))).toEqual([
      'letter',
      'too-heavy',
      'letter',
    ]);
  });

  it('is 1.3 to 2.5 times as long as high, both ends allowed, or costs extra', () => {
    expect(letterVerdict(piece(inches(52, 10), inches(4)))).toBe('letter');
    expect(letterVerdict(piece(inches(519, 100), inches(4)))).toBe('nonmachinable-square');
    expect(letterVerdict(piece(inches(10), inches(4)))).toBe('letter');
    expect(letterVerdict(piece(inches(1001, 100), inches(4)))).toBe('nonmachinable-long');
  });

  /** Each quotient is reckoned from the sizes; the verdict follows from the limits above. */
  it.each([
    ['5 × 5 in, 1.0', inches(5), inches(5), 'nonmachinable-square'],
    ['6 × 6 in, 1.0', inches(6), inches(6), 'nonmachinable-square'],
    ['C6, 6.378 × 4.488 in, 1.421', mm(162), mm(114), 'letter'],
    ['C5, 9.016 × 6.378 in, higher than 6 1/8', mm(229), mm(162), 'too-large'],
    ['C7, 4.488 × 3.189 in, below the least', mm(114), mm(81), 'too-small'],
    ['a card for A2 without its envelope, 1.2941', inches(11, 2), inches(17, 4), 'nonmachinable-square'],
    ['A2 itself, 1.3143', inches(23, 4), inches(35, 8), 'letter'],
    ['#10, 2.303', inches(19, 2), inches(33, 8), 'letter'],
  ] as const)('%s', (_, length, height, verdict) => {
    expect(letterVerdict(piece(length, height))).toBe(verdict);
  });

  /** Size goes by the longer side, form and least size by the address: mailingsystemstechnology.com/article-1261. */
  it('may change by the direction of its address', () => {
    expect(letterVerdict(piece(inches(7), inches(5)))).toBe('letter');
    expect(letterVerdict(piece(inches(5), inches(7)))).toBe('nonmachinable-square');
    expect(letterVerdict(piece(inches(4), inches(6)))).toBe('too-small');
  });
});
