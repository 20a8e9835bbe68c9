import type { Highs } from '../../shape/highs.ts';
import { listConstrained } from '../guillotine/constrained.ts';
import { costUnit } from './bounds.ts';
import { Master } from './master.ts';
import type { Priced, Pricer } from './pricing.ts';
import type { CuttingProblem, Use } from './problem.ts';

/** Whole-number values of the blanks, and the best patterns for them. */
export type Valued = { readonly values: readonly number[]; readonly priced: readonly Priced[] };

/** What is known of plans cheaper than `cost`: one of them, that there is none, or nothing. */
export type Closed = readonly Use[] | 'none' | 'unknown';

const MOST_PATTERNS = 4_000;
const MOST_PAIRS = 4_000_000;

/**
 * Looks for a cheaper plan among all there are. A plan that costs `cost` less one unit can only use patterns whose
 * worth comes near to their sheet's cost; often those are few enough to list them all, and the choice among them
 * then either gives such a plan or proves that there is none (R. Baldacci et al., Mathematical Programming 115, 2008,
 * list routes in the same way).
 */
export function closeGap(
  problem: CuttingProblem,
  pricer: Pricer,
  { values, priced }: Valued,
  cost: number,
  { highs, seconds }: { readonly highs: Highs; readonly seconds: number },
): Closed {
  if (problem.safe) return 'unknown';
  const target = BigInt(cost) - costUnit(problem);
  const least = leastWorth(problem, values, priced, target);
  if (!least) return 'unknown';
  const master = new Master(problem, highs);
  for (const [sheet, worth] of least.entries()) {
    const wanted = pricer.wantedOn(sheet, values);
    const listed = listConstrained(wanted, Number(worth), MOST_PAIRS, MOST_PATTERNS);
    if (!listed.complete) return 'unknown';
    for (const { tree, counts } of listed.patterns) master.add({ sheet, tree, counts });
  }
  const choice = master.choose(seconds);
  if (choice.status === 'unfinished') return 'unknown';
  if (choice.status === 'impossible' || choice.cost >= cost) return 'none';
  return choice.uses;
}

/** For each sheet size the worth a pattern needs to be in a plan of that cost, by exact whole-number arithmetic. */
function leastWorth(
  { sheets, demand }: CuttingProblem,
  values: readonly number[],
  priced: readonly Priced[],
  target: bigint,
): readonly bigint[] | undefined {
  if (priced.some(({ bound }) => !Number.isFinite(bound) || bound <= 0)) return undefined;
  const worth = values.reduce(
    (total, value, blank) => total + BigInt(value) * BigInt(demand[blank] ?? 0),
    0n,
  );
  const dearest = priced
    .map(({ bound }, sheet) => ({ bound: BigInt(bound), cost: BigInt(sheets[sheet]?.cost ?? 1) }))
    .reduce((most, each) => (each.bound * most.cost > most.bound * each.cost ? each : most));
  return sheets.map(({ cost }) => {
    const rest = (target - BigInt(cost)) * dearest.bound;
    const least = worth - rest / dearest.cost;
    return least < 1n ? 1n : least;
  });
}
