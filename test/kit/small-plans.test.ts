import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Blank, longestCut, type Rect } from '../../src/kit/solver/cut-tree.ts';
import { planSheets } from '../../src/kit/solver/plan-sheets.ts';
import type { CuttingProblem } from '../../src/kit/solver/problem.ts';
import { Work } from '../../src/kit/solver/work.ts';
import { loadHighs } from '../../src/shape/highs.ts';

const highs = await loadHighs();

const side = fc.integer({ min: 1, max: 6 });
const blank: fc.Arbitrary<Blank> = fc.record({ width: side, height: side, turnable: fc.boolean() });
const wanted = fc.array(fc.tuple(blank, fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 3 });

describe('small plans', () => {
  it('are never better than the best there is, and as good as it where they say so', () => {
    fc.assert(
      fc.property(wanted, fc.boolean(), (asked, hasSmall) => {
        const sheets: CuttingProblem['sheets'] = [
          { width: 6, height: 7, cost: hasSmall ? 5 : 1 },
          ...(hasSmall ? [{ width: 6, height: 6, cost: 4 }] : []),
        ];
        const problem: CuttingProblem = {
          blanks: asked.map(([each]) => each),
          demand: asked.map(([, count]) => count),
          sheets,
        };
        const plan = planSheets(problem, { highs, work: new Work(2e6) });
        const least = leastCost(problem);
        expect(plan.cost).toBeGreaterThanOrEqual(least);
        expect(plan.bound).toBeLessThanOrEqual(least);
        if (plan.cost === plan.bound) expect(plan.cost).toBe(least);
      }),
      { seed: 5, numRuns: 120 },
    );
  });

  it('are all proven where blanks are few', () => {
    const outcomes = fc.sample(wanted, { seed: 7, numRuns: 60 }).map((asked) => {
      const problem: CuttingProblem = {
        blanks: asked.map(([each]) => each),
        demand: asked.map(([, count]) => count),
        sheets: [{ width: 6, height: 7, cost: 1 }],
      };
      const { cost, bound } = planSheets(problem, { highs, work: new Work(2e6) });
      return cost === bound && cost === leastCost(problem);
    });
    expect(outcomes.filter((isBest) => !isBest)).toEqual([]);
  });
});

describe('small plans for a trimmer that is shorter than the sheet', () => {
  it('are as good as the best there is within it, and nearly all proven', () => {
    let open = 0;
    fc.assert(
      fc.property(wanted, fc.integer({ min: 4, max: 6 }), (asked, longest) => {
        const sheet = { width: 6, height: 7 };
        const blanks = asked.map(([each]) => each);
        const counts = asked.map(([, count]) => count);
        const single = (index: number): number[] => counts.map((_, other) => (other === index ? 1 : 0));
        if (!blanks.every((_, index) => canCut(blanks, sheet, single(index), longest))) return;
        const problem: CuttingProblem = { blanks, demand: counts, sheets: [{ ...sheet, cost: 1 }], longest };
        const plan = planSheets(problem, { highs, work: new Work(2e6) });
        for (const { pattern } of plan.batches) expect(longestCut(pattern.tree)).toBeLessThanOrEqual(longest);
        const least = leastCost(problem);
        expect(plan.cost).toBe(least);
        expect(plan.bound).toBeLessThanOrEqual(least);
        if (plan.bound < least) open += 1;
      }),
      { seed: 5, numRuns: 120 },
    );
    expect(open).toBe(0);
  });
});

/** One or two sizes, single or in packs, some of them there already. */
const source = fc.record({
  cost: fc.integer({ min: 1, max: 9 }),
  pack: fc.integer({ min: 1, max: 3 }),
  there: fc.integer({ min: 0, max: 2 }),
});

describe('small plans of sheets in packs', () => {
  it('cost at the shop what the cheapest packs do, and as they say', () => {
    const outcomes = new Map<string, number>();
    fc.assert(
      fc.property(wanted, source, source, fc.boolean(), (asked, large, small, hasSmall) => {
        const sheets: CuttingProblem['sheets'] = [
          { width: 6, height: 7, ...large },
          ...(hasSmall ? [{ width: 6, height: 6, ...small }] : []),
        ];
        const problem = {
          blanks: asked.map(([each]) => each),
          demand: asked.map(([, count]) => count),
          sheets,
        };
        const plan = planSheets(problem, { highs, work: new Work(2e6) });
        const least = leastMoney(problem);
        expect(plan.cost).toBe(least);
        expect(plan.bound).toBeLessThanOrEqual(least);
        const outcome = plan.bound === least ? 'proven' : 'open';
        outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
      }),
      { seed: 5, numRuns: 200 },
    );
    expect(outcomes.get('proven')).toBe(200);
  });
});

