import type highs from 'highs';
import type { Effort } from './effort.ts';
import { type Batch, type CuttingProblem, type Pattern, stillWanted } from './problem.ts';

/** HiGHS, a solver of linear and whole-number programs, loaded. */
export type LinearSolver = Awaited<ReturnType<typeof highs.default>>;

/** A choice of whole sheets. `isBest` where it is known that there is no better one. */
type SheetChoice = { readonly batches: readonly Batch[]; readonly isBest: boolean };

/** Costs are whole numbers: what is within half of the best is the best. */
const EXACTLY = { mip_rel_gap: 0, mip_abs_gap: 0.5 } as const;

/** An easy plan need not be the very easiest. */
const NEARLY = { mip_rel_gap: 0.03 } as const;

/** The choice among known patterns: how many sheets to cut by each, so that all that is wanted is cut. */
export class Master {
  readonly #problem: CuttingProblem;
  readonly #highs: LinearSolver;
  readonly #patterns: Pattern[] = [];
  readonly #known = new Set<string>();

  constructor(problem: CuttingProblem, highs: LinearSolver) {
    this.#problem = problem;
    this.#highs = highs;
  }

  /** @returns false when it gives nothing, or nothing that is not known. */
  add(pattern: Pattern): boolean {
    const key = `${pattern.sheet}: ${pattern.counts.join()}`;
    if (this.#known.has(key) || pattern.counts.every((count) => count === 0)) return false;
    this.#known.add(key);
    this.#patterns.push(pattern);
    return true;
  }

  /** What each blank costs at the least cost where parts of sheets are allowed; undefined when the solver gives up. */
  relax(): readonly number[] | undefined {
    const text = program([...this.#cheapest(), ...this.#rows()]);
    const solution = this.#highs.solve(text, { output_flag: false });
    if (solution.Status !== 'Optimal') return undefined;
    return solution.Rows.map((row) => ('Dual' in row ? Math.max(0, row.Dual) : 0));
  }

  /** Whole sheets at the least cost found in so many seconds. */
  choose(seconds: number): SheetChoice | undefined {
    return this.#solve([...this.#cheapest(), ...this.#rows(), ...this.#wholeSheets()], seconds, EXACTLY);
  }

  /** Whole sheets at no more than `cost`, with about the least effort for the person at the trimmer. */
  easiest(cost: number, seconds: number, effortOf: (pattern: Pattern) => Effort): SheetChoice | undefined {
    const { demand } = this.#problem;
    const efforts = this.#patterns.map(effortOf);
    const needed = this.#patterns.map(({ counts }) =>
      Math.max(...counts.map((count, blank) => (count > 0 ? Math.ceil((demand[blank] ?? 0) / count) : 0))),
    );
    const lines = [
      'Minimize',
      ' effort:',
      ...efforts.map(({ once, perSheet }, index) => ` + ${once} y${index} + ${perSheet} x${index}`),
      ...this.#rows(),
      ' cost:',
      ...this.#costs(),
      ` <= ${cost}`,
      ...needed.map((most, index) => ` u${index}: x${index} - ${most} y${index} <= 0`),
      'Bounds',
      ...needed.map((most, index) => ` 0 <= x${index} <= ${most}`),
      ...this.#wholeSheets(),
      'Binary',
      ...this.#patterns.map((_, index) => ` y${index}`),
    ];
    return this.#solve(lines, seconds, NEARLY);
  }

  #solve(lines: readonly string[], seconds: number, exactness: object): SheetChoice | undefined {
    const options = { output_flag: false, time_limit: Math.max(0.05, seconds), ...exactness };
    const { Columns, Status } = this.#highs.solve(program(lines), options);
    const batches = this.#patterns.flatMap((pattern, index) => {
      const count = Math.round(primalOf(Columns[`x${index}`]));
      return count > 0 ? [{ pattern, count }] : [];
    });
    const isEnough = stillWanted(this.#problem.demand, batches).every((wanted) => wanted === 0);
    return isEnough ? { batches, isBest: Status === 'Optimal' } : undefined;
  }

  #cheapest(): readonly string[] {
    return ['Minimize', ' cost:', ...this.#costs()];
  }

  #costs(): readonly string[] {
    return this.#patterns.map(({ sheet }, index) => ` + ${this.#problem.sheets[sheet]?.cost ?? 1} x${index}`);
  }

  /** A row for each blank; no pattern counts for more of it than is wanted. */
  #rows(): readonly string[] {
    const rows = this.#problem.demand.flatMap((wanted, blank) => {
      const terms = this.#patterns.flatMap(({ counts }, index) => {
        const count = Math.min(counts[blank] ?? 0, wanted);
        return count > 0 ? [` + ${count} x${index}`] : [];
      });
      return [` c${blank}:`, ...terms, ` >= ${wanted}`];
    });
    return ['Subject To', ...rows];
  }

  #wholeSheets(): readonly string[] {
    return ['General', ...this.#patterns.map((_, index) => ` x${index}`)];
  }
}

/** A program in CPLEX LP format, a term a line. */
function program(lines: readonly string[]): string {
  return [...lines, 'End', ''].join('\n');
}

function primalOf(column: object | undefined): number {
  return column && 'Primal' in column && typeof column.Primal === 'number' ? column.Primal : 0;
}
