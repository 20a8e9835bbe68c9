import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countBlanks } from '../../src/kit/solver/cut-tree.ts';
import { gridOf } from '../../src/kit/solver/grid.ts';
import { PatternTable, Remainder } from '../../src/kit/solver/pattern-table.ts';
import { worthOf } from '../../src/kit/solver/problem.ts';
import { replay } from './replay.ts';

const side = fc.integer({ min: 2, max: 9 });
const blank = fc.record({ width: side, height: side, turnable: fc.boolean() });
const SHEET = { width: 23, height: 19 };

describe('what is left beside a block', () => {
  it('is cut for as much as it is said to be worth, and the block stays in its corner', () => {
    fc.assert(
      fc.property(fc.array(blank, { minLength: 1, maxLength: 4 }), (blanks) => {
        const values = blanks.map(({ width, height }) => width * height - 1);
        const grid = gridOf(blanks, SHEET);
        const remainder = new Remainder(grid, new PatternTable(grid, values));
        for (const { blank: index, turned, across, down } of grid.stances) {
          const size = { width: grid.across.at[across] ?? 0, height: grid.down.at[down] ?? 0 };
          const whole = remainder.complete({ ...size, kind: 'blank', blank: index, turned }, across, down);
          const [first] = replay(whole, blanks, SHEET);
          expect(first).toEqual({ blank: index, left: 0, top: 0, right: size.width, bottom: size.height });
          const beside = remainder.countsBeside(across, down);
          expect(countBlanks(whole, blanks.length)).toEqual(
            beside.map((count, each) => count + (each === index ? 1 : 0)),
          );
          const worth = worthOf(countBlanks(whole, blanks.length), values);
          expect(worth).toBe((values[index] ?? 0) + remainder.at(across, down));
        }
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  it('is worth as much as the best whole sheet less the block, for the block in the corner of the best', () => {
    fc.assert(
      fc.property(fc.array(blank, { minLength: 1, maxLength: 4 }), (blanks) => {
        const values = blanks.map(({ width, height }) => width * height - 1);
        const grid = gridOf(blanks, SHEET);
        const table = new PatternTable(grid, values);
        const remainder = new Remainder(grid, table);
        const worths = grid.stances.map(
          ({ blank: index, across, down }) => (values[index] ?? 0) + remainder.at(across, down),
        );
        expect(Math.max(0, ...worths)).toBe(table.value);
      }),
      { seed: 5, numRuns: 100 },
    );
  });
});
