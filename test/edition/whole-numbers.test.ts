import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largeSolver } from '../../src/edition/large.ts';
import {
  type LinearForm,
  nearestWholeNumbers,
  type WholeNumberProblem,
  type WholeNumbers,
} from '../../src/edition/whole-numbers.ts';

/** Every combination, tried one by one: the independent reference. */
function byTrying(problem: WholeNumberProblem): WholeNumbers | undefined {
  const { targets, scale, reach } = problem;
  const holds = ({ terms, constant }: LinearForm, values: readonly number[]): number =>
    terms.reduce((sum, { variable, coefficient }) => sum + coefficient * (values[variable] ?? 0), 0) -
    constant;
  let best: WholeNumbers | undefined;
  const visit = (values: number[]): void => {
    const target = targets[values.length];
    if (target === undefined) {
      if (problem.equalities.some((form) => holds(form, values) !== 0)) return;
      if (problem.atLeast.some((form) => holds(form, values) < 0)) return;
      const deviations = values.map((value, index) => Math.abs(value * scale - (targets[index] ?? 0)));
      const greatestDeviation = Math.max(0, ...deviations);
      const sumOfDeviations = deviations.reduce((sum, each) => sum + each, 0);
      const better =
        !best ||
        greatestDeviation < best.greatestDeviation ||
        (greatestDeviation === best.greatestDeviation && sumOfDeviations < best.sumOfDeviations);
      if (better) best = { values: [...values], greatestDeviation, sumOfDeviations };
      return;
    }
    for (let value = Math.ceil((target - reach) / scale); value * scale <= target + reach; value += 1) {
      visit([...values, value]);
    }
  };
  visit([]);
  return best;
}

const form = (variables: number): fc.Arbitrary<LinearForm> =>
  fc.record({
    terms: fc.array(
      fc.record({
        variable: fc.integer({ min: 0, max: variables - 1 }),
        coefficient: fc.constantFrom(-2, -1, 1, 1, 2),
      }),
      { minLength: 2, maxLength: 4 },
    ),
    constant: fc.integer({ min: -1, max: 1 }),
  });

/** A relation with one term a variable: the search treats two terms of one variable as two bounds, the sum as one. */
function merged({ terms, constant }: LinearForm): LinearForm {
  const sums = new Map<number, number>();
  for (const { variable, coefficient } of terms) sums.set(variable, (sums.get(variable) ?? 0) + coefficient);
  return { terms: [...sums].map(([variable, coefficient]) => ({ variable, coefficient })), constant };
}

describe('the nearest whole numbers', () => {
  it('are those that trying every combination finds best', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 5, maxLength: 5 }),
        fc.array(form(5), { maxLength: 3 }),
        fc.array(form(5), { maxLength: 2 }),
        (targets, equalities, atLeast) => {
          const problem: WholeNumberProblem = {
            scale: 80,
            targets,
            reach: 80,
            equalities: equalities.map(merged),
            atLeast: atLeast.map(merged),
          };
          const search = nearestWholeNumbers(problem);
          const reference = byTrying(problem);
          expect(search.kind).toBe(reference ? 'best' : 'none');
          if (!reference || search.kind !== 'best') return;
          expect(search.best.greatestDeviation).toBe(reference.greatestDeviation);
          expect(search.best.sumOfDeviations).toBe(reference.sumOfDeviations);
        },
      ),
      { seed: 20261125, numRuns: 600 },
    );
  });

  it('are the same by an independent integer-programming solver', async () => {
    const large = await largeSolver();
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 4000 }), { minLength: 8, maxLength: 8 }),
        fc.array(form(8), { minLength: 1, maxLength: 4 }),
        (targets, equalities) => {
          const problem: WholeNumberProblem = {
            scale: 80,
            targets,
            weights: targets.map((_, index) => (index % 3 === 0 ? 2 : 1)),
            reach: 160,
            equalities: equalities.map(merged),
            atLeast: [],
          };
          const small = nearestWholeNumbers(problem, 1_000_000);
          const other = large(problem);
          expect(other.kind).toBe(small.kind);
          if (small.kind !== 'best' || other.kind !== 'best') return;
          expect(other.best.greatestDeviation).toBe(small.best.greatestDeviation);
          expect(other.best.sumOfDeviations).toBe(small.best.sumOfDeviations);
        },
      ),
      { seed: 20261125, numRuns: 60 },
    );
  });

  it('keep equal panels equal where rounding each position does not', () => {
    // 1 1/4, 2 1/2, 1 1/4, 2 1/2 and a 1/2 in tab on an 8 in sheet, in 1/80 mm: 1 in is 2032.
    const inch = 2032;
    const search = nearestWholeNumbers({
      scale: 80,
      targets: [1.25 * inch, 2.5 * inch, 0.5 * inch, 8 * inch],
      reach: 80,
      equalities: [
        {
          terms: [
            { variable: 0, coefficient: 2 },
            { variable: 1, coefficient: 2 },
            { variable: 2, coefficient: 1 },
            { variable: 3, coefficient: -1 },
          ],
          constant: 0,
        },
      ],
      atLeast: [],
    });
    expect(search).toMatchObject({ kind: 'best' });
    if (search.kind !== 'best') return;
    const [narrow = 0, wide = 0, tab = 0, sheet = 0] = search.best.values;
    expect(2 * narrow + 2 * wide + tab).toBe(sheet);
    expect(search.best.greatestDeviation).toBeLessThanOrEqual(40);
  });

  it('says when there are none within reach', () => {
    const problem: WholeNumberProblem = {
      scale: 1,
      targets: [10, 30],
      reach: 1,
      equalities: [
        {
          terms: [
            { variable: 0, coefficient: 2 },
            { variable: 1, coefficient: -1 },
          ],
          constant: 0,
        },
      ],
      atLeast: [],
    };
    expect(nearestWholeNumbers(problem).kind).toBe('none');
  });
});
