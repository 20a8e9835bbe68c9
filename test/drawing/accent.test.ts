import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accentOf, contrast, READABLE } from '../../src/drawing/accent.ts';

/**
 * Ratios against white by the definition of WCAG 2.2 ("contrast ratio", "relative luminance"), the same in axe-core
 * 4.14.1, wcag-contrast 3.0.0 and colorjs.io 0.7.1.
 */
const AGAINST_WHITE: readonly (readonly [string, number])[] = [
  ['#000000', 21],
  ['#767676', 4.542224959605253],
  ['#777777', 4.478089453577214],
  ['#949494', 3.0334698257384747],
  ['#959595', 2.9953461357],
  ['#595959', 7.004729208035935],
  ['#ff0000', 3.9984767707539985],
  ['#0000ff', 8.592471358428805],
];

/** Pairs of W3C's ACT rule afw4f7, to the decimals it prints; it cuts off and does not round. */
const PUBLISHED: readonly (readonly [string, string, number, number])[] = [
  ['#333333', '#ffffff', 12.6, 1],
  ['#000000', '#666666', 3.6, 1],
  ['#aaaaaa', '#ffffff', 2.3, 1],
  ['#777777', '#eeeeee', 3.85, 2],
];

describe('contrast', () => {
  it.each(AGAINST_WHITE)('of %s on white is %f', (color, ratio) => {
    expect(contrast(color, '#ffffff')).toBeCloseTo(ratio, 9);
    expect(contrast('#ffffff', color)).toBeCloseTo(ratio, 9);
  });

  it.each(PUBLISHED)('of %s on %s is %f', (one, other, ratio, places) => {
    expect(Math.trunc(contrast(one, other) * 10 ** places) / 10 ** places).toBe(ratio);
  });

  it('refuses what is no colour', () => {
    expect(() => contrast('red', '#ffffff')).toThrow('no colour: red');
  });
});

describe('the accent', () => {
  const color = fc
    .integer({ min: 0, max: 0xffffff })
    .map((value) => `#${value.toString(16).padStart(6, '0')}`);

  it('can be read on white and on its own tint, whatever the stock', () => {
    fc.assert(
      fc.property(color, (stock) => {
        const accent = accentOf(stock);
        expect(contrast(accent.color, '#ffffff')).toBeGreaterThanOrEqual(READABLE);
        expect(contrast(accent.color, accent.tint)).toBeGreaterThanOrEqual(READABLE);
        expect(contrast(accent.tint, '#454545')).toBeGreaterThanOrEqual(READABLE);
      }),
    );
  });

  it('leaves a colour alone that can be read already', () => {
    expect(accentOf('#666666').color).toBe('#666666');
    expect(accentOf('#2f4b66').color).toBe('#2f4b66');
  });

  it('darkens one that just cannot, though its ratio rounds to 4.5', () => {
    expect(accentOf('#777777').color).not.toBe('#777777');
  });

  it('has a colour where the project has none', () => {
    expect(accentOf(undefined).color).toMatch(/^#[0-9a-f]{6}$/u);
  });
});
