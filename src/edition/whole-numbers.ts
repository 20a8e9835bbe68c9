/** `Σ coefficient · x[variable]`, to be equal to or at least `constant`. All whole numbers. */
export type LinearForm = {
  readonly terms: readonly { readonly variable: number; readonly coefficient: number }[];
  readonly constant: number;
};

/**
 * Whole numbers near given targets that keep linear relations. A target is `target / scale` of a step; the scale is
 * common to all, so that deviations are compared in whole numbers.
 */
export type WholeNumberProblem = {
  readonly scale: number;
  readonly targets: readonly number[];
  /** How heavily each one's deviation counts; 1 when absent. */
  readonly weights?: readonly number[];
  /** The farthest any value may lie from its target, in weighted steps / scale. */
  readonly reach: number;
  readonly equalities: readonly LinearForm[];
  readonly atLeast: readonly LinearForm[];
};

export type WholeNumbers = {
  readonly values: readonly number[];
  /** In steps / scale. */
  readonly greatestDeviation: number;
  readonly sumOfDeviations: number;
};

/** What a search gives: the best values, `none` when there are none, `unfinished` when it ran out of nodes. */
export type Search =
  | { readonly kind: 'best'; readonly best: WholeNumbers }
  | { readonly kind: 'none' | 'unfinished' };

/** Some tens of milliseconds: enough for every usual sheet; what needs more goes to the large solver. */
const MOST_NODES = 2_000;

type Domain = { low: number; high: number };

/**
 * The values with the smallest greatest deviation and, among those, the smallest sum of deviations; remaining ties
 * go to the value nearest its target, earlier variables first, so that the result is stable. Exact: depth-first
 * search with bounds propagated through the relations.
 */
export function nearestWholeNumbers(problem: WholeNumberProblem, mostNodes: number = MOST_NODES): Search {
  const budget = { nodes: mostNodes };
  const rungs = possibleDeviations(problem);
  let low = 0;
  let high = rungs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const found = search(problem, rungs[middle] ?? 0, 'any', budget);
    if (budget.nodes < 0) return { kind: 'unfinished' };
    if (found) high = middle;
    else low = middle + 1;
  }
  const least = rungs[low];
  if (least === undefined) return { kind: 'none' };
  const best = search(problem, least, 'least sum', budget);
  if (budget.nodes < 0) return { kind: 'unfinished' };
  return best ? { kind: 'best', best } : { kind: 'none' };
}

/** Every deviation any variable could have within reach, rising: the greatest deviation is one of them. */
function possibleDeviations(problem: WholeNumberProblem): number[] {
  const { targets, scale, reach } = problem;
  const deviations = new Set<number>();
  targets.forEach((target, variable) => {
    const far = reach / weightOf(problem, variable);
    for (let value = Math.ceil((target - far) / scale); value * scale <= target + far; value += 1) {
      deviations.add(deviationOf(problem, variable, value));
    }
  });
  return [...deviations].sort((a, b) => a - b);
}

function weightOf({ weights }: WholeNumberProblem, variable: number): number {
  return weights?.[variable] ?? 1;
}

function deviationOf(problem: WholeNumberProblem, variable: number, value: number): number {
  return weightOf(problem, variable) * Math.abs(value * problem.scale - (problem.targets[variable] ?? 0));
}

function search(
  problem: WholeNumberProblem,
  within: number,
  want: 'any' | 'least sum',
  budget: { nodes: number },
): WholeNumbers | undefined {
  const { scale, targets } = problem;
  let best: WholeNumbers | undefined;
  const deviation = (variable: number, value: number): number => deviationOf(problem, variable, value);

  const visit = (domains: readonly Domain[]): boolean => {
    budget.nodes -= 1;
    if (budget.nodes < 0) return true;
    const narrowed = propagate(problem, domains);
    if (!narrowed) return false;
    if (best && leastSum(problem, narrowed) >= best.sumOfDeviations) return false;
    const open = narrowed.findIndex(({ low, high }) => low < high);
    if (open < 0) {
      best = measured(problem, narrowed);
      return want === 'any';
    }
    const { low, high } = narrowed[open] ?? { low: 0, high: 0 };
    const choices = Array.from({ length: high - low + 1 }, (_, index) => low + index);
    choices.sort((a, b) => deviation(open, a) - deviation(open, b) || a - b);
    return choices.some((value) => visit(narrowed.with(open, { low: value, high: value })));
  };
  visit(
    targets.map((target, variable) => {
      const far = within / weightOf(problem, variable);
      return { low: Math.ceil((target - far) / scale), high: Math.floor((target + far) / scale) };
    }),
  );
  return best;
}

