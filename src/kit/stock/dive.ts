import { clipped, countBlanks } from '../guillotine/blank.ts';
import { type Generation, generatePatterns } from './column-generation.ts';
import { type Pattern, repeats, stillWanted, type Use } from './problem.ts';

/** Parts of a sheet this near to a whole one are a whole one. */
const NEARLY = 1e-6;

/**
 * A plan by deciding sheet after sheet: relax, cut the whole sheets of the relaxed solution, find new patterns for
 * what is still wanted, and again. The patterns found on the way stay in the master.
 * @param choose which of the fractional patterns, the largest first, becomes a whole sheet where none is whole.
 */
export function dive(
  generation: Generation,
  choose: (candidates: number) => number,
): readonly Use[] | undefined {
  const { problem, master, isLate } = generation;
  const uses: Use[] = [];
  let demand = problem.demand;
  while (demand.some((wanted) => wanted > 0)) {
    const generated = generatePatterns(generation, demand);
    if (!generated || isLate()) return undefined;
    const ranked = generated.relaxed.uses
      .map((part, index) => ({ part, index }))
      .filter(({ part }) => part > NEARLY)
      .sort((a, b) => b.part - a.part);
    const whole = ranked.filter(({ part }) => part > 1 - NEARLY);
    const fixed = whole.length > 0 ? whole : ranked.slice(choose(ranked.length)).slice(0, 1);
    if (fixed.length === 0) return undefined;
    for (const { part, index } of fixed) {
      const pattern = master.patterns[index];
      if (pattern)
        take(uses, pattern, Math.max(1, Math.floor(part + NEARLY)), stillWanted(problem.demand, uses));
    }
    demand = stillWanted(problem.demand, uses);
    for (const { pattern } of uses) master.add(pattern);
  }
  return uses;
}

/** Adds a pattern so many times, without what would be too much; less often where nothing is left to cut. */
function take(uses: Use[], pattern: Pattern, times: number, wanted: readonly number[]): void {
  let [left, still] = [wanted, times];
  while (still > 0) {
    const tree = clipped(pattern.tree, left);
    const counts = countBlanks(tree, left.length);
    if (counts.every((count) => count === 0)) return;
    const cut: Pattern = { sheet: pattern.sheet, tree, counts };
    const use: Use = { pattern: cut, count: Math.min(still, repeats(cut, left)) };
    uses.push(use);
    left = stillWanted(left, [use]);
    still -= use.count;
  }
}
