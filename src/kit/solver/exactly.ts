import { clipped, countBlanks } from './cut-tree.ts';
import { type Batch, type CuttingProblem, type Pattern, sheetsIn, stillWanted } from './problem.ts';

/** Batches of patterns that give the same blanks become one. */
function gathered(batches: readonly Batch[]): readonly Batch[] {
  const together = new Map<string, Batch>();
  for (const { pattern, count } of batches) {
    const key = `${pattern.sheet}: ${pattern.counts.join()}`;
    const before = together.get(key);
    together.set(key, { pattern: before?.pattern ?? pattern, count: count + (before?.count ?? 0) });
  }
  return [...together.values()];
}

/** Whether what is too much is left out of as few sheets as can be, or of every sheet of a layout alike where that goes. */
type Leaving = 'of few' | 'alike';

/** The same sheets without the blanks that are more than is wanted. */
export function exactly(
  batches: readonly Batch[],
  problem: CuttingProblem,
  leaving: Leaving,
): readonly Batch[] {
  let left = gathered(batches);
  for (let sheet = 0; sheet <= sheetsIn(batches); sheet += 1) {
    const surplus = surplusOf(left, problem);
    if (surplus.every((count) => count === 0)) return gathered(left);
    const alike = leaving === 'alike' ? withoutAlike(left, surplus) : undefined;
    left = alike ?? withoutSurplus(left, surplus, problem);
  }
  throw new Error('a plan that gives less than is wanted');
}

function surplusOf(batches: readonly Batch[], { demand, blanks }: CuttingProblem): readonly number[] {
  const cut = blanks.map((_, blank) =>
    batches.reduce((sum, { pattern, count }) => sum + count * (pattern.counts[blank] ?? 0), 0),
  );
  if (stillWanted(demand, batches).some((wanted) => wanted > 0))
    throw new Error('a plan that gives too little');
  return cut.map((count, blank) => count - (demand[blank] ?? 0));
}

/** Takes the same from every sheet of a pattern; undefined where there is not that much too much. */
function withoutAlike(batches: readonly Batch[], surplus: readonly number[]): readonly Batch[] | undefined {
  for (const batch of batches) {
    const { pattern, count } = batch;
    const kept = pattern.counts.map((each, blank) =>
      Math.max(0, each - Math.floor((surplus[blank] ?? 0) / count)),
    );
    if (kept.every((each, blank) => each === pattern.counts[blank])) continue;
    const others = batches.filter((each) => each !== batch);
    return [...others, { pattern: lightened(pattern, kept), count }].filter(({ pattern: { counts } }) =>
      counts.some((each) => each > 0),
    );
  }
  return undefined;
}

/** Takes all it can of the surplus from one sheet: the one that holds most of it by area. */
function withoutSurplus(
  batches: readonly Batch[],
  surplus: readonly number[],
  { blanks }: CuttingProblem,
): readonly Batch[] {
  const held = ({ counts }: Pattern): number =>
    blanks.reduce(
      (area, { width, height }, blank) =>
        area + width * height * Math.min(counts[blank] ?? 0, surplus[blank] ?? 0),
      0,
    );
  const [most] = batches.toSorted((a, b) => held(b.pattern) - held(a.pattern));
  if (!most) return batches;
  const { pattern, count } = most;
  const kept = pattern.counts.map((each, blank) => Math.max(0, each - (surplus[blank] ?? 0)));
  const lighter = lightened(pattern, kept);
  const others = batches.filter((batch) => batch !== most);
  const same = count > 1 ? [{ pattern, count: count - 1 }] : [];
  const changed = lighter.counts.some((each) => each > 0) ? [{ pattern: lighter, count: 1 }] : [];
  return [...others, ...same, ...changed];
}

function lightened({ sheet, tree, counts }: Pattern, kept: readonly number[]): Pattern {
  const lighter = clipped(tree, kept);
  return { sheet, tree: lighter, counts: countBlanks(lighter, counts.length) };
}
