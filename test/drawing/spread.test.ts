import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from '../../src/drawing/spread.ts';

type Spreadable = Parameters<typeof spread>[0][number];

const labels = fc.array(
  fc.record({ at: fc.integer({ min: 0, max: 100 }), size: fc.integer({ min: 1, max: 12 }) }),
  { maxLength: 14 },
);

function cost(wanted: readonly Spreadable[], middles: readonly number[]): number {
  return wanted.reduce((sum, { at }, index) => sum + ((middles[index] ?? 0) - at) ** 2, 0);
}

function touches(wanted: readonly Spreadable[], middles: readonly number[], gap: number): boolean {
  const order = wanted.map((_, index) => index).sort((a, b) => (middles[a] ?? 0) - (middles[b] ?? 0));
  return order.slice(1).some((index, before) => {
    const other = order[before] ?? 0;
    const distance = (middles[index] ?? 0) - (middles[other] ?? 0);
    return distance < ((wanted[index]?.size ?? 0) + (wanted[other]?.size ?? 0)) / 2 + gap - 1e-6;
  });
}

describe('spreading labels', () => {
  it('leaves labels alone that have room', () => {
    expect(
      spread(
        [
          { at: 30, size: 5 },
          { at: 10, size: 5 },
        ],
        1,
      ),
    ).toEqual([30, 10]);
  });

  it('pushes two that want the same place apart evenly', () => {
    expect(
      spread(
        [
          { at: 10, size: 4 },
          { at: 10, size: 4 },
        ],
        2,
      ),
    ).toEqual([7, 13]);
  });

  it('never lets two touch, and keeps their order', () => {
    fc.assert(
      fc.property(labels, (wanted) => {
        const middles = spread(wanted, 1.5);
        expect(touches(wanted, middles, 1.5)).toBe(false);
        for (const [index, one] of wanted.entries())
          for (const [other, two] of wanted.entries())
            if (one.at < two.at) expect(middles[index] ?? 0).toBeLessThan(middles[other] ?? 0);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('moves labels no farther than needed: no single label or tail can be better placed', () => {
    fc.assert(
      fc.property(labels, fc.nat(13), fc.constantFrom(-0.05, 0.05), (wanted, first, step) => {
        const middles = spread(wanted, 1);
        const order = wanted.map((_, index) => index).sort((a, b) => (middles[a] ?? 0) - (middles[b] ?? 0));
        const tail = new Set(step > 0 ? order.slice(first) : order.slice(0, first));
        const shifted = middles.map((middle, index) => (tail.has(index) ? middle + step : middle));
        expect(cost(wanted, shifted)).toBeGreaterThanOrEqual(cost(wanted, middles) - 1e-9);
      }),
      { seed: 8, numRuns: 500 },
    );
  });
});
