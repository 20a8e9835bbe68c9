import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { bestPacking, type Triple, tightest } from '../../../src/shape/closure/packing.ts';
import { inches } from '../forms/building.ts';

const packed = (item: Triple, count: number, room: Parameters<typeof bestPacking>[2]): string => {
  const { rows, clearance } = bestPacking(item, count, room);
  return `${rows.join(' × ')}: ${clearance.join(', ')}`;
};

describe('packing', () => {
  it('stacks six seed packets in a keeper', () => {
    const packet: Triple = [inches(13, 4), inches(9, 2), inches(1, 16)];
    const keeper: Triple = [inches(7, 2), inches(19, 4), inches(1)];
    expect(packed(packet, 6, keeper)).toBe('1 × 1 × 6: 1/4 in, 1/4 in, 5/8 in');
  });

  it('puts what is written lying down upright', () => {
    expect(packed([inches(4), inches(1), inches(1)], 1, [inches(1), inches(5), inches(1)])).toBe(
      '1 × 1 × 1: 0 in, 1 in, 0 in',
    );
  });

  it('puts side by side what does not stack', () => {
    expect(packed([inches(1), inches(1), inches(1)], 8, [inches(2), inches(2), inches(2)])).toBe(
      '2 × 2 × 2: 0 in, 0 in, 0 in',
    );
  });

  it('says by how little it fails', () => {
    const best = bestPacking([inches(2), inches(2), inches(2)], 1, [inches(3), inches(15, 8), inches(3)]);
    expect(tightest(best).equals(inches(-1, 8))).toBe(true);
  });

  it('lets things stick out where a room is open, in one row', () => {
    const card: Triple = [inches(17, 4), inches(23, 4), inches(1, 16)];
    const band = [inches(9, 2), undefined, inches(3, 8)] as const;
    expect(packed(card, 6, band)).toBe('1 × 1 × 6: 1/4 in, , 0 in');
    expect(packed(card, 7, band)).toBe('1 × 1 × 7: 1/4 in, , -1/16 in');
    expect(packed(card, 6, [inches(9, 2), inches(3, 8), undefined])).toBe('1 × 6 × 1: 1/4 in, 0 in, ');
    expect(packed(card, 6, [undefined, inches(3, 8), inches(9, 2)])).toBe('1 × 6 × 1: , 0 in, 1/4 in');
    expect(packed([inches(1), inches(9), inches(1)], 4, [inches(2), inches(2), undefined])).toBe(
      '2 × 2 × 1: 0 in, 0 in, ',
    );
  });

  it('agrees with trying every way, one thing after another', () => {
    const side = fc.integer({ min: 1, max: 6 });
    const sides = fc.tuple(side, side, side);
    fc.assert(
      fc.property(sides, fc.integer({ min: 1, max: 9 }), sides, (item, count, room) => {
        const lengths = ([a, b, c]: readonly [number, number, number]): Triple => [
          Length.of(a, 1, 'mm'),
          Length.of(b, 1, 'mm'),
          Length.of(c, 1, 'mm'),
        ];
        const fits = tightest(bestPacking(lengths(item), count, lengths(room))).sign >= 0;
        expect(fits).toBe(byTrying(item, count, room));
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});

/** Whether so many fit in whole rows, all the same way round, by counting how many rows the room takes. */
function byTrying(item: readonly number[], count: number, room: readonly number[]): boolean {
  const ways = [0, 1, 2].flatMap((a) => [0, 1, 2].flatMap((b) => [0, 1, 2].map((c) => [a, b, c])));
  return ways
    .filter((way) => new Set(way).size === 3)
    .some((way) => {
      const rows = way.map((axis, index) => Math.floor((room[index] ?? 0) / (item[axis] ?? 1)));
      return rows.reduce((product, each) => product * each, 1) >= count;
    });
}