/** By trying every number of sheets of each size that gives what is wanted: then whole packs are bought. */
function leastMoney({ blanks, demand, sheets }: CuttingProblem): number {
  const ways = new Map<string, readonly (readonly number[])[]>();
  const all = choices(demand);
  for (const counts of all.toSorted((a, b) => total(a) - total(b))) {
    const numbers = choices(counts).flatMap((part) =>
      total(part) === 0
        ? []
        : sheets.flatMap((sheet, size) => {
            const rest = counts.map((count, index) => count - (part[index] ?? 0)).join();
            if (!canCut(blanks, sheet, part)) return [];
            return (ways.get(rest) ?? []).map((each) => each.map((n, index) => n + (index === size ? 1 : 0)));
          }),
    );
    ways.set(counts.join(), total(counts) === 0 ? [sheets.map(() => 0)] : fewest(numbers));
  }
  const money = (ways.get(demand.join()) ?? []).map((numbers) =>
    sheets.reduce((sum, { cost, pack = 1, there = 0 }, size) => {
      return sum + cost * Math.ceil(Math.max(0, (numbers[size] ?? 0) - there) / pack);
    }, 0),
  );
  return Math.min(...money);
}

/** Without those that take as many of every size as another, or more. */
function fewest(numbers: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const distinct = [...new Map(numbers.map((each) => [each.join(), each])).values()];
  return distinct.filter(
    (each) => !distinct.some((other) => other !== each && other.every((n, index) => n <= (each[index] ?? 0))),
  );
}

describe('plans of middling size, in packs', () => {
  it('cost no more than HiGHS finds when it is given every pattern there is', () => {
    const side = fc.integer({ min: 3, max: 9 });
    const blank: fc.Arbitrary<Blank> = fc.record({ width: side, height: side, turnable: fc.boolean() });
    const kinds = fc.array(fc.tuple(blank, fc.integer({ min: 5, max: 40 })), { minLength: 3, maxLength: 4 });
    const packs = fc.record({
      cost: fc.integer({ min: 20, max: 90 }),
      pack: fc.integer({ min: 1, max: 10 }),
      there: fc.integer({ min: 0, max: 4 }),
    });
    const open: string[] = [];
    fc.assert(
      fc.property(kinds, packs, packs, (asked, letter, square) => {
        const sheets: CuttingProblem['sheets'] = [
          { width: 9, height: 11, ...letter },
          { width: 12, height: 12, ...square },
        ];
        const problem = {
          blanks: asked.map(([each]) => each),
          demand: asked.map(([, count]) => count),
          sheets,
        };
        const plan = planSheets(problem, { highs, work: new Work(5e6) });
        const least = leastByHighs(problem);
        expect(plan.cost).toBeGreaterThanOrEqual(least);
        expect(plan.bound).toBeLessThanOrEqual(least);
        if (plan.cost > least || plan.bound < least) open.push(`${plan.cost} ${plan.bound} ${least}`);
      }),
      { seed: 11, numRuns: 25 },
    );
    expect(open).toEqual([]);
  });
});

/** One whole-number program over all patterns, which are found by cutting every rectangle in every way. */
function leastByHighs({ blanks, demand, sheets }: CuttingProblem): number {
  const columns = sheets.flatMap((sheet, size) =>
    patternsOf(blanks, sheet).map((counts, index) => ({ name: `x${size}_${index}`, size, counts })),
  );
  const lines = [
    'Minimize',
    ' money:',
    ...sheets.map(({ cost }, size) => ` + ${cost} k${size}`),
    'Subject To',
    ...demand.flatMap((count, index) => [
      ` d${index}:`,
      ...columns.flatMap(({ name, counts }) =>
        (counts[index] ?? 0) > 0 ? [` + ${counts[index]} ${name}`] : [],
      ),
      ` >= ${count}`,
    ]),
    ...sheets.flatMap(({ pack = 1, there = 0 }, size) => [
      ` s${size}:`,
      ...columns.flatMap(({ name, size: own }) => (own === size ? [` + ${name}`] : [])),
      ` - ${pack} k${size} <= ${there}`,
    ]),
    'General',
    ...columns.map(({ name }) => ` ${name}`),
    ...sheets.map((_, size) => ` k${size}`),
    'End',
    '',
  ];
  const { ObjectiveValue, Status } = highs.solve(lines.join('\n'), {
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: 0.5,
  });
  if (Status !== 'Optimal') throw new Error(Status);
  return Math.round(ObjectiveValue);
}

