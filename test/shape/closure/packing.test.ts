import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { bestPacking, type Triple, tightest } from '../../../src/shape/closure/packing.ts';
import { longestWithin } from '../../../src/shape/closure/prism.ts';
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

describe('a rectangle between walls that are not four', () => {
  /** The side of the largest square in a regular polygon of side 1: by elementary geometry, worked out by hand. */
  it.each([
    [3, Math.sqrt(3) / (2 + Math.sqrt(3))],
    [6, 3 - Math.sqrt(3)],
    [8, Math.SQRT1_2 / Math.sin(Math.PI / 8)],
  ])('is a square as large as geometry says, of %i', (sides, square) => {
    const prism = {
      sides,
      side: Length.of(100, 1, 'mm'),
      run: Length.of(50, 1, 'mm'),
      lines: 'upright',
    } as const;
    const side = Length.of(Math.floor(square * 100_000), 1000, 'mm');
    const more = Length.of(1, 10, 'mm');
    expect(longestWithin(prism, side).lessThan(side)).toBe(false);
    expect(longestWithin(prism, side.plus(more)).lessThan(side.plus(more))).toBe(true);
  });

  it('lies within the walls, however wide, as a test of its corners against each wall says', () => {
    const width = fc.integer({ min: 1, max: 150 });
    fc.assert(
      fc.property(fc.constantFrom(3, 5, 6, 7, 8), width, (sides, wide) => {
        const prism = {
          sides,
          side: Length.of(80, 1, 'mm'),
          run: Length.of(50, 1, 'mm'),
          lines: 'upright',
        } as const;
        const long = longestWithin(prism, Length.of(wide, 1, 'mm')).mm - 0.5;
        if (long > 0) expect(liesWithin(sides, 80, wide, long)).toBe(true);
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});

/** Whether a rectangle lies in a polygon that stands on a side or a corner, moved up it step by step. */
function liesWithin(sides: number, side: number, wide: number, long: number): boolean {
  const apothem = side / (2 * Math.tan(Math.PI / sides));
  return [0, Math.PI / sides].some((turn) => {
    const walls = Array.from({ length: sides }, (_, index) => turn + (2 * Math.PI * index) / sides);
    const isIn = (x: number, y: number): boolean =>
      walls.every((angle) => x * Math.sin(angle) - y * Math.cos(angle) <= apothem);
    const steps = Array.from({ length: 2001 }, (_, step) => (step / 1000 - 1) * side);
    return [
      [wide, long],
      [long, wide],
    ].some(([across = 0, high = 0]) =>
      steps.some(
        (up) =>
          isIn(across / 2, up + high / 2) &&
          isIn(-across / 2, up + high / 2) &&
          isIn(across / 2, up - high / 2) &&
          isIn(-across / 2, up - high / 2),
      ),
    );
  });
}

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
