import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RankedQueue } from '../../src/kit/solver/queue.ts';

describe('a ranked queue', () => {
  it('gives the greatest first, as sorting would, whatever is put in between', () => {
    const moves = fc.array(fc.option(fc.integer({ min: 0, max: 50 })), { maxLength: 60 });
    fc.assert(
      fc.property(moves, (ranks) => {
        const queue = new RankedQueue<number>();
        let plain: number[] = [];
        for (const rank of ranks) {
          if (rank === null) {
            expect(queue.pop()).toBe(plain[0]);
            plain = plain.slice(1);
          } else {
            queue.push(rank, rank);
            plain = [...plain, rank].sort((a, b) => b - a);
          }
          expect(queue.topRank).toBe(plain[0]);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});
