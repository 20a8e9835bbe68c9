import { describe, expect, it } from 'vitest';
import { caliperOf, grammageOf } from '../../src/shape/caliper.ts';
import { projectOf, sheetOf } from './boxes.ts';

const caliperFor = (stock: string): string => {
  const sheet = sheetOf('\n  cut: 4 x 6').replace('weight: 80 lb cover', stock);
  const { thickness, source } = caliperOf(projectOf(sheet).stock.get('moss'));
  return `${source} ${Math.round(thickness.mm * 1000) / 1000} mm`;
};

/** Government Paper Specification Standards No. 11 (1 Feb 1999), JCP K10 (index) and A91 (text); cover from a trade chart, "guide only". */
describe('the thickness a stock is reckoned with', () => {
  it.each([
    ['caliper: 0.012 in', 'given 0.305 mm'],
    ['weight: 90 lb index', 'estimated 0.19 mm'],
    ['weight: 110 lb index', 'estimated 0.23 mm'],
    ['weight: 140 lb index', 'estimated 0.29 mm'],
    ['weight: 170 lb index', 'estimated 0.35 mm'],
    ['weight: 100 lb text', 'estimated 0.2 mm'],
    ['weight: 65 lb cover', 'estimated 0.203 mm'],
    ['weight: 80 lb cover', 'estimated 0.241 mm'],
    ['weight: 100 lb cover', 'estimated 0.279 mm'],
    ['weight: 200 gsm', 'estimated 0.23 mm'],
    ['color: "#6b7f5b"', 'assumed 0.3 mm'],
  ])('of "%s"', (stock, expected) => {
    expect(caliperFor(stock)).toBe(expected);
  });

  it('is that of everyday cardstock without any stock', () => {
    expect(caliperOf(undefined)).toMatchObject({ source: 'assumed' });
  });
});

/** HP Color LaserJet 5550 user guide, table 1-23; tolerance ±1 g/m², as the tables round differently. */
describe('grammage', () => {
  it.each([
    [65, 'cover', 176],
    [80, 'cover', 216],
    [90, 'cover', 244],
    [100, 'cover', 271],
    [90, 'index', 163],
    [110, 'index', 199],
    [140, 'index', 253],
  ] as const)('of %i lb %s is %i g/m²', (pounds, grade, expected) => {
    expect(Math.abs(grammageOf({ kind: 'basis', pounds, grade }) - expected)).toBeLessThan(1);
  });
});