/** The fullest choices of blanks that can be cut from a rectangle. */
function patternsOf(blanks: readonly Blank[], sheet: Rect): readonly (readonly number[])[] {
  const found = new Map<string, readonly (readonly number[])[]>();
  const from = (width: number, height: number): readonly (readonly number[])[] => {
    const key = `${width} ${height}`;
    const before = found.get(key);
    if (before) return before;
    const single = blanks.flatMap((_, index) => {
      const one = blanks.map((__, other) => (other === index ? 1 : 0));
      return canCut(blanks, { width, height }, one) ? [one] : [];
    });
    const halves: (readonly number[])[] = [blanks.map(() => 0), ...single];
    const join = (near: readonly (readonly number[])[], far: readonly (readonly number[])[]): void => {
      for (const one of near)
        for (const other of far) halves.push(one.map((n, index) => n + (other[index] ?? 0)));
    };
    for (let cut = 1; cut <= width / 2; cut += 1) join(from(cut, height), from(width - cut, height));
    for (let cut = 1; cut <= height / 2; cut += 1) join(from(width, cut), from(width, height - cut));
    const all = fullest(halves);
    found.set(key, all);
    return all;
  };
  return from(sheet.width, sheet.height);
}

function fullest(numbers: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const distinct = [...new Map(numbers.map((each) => [each.join(), each])).values()];
  return distinct.filter(
    (each) => !distinct.some((other) => other !== each && other.every((n, index) => n >= (each[index] ?? 0))),
  );
}

/**
 * The least cost by trying everything: which choices of blanks can be cut from a sheet by any cuts at all, and then
 * every way to make up the demand of such choices. Knows nothing of positions, values or patterns.
 */
function leastCost({ blanks, demand, sheets, longest }: CuttingProblem): number {
  const all = choices(demand);
  const cheapest = new Map<string, number>();
  for (const counts of all) {
    const costs = sheets.filter((sheet) => canCut(blanks, sheet, counts, longest)).map(({ cost }) => cost);
    if (costs.length > 0) cheapest.set(counts.join(), Math.min(...costs));
  }
  const least = new Map<string, number>();
  for (const counts of all.toSorted((a, b) => total(a) - total(b))) {
    const ways =
      total(counts) === 0
        ? [0]
        : choices(counts).flatMap((part) => {
            const cost = total(part) === 0 ? undefined : cheapest.get(part.join());
            const rest = least.get(counts.map((count, index) => count - (part[index] ?? 0)).join());
            return cost === undefined || rest === undefined ? [] : [cost + rest];
          });
    least.set(counts.join(), Math.min(...ways));
  }
  return least.get(demand.join()) ?? Number.POSITIVE_INFINITY;
}

const known = new Map<string, boolean>();

function canCut(
  blanks: readonly Blank[],
  { width, height }: Rect,
  counts: readonly number[],
  longest = Number.POSITIVE_INFINITY,
): boolean {
  const many = total(counts);
  if (many === 0) return true;
  const only = many === 1 ? blanks[counts.indexOf(1)] : undefined;
  if (only) {
    const isWhole = (across: number, down: number): boolean => across === width && down === height;
    if (isWhole(only.width, only.height) || (only.turnable && isWhole(only.height, only.width))) return true;
  }
  const key = `${JSON.stringify(blanks)} ${width} ${height} ${counts.join()} ${longest}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const area = counts.reduce((sum, count, index) => sum + count * areaOf(blanks[index]), 0);
  const possible =
    area <= width * height &&
    divisions(counts).some(([near, far]) => {
      for (let cut = 1; cut < width && height <= longest; cut += 1)
        if (
          canCut(blanks, { width: cut, height }, near, longest) &&
          canCut(blanks, { width: width - cut, height }, far, longest)
        )
          return true;
      for (let cut = 1; cut < height && width <= longest; cut += 1)
        if (
          canCut(blanks, { width, height: cut }, near, longest) &&
          canCut(blanks, { width, height: height - cut }, far, longest)
        )
          return true;
      return false;
    });
  known.set(key, possible);
  return possible;
}

function areaOf(blank: Rect | undefined): number {
  return blank ? blank.width * blank.height : 0;
}

function total(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

function choices(most: readonly number[]): number[][] {
  return most.reduce<number[][]>(
    (before, count) =>
      before.flatMap((each) => Array.from({ length: count + 1 }, (_, taken) => [...each, taken])),
    [[]],
  );
}

function divisions(counts: readonly number[]): (readonly [number[], number[]])[] {
  return choices(counts)
    .map((near) => [near, counts.map((count, index) => count - (near[index] ?? 0))] as const)
    .filter(([near]) => total(near) > 0);
}
