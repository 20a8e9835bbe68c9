import type { Highs } from '../../shape/highs.ts';
import type { Effort } from './effort.ts';
import { type CuttingProblem, costOf, type Pattern, stillWanted, type Use } from './problem.ts';

/** A solution of the relaxed choice: how often each pattern is used, in parts of a sheet, and what each blank costs. */
export type Relaxed = { readonly uses: readonly number[]; readonly prices: readonly number[] };

/** The best choice of whole sheets; one that may not be the best, or none, where time was up; or that there is none. */
export type Choice =
  | { readonly status: 'best'; readonly uses: readonly Use[]; readonly cost: number }
  | { readonly status: 'unfinished'; readonly uses?: readonly Use[]; readonly cost?: number }
  | { readonly status: 'impossible' };

/** Costs are whole numbers: what is within half of the best is the best. */
const EXACTLY = { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.5 } as const;

/** An easy plan need not be the very easiest. */
const NEARLY = { output_flag: false, mip_rel_gap: 0.03 } as const;

/** The choice among known patterns: how many sheets to cut by each, so that all that is wanted is cut. */
export class Master {
  readonly #problem: CuttingProblem;
  readonly #highs: Highs;
  readonly #patterns: Pattern[] = [];
  readonly #known = new Set<string>();

  constructor(problem: CuttingProblem, highs: Highs) {
    this.#problem = problem;
    this.#highs = highs;
  }

  get patterns(): readonly Pattern[] {
    return this.#patterns;
  }

  /** @returns false when it gives nothing, or nothing that is not known. */
  add(pattern: Pattern): boolean {
    const key = `${pattern.sheet}: ${pattern.counts.join()}`;
    if (this.#known.has(key) || pattern.counts.every((count) => count === 0)) return false;
    this.#known.add(key);
    this.#patterns.push(pattern);
    return true;
  }

  /**
   * Parts of sheets allowed, the least cost for `demand`; no pattern gives more of a blank than is wanted of it.
   * Undefined when the solver gives up.
   */
  relax(demand: readonly number[]): Relaxed | undefined {
    const wanted = demand.flatMap((count, blank) => (count > 0 ? [blank] : []));
    const solution = this.#highs.solve(this.#text(demand, wanted, false), { output_flag: false });
    if (solution.Status !== 'Optimal') return undefined;
    const prices = demand.map(() => 0);
    for (const [row, blank] of wanted.entries()) {
      const solved = solution.Rows[row];
      prices[blank] = solved && 'Dual' in solved ? Math.max(0, solved.Dual) : 0;
    }
    return { uses: this.#patterns.map((_, index) => primalOf(solution.Columns[`x${index}`])), prices };
  }

  /** Whole sheets, the least cost for the whole demand, in at most so many seconds. */
  choose(seconds: number): Choice {
    const { demand } = this.#problem;
    const blanks = demand.map((_, blank) => blank);
    return this.#solve(this.#text(demand, blanks, true), seconds);
  }

  /**
   * Whole sheets for the whole demand at no more than `cost`, with about the least effort for the person at the
   * trimmer.
   */
  easiest(cost: number, seconds: number, effortOf: (pattern: Pattern) => Effort): Choice {
    const { demand } = this.#problem;
    const efforts = this.#patterns.map(effortOf);
    const needed = this.#patterns.map(({ counts }) =>
      Math.max(...counts.map((count, blank) => (count > 0 ? Math.ceil((demand[blank] ?? 0) / count) : 0))),
    );
    const text = [
      'Minimize',
      ' effort:',
      ...efforts.map(({ once, perSheet }, index) => ` + ${once} y${index} + ${perSheet} x${index}`),
      'Subject To',
      ...this.#rows(
        demand,
        demand.map((_, blank) => blank),
      ),
      ' cost:',
      ...this.#costs(),
      ` <= ${cost}`,
      ...needed.map((most, index) => ` u${index}: x${index} - ${most} y${index} <= 0`),
      'Bounds',
      ...needed.map((most, index) => ` 0 <= x${index} <= ${most}`),
      'General',
      ...this.#patterns.map((_, index) => ` x${index}`),
      'Binary',
      ...this.#patterns.map((_, index) => ` y${index}`),
      'End',
      '',
    ];
    return this.#solve(text.join('\n'), seconds, NEARLY);
  }

  #solve(text: string, seconds: number, exactness: object = EXACTLY): Choice {
    const { demand } = this.#problem;
    const solution = this.#highs.solve(text, { ...exactness, time_limit: Math.max(0.05, seconds) });
    if (solution.Status === 'Infeasible') return { status: 'impossible' };
    const uses = this.#patterns.flatMap((pattern, index) => {
      const count = Math.round(primalOf(solution.Columns[`x${index}`]));
      return count > 0 ? [{ pattern, count }] : [];
    });
    const isEnough = stillWanted(demand, uses).every((wanted) => wanted === 0);
    const status = solution.Status === 'Optimal' ? 'best' : 'unfinished';
    return isEnough ? { status, uses, cost: costOf(uses, this.#problem) } : { status: 'unfinished' };
  }

  /** The programme in CPLEX LP format, a term a line. */
  #text(demand: readonly number[], wanted: readonly number[], whole: boolean): string {
    const integer = whole ? ['General', ...this.#patterns.map((_, index) => ` x${index}`)] : [];
    const lines = ['Minimize', ' cost:', ...this.#costs(), 'Subject To', ...this.#rows(demand, wanted)];
    return [...lines, ...integer, 'End', ''].join('\n');
  }

  #costs(): readonly string[] {
    return this.#patterns.map(({ sheet }, index) => ` + ${this.#problem.sheets[sheet]?.cost ?? 1} x${index}`);
  }

  /** A row for each blank that is wanted; no pattern counts for more of it than that. */
  #rows(demand: readonly number[], wanted: readonly number[]): readonly string[] {
    return wanted.flatMap((blank) => {
      const need = demand[blank] ?? 0;
      const terms = this.#patterns.flatMap(({ counts }, index) => {
        const count = Math.min(counts[blank] ?? 0, need);
        return count > 0 ? [` + ${count} x${index}`] : [];
      });
      return [` c${blank}:`, ...terms, ` >= ${need}`];
    });
  }
}

function primalOf(column: object | undefined): number {
  return column && 'Primal' in column && typeof column.Primal === 'number' ? column.Primal : 0;
}