/** The least sum of deviations any values within the domains could have. */
function leastSum(problem: WholeNumberProblem, domains: readonly Domain[]): number {
  return domains.reduce((sum, { low, high }, variable) => {
    const nearest = Math.round((problem.targets[variable] ?? 0) / problem.scale);
    return sum + deviationOf(problem, variable, Math.min(Math.max(nearest, low), high));
  }, 0);
}

function measured(problem: WholeNumberProblem, domains: readonly Domain[]): WholeNumbers {
  const values = domains.map(({ low }) => low);
  const deviations = values.map((value, variable) => deviationOf(problem, variable, value));
  return {
    values,
    greatestDeviation: Math.max(0, ...deviations),
    sumOfDeviations: deviations.reduce((sum, each) => sum + each, 0),
  };
}

/** Narrows domains to what the relations leave possible, until nothing changes; undefined when one is empty. */
function propagate(problem: WholeNumberProblem, domains: readonly Domain[]): Domain[] | undefined {
  const narrowed = domains.map((domain) => ({ ...domain }));
  if (narrowed.some(({ low, high }) => low > high)) return undefined;
  let changed = true;
  while (changed) {
    changed = false;
    for (const form of problem.equalities) {
      const outcome = tighten(form, narrowed, true);
      if (outcome === 'impossible') return undefined;
      changed ||= outcome === 'tighter';
    }
    for (const form of problem.atLeast) {
      const outcome = tighten(form, narrowed, false);
      if (outcome === 'impossible') return undefined;
      changed ||= outcome === 'tighter';
    }
  }
  return narrowed;
}

/** One relation's pass: each term must leave room for the others. */
function tighten(form: LinearForm, domains: Domain[], equal: boolean): 'same' | 'tighter' | 'impossible' {
  let least = -form.constant;
  let most = -form.constant;
  for (const { variable, coefficient } of form.terms) {
    const { low, high } = domains[variable] ?? { low: 0, high: 0 };
    least += coefficient * (coefficient > 0 ? low : high);
    most += coefficient * (coefficient > 0 ? high : low);
  }
  if (most < 0 || (equal && least > 0)) return 'impossible';
  let outcome: 'same' | 'tighter' = 'same';
  for (const { variable, coefficient } of form.terms) {
    const domain = domains[variable];
    if (!domain || coefficient === 0) continue;
    const ofMost = coefficient * (coefficient > 0 ? domain.high : domain.low);
    const ofLeast = coefficient * (coefficient > 0 ? domain.low : domain.high);
    // What the others can reach bounds this term from below, and from above where the relation is an equality.
    const atLeast = ofMost - most;
    const atMost = equal ? ofLeast - least : Number.POSITIVE_INFINITY;
    const low = Math.max(
      domain.low,
      Math.ceil(coefficient > 0 ? atLeast / coefficient : atMost / coefficient),
    );
    const high = Math.min(
      domain.high,
      Math.floor(coefficient > 0 ? atMost / coefficient : atLeast / coefficient),
    );
    if (low > high) return 'impossible';
    if (low === domain.low && high === domain.high) continue;
    most += coefficient > 0 ? coefficient * (high - domain.high) : coefficient * (low - domain.low);
    least += coefficient > 0 ? coefficient * (low - domain.low) : coefficient * (high - domain.high);
    domain.low = low;
    domain.high = high;
    outcome = 'tighter';
  }
  return outcome;
}
