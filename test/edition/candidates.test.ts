import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { candidatesOf, optionsOf } from '../../src/edition/candidates.ts';
import { Length } from '../../src/measure/length.ts';

const STEP = Length.of(1, 1, 'mm');
const REACH = Length.of(3, 2, 'mm');

/** Lengths of sixteenths of an inch, each once. */
const lengths = fc
  .uniqueArray(fc.integer({ min: 1, max: 200 }), { minLength: 1, maxLength: 4 })
  .map((counts) => counts.map((count) => Length.of(count, 16, 'in')));

function everyCandidate(owns: readonly Length[]): ReturnType<typeof candidatesOf> {
  const primaries = owns.map((own) => ({ key: `${own}`, kind: 'part' as const, own }));
  return candidatesOf(
    optionsOf(primaries, { step: STEP, mark: STEP, reach: REACH }),
    Number.POSITIVE_INFINITY,
  );
}

/** Every combination of whole millimeters within reach, by brute force. */
function everyChoice(owns: readonly Length[]): number[][] {
  return owns.reduce<number[][]>(
    (all, own) => {
      const near = Array.from({ length: 7 }, (_, index) => Math.round(own.mm) - 3 + index);
      const choices = near.filter((to) => to > 0 && Math.abs(to - own.mm) <= 1.5 + 1e-9);
      const nearest = Math.max(1, Math.round(own.mm));
      const allowed = choices.includes(nearest) ? choices : [nearest, ...choices];
      return all.flatMap((before) => allowed.map((to) => [...before, to]));
    },
    [[]],
  );
}

describe('the candidates of a piece', () => {
  it('are every combination within reach, once each, the nearest first', () => {
    fc.assert(
      fc.property(lengths, (owns) => {
        const found = [...everyCandidate(owns)].map((candidate) =>
          owns.map((own) => candidate.get(`${own}`)?.mm ?? Number.NaN),
        );
        const cost = (choice: readonly number[]): number =>
          choice.reduce((sum, to, index) => sum + (to - (owns[index]?.mm ?? 0)) ** 2, 0);
        const costs = found.map(cost);
        expect(costs.every((each, index) => index === 0 || each >= (costs[index - 1] ?? 0) - 1e-9)).toBe(
          true,
        );
        const key = (choice: readonly number[]): string => choice.join(' ');
        expect(found.map(key).toSorted()).toEqual(everyChoice(owns).map(key).toSorted());
      }),
      { seed: 20_261_127, numRuns: 200 },
    );
  });

  it('begin with each length’s own nearest step, a half away from zero', () => {
    // 2 1/2 in are 63.5 mm, 1 in 25.4 mm, 1/64 in 0.396875 mm: never nothing.
    const owns = [Length.of(5, 2, 'in'), Length.of(1, 1, 'in'), Length.of(1, 64, 'in')];
    const [first] = everyCandidate(owns);
    expect(owns.map((own) => first?.get(`${own}`)?.mm)).toEqual([64, 25, 1]);
  });

  it('are one, with nothing in it, for a piece that measures nothing', () => {
    expect([...everyCandidate([])]).toEqual([new Map()]);
  });
});
