import { describe, expect, it } from 'vitest';
import type { Grade } from '../../src/project/stock.ts';
import { grammageOf } from '../../src/shape/caliper.ts';
import { order, planned, projectOf } from './kits.ts';

function gsm(pounds: number, grade: Grade): number {
  return grammageOf({ kind: 'basis', pounds, grade });
}

describe('basis weight in grams per square meter', () => {
  /** Factors as published: printwiki.org, "Grammage"; Xerox Nuvera Paper Guide, p. A-2. */
  it.each([
    ['cover', 2.704, 3],
    ['cover', 2.7042, 4],
    ['text', 1.48, 3],
    ['text', 1.4802, 4],
    ['index', 1.81, 2],
    ['bristol', 2.19, 2],
    ['tag', 1.627, 3],
    ['bond', 3.76, 2],
  ] as const)('a pound of %s is %d', (grade, factor, places) => {
    // The four-figure factors of the guide are themselves rounded in the last place.
    expect(Math.abs(gsm(1, grade) - factor)).toBeLessThan(1.2 * 10 ** -places);
  });

  /** Worked examples of the same guide: 90 lb offset is 133.218 g/m², 100 lb cover 270.42. */
  it('agrees with worked examples', () => {
    expect(gsm(90, 'text')).toBeCloseTo(133.218, 1);
    expect(gsm(100, 'cover')).toBeCloseTo(270.42, 1);
  });

  /** A printer's guide to media, HP LaserJet 5550, table 1-23, in whole g/m². */
  it.each([
    [65, 'cover', 176],
    [80, 'cover', 216],
    [90, 'cover', 244],
    [90, 'index', 163],
    [110, 'index', 199],
    [140, 'index', 253],
  ] as const)('%d lb %s', (pounds, grade, published) => {
    expect(Math.abs(gsm(pounds, grade) - published)).toBeLessThanOrEqual(1);
  });

  it('is not the same for the same number of another grade', () => {
    expect(gsm(110, 'cover') - gsm(110, 'index')).toBeGreaterThan(90);
  });
});

describe('the weight of a kit', () => {
  // The areas of a circle and a regular hexagon as any book of formulas has them: π d² / 4, (3/2) √3 s².
  it.each<[string, number]>([
    ['cut: 100 mm x 100 mm, shape: circle', (Math.PI * 100 ** 2) / 4],
    ['cut: 100 mm x 60 mm, shape: oval', (Math.PI * 100 * 60) / 4],
    ['cut: 100 mm x 100 mm, shape: polygon', 1.5 * Math.sqrt(3) * 50 ** 2],
    ['cut: 100 mm x 60 mm, shape: tag, clip: 10 mm', 100 * 60 - 10 ** 2],
  ])('is that of the outline: %s', (piece, area) => {
    const project = projectOf(
      `  stock: { card: { sheet: 210 mm x 297 mm, weight: 250 gsm } }\n  pieces: { a: { stock: card, ${piece} } }`,
    );
    const grams = (area / 1_000_000) * 250;
    expect((planned(project, order(3)).weight.gramsPerKit - grams) / grams).toBeCloseTo(0, 2);
  });

  it('is that of its pieces, and names the papers it leaves out', () => {
    const project = projectOf(
      '  stock:\n    card: { sheet: 210 mm x 297 mm, weight: 250 gsm }\n    print: { name: Fern, sheet: 12 x 12 }\n  pieces:\n    a: { stock: card, cut: 200 mm x 100 mm, count: 2 }\n    b: { stock: print, cut: 2 x 2 }',
    );
    // 2 × 0.02 m² at 250 g/m².
    expect(planned(project, order(3)).weight).toEqual({
      gramsPerKit: expect.closeTo(10, 9),
      without: ['Fern'],
    });
  });
});
