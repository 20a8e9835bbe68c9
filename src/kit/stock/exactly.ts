import { clipped, countBlanks } from '../guillotine/blank.ts';
import { type CuttingProblem, type Pattern, sheetsIn, stillWanted, type Use } from './problem.ts';

/** Uses of patterns that give the same blanks become one. */
export function gathered(uses: readonly Use[]): readonly Use[] {
  const together = new Map<string, Use>();
  for (const { pattern, count } of uses) {
    const key = `${pattern.sheet}: ${pattern.counts.join()}`;
    const before = together.get(key);
    together.set(key, { pattern: before?.pattern ?? pattern, count: count + (before?.count ?? 0) });
  }
  return [...together.values()];
}

/** Whether what is too much is left out of as few sheets as can be, or of every sheet of a layout alike where that goes. */
export type Leaving = 'of few' | 'alike';

/** The same sheets without the blanks that are more than is wanted. */
export function exactly(uses: readonly Use[], problem: CuttingProblem, leaving: Leaving): readonly Use[] {
  let left = gathered(uses);
  for (let sheet = 0; sheet <= sheetsIn(uses); sheet += 1) {
    const surplus = surplusOf(left, problem);
    if (surplus.every((count) => count === 0)) return gathered(left);
    const alike = leaving === 'alike' ? withoutAlike(left, surplus) : undefined;
    left = alike ?? withoutSurplus(left, surplus, problem);
  }
  throw new Error('a plan that gives less than is wanted');
}

function surplusOf(uses: readonly Use[], { demand, blanks }: CuttingProblem): readonly number[] {
  const cut = blanks.map((_, blank) =>
    uses.reduce((sum, { pattern, count }) => sum + count * (pattern.counts[blank] ?? 0), 0),
  );
  if (stillWanted(demand, uses).some((wanted) => wanted > 0)) throw new Error('a plan that gives too little');
  return cut.map((count, blank) => count - (demand[blank] ?? 0));
}

/** Takes the same from every sheet of a pattern; undefined where there is not that much too much. */
function withoutAlike(uses: readonly Use[], surplus: readonly number[]): readonly Use[] | undefined {
  for (const use of uses) {
    const { pattern, count } = use;
    const kept = pattern.counts.map((each, blank) =>
      Math.max(0, each - Math.floor((surplus[blank] ?? 0) / count)),
    );
    if (kept.every((each, blank) => each === pattern.counts[blank])) continue;
    const others = uses.filter((each) => each !== use);
    return [...others, { pattern: lightened(pattern, kept), count }].filter(({ pattern: { counts } }) =>
      counts.some((each) => each > 0),
    );
  }
  return undefined;
}

/** Takes all it can of the surplus from one sheet: the one that holds most of it by area. */
function withoutSurplus(
  uses: readonly Use[],
  surplus: readonly number[],
  { blanks }: CuttingProblem,
): readonly Use[] {
  const held = ({ counts }: Pattern): number =>
    blanks.reduce(
      (area, { width, height }, blank) =>
        area + width * height * Math.min(counts[blank] ?? 0, surplus[blank] ?? 0),
      0,
    );
  const [most] = uses.toSorted((a, b) => held(b.pattern) - held(a.pattern));
  if (!most) return uses;
  const { pattern, count } = most;
  const kept = pattern.counts.map((each, blank) => Math.max(0, each - (surplus[blank] ?? 0)));
  const lighter = lightened(pattern, kept);
  const others = uses.filter((use) => use !== most);
  const same = count > 1 ? [{ pattern, count: count - 1 }] : [];
  const changed = lighter.counts.some((each) => each > 0) ? [{ pattern: lighter, count: 1 }] : [];
  return [...others, ...same, ...changed];
}

function lightened({ sheet, tree, counts }: Pattern, kept: readonly number[]): Pattern {
  const lighter = clipped(tree, kept);
  return { sheet, tree: lighter, counts: countBlanks(lighter, counts.length) };
}
