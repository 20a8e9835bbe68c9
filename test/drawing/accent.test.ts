import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accentOf } from '../../src/drawing/accent.ts';
import { contrast } from './contrast.ts';

/** What text needs against its ground at WCAG 2.2 level AA (success criterion 1.4.3). */
const READABLE = 4.5;

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

  it('is as dark as it has to be, and hardly darker', () => {
    for (const stock of ['#ffffff', '#777777', '#ff0000', '#3f7f4f', '#f2c14e']) {
      const { color: accent, tint } = accentOf(stock);
      expect(contrast(accent, tint)).toBeLessThan(READABLE * 1.06);
    }
  });

  it('leaves a color alone that can be read already', () => {
    expect(accentOf('#666666').color).toBe('#666666');
    expect(accentOf('#2f4b66').color).toBe('#2f4b66');
  });

  it('darkens one that just cannot, though its ratio rounds to 4.5', () => {
    expect(accentOf('#777777').color).not.toBe('#777777');
  });

  it('has a color where the project has none', () => {
    expect(accentOf(undefined).color).toMatch(/^#[0-9a-f]{6}$/u);
  });
});
