import type highs from 'highs';
import type { Basket } from './bounds.ts';
import type { Effort } from './effort.ts';
import {
  type Batch,
  type CuttingProblem,
  hasChoice,
  type Pattern,
  type SheetSource,
  type Spending,
  stillWanted,
} from './problem.ts';
import type { Work } from './work.ts';

/** HiGHS, a solver of linear and whole-number programs, loaded. */
export type LinearSolver = Awaited<ReturnType<typeof highs.default>>;

/** A choice of whole sheets. `isBest` where it is known that there is no better one. */
type SheetChoice = { readonly batches: readonly Batch[]; readonly isBest: boolean };

/** An easy plan need not be the very easiest. */
const NEARLY = { mip_rel_gap: 0.03 } as const;

/** Steps for each term of a program: to find prices with it, to look at a node of its tree, and at the first, which takes most. */
const PRICING = 5;
const BRANCHING = 3;
const ROOT = 200;

/** How near to the value of a solution that was found counts as the same. */
const NEAR = 1e-6;

/** What a size's sheets and each blank cost at the least, in parts of sheets. */
export type Prices = {
  readonly blanks: readonly number[];
  /** Of one sheet of each size: what it costs where it has to be bought, less where it lies there. */
  readonly sheets: readonly number[];
  /** Some of what is wanted is left out, for want of sheets. */
  readonly isShort: boolean;
};

/** The choice among known patterns: how many sheets to cut by each, so that all that is wanted is cut. */
export class Master {
  readonly #problem: CuttingProblem;
  readonly #highs: LinearSolver;
  readonly #work: Work;
  readonly #patterns: Pattern[] = [];
  readonly #known = new Set<string>();
  /** What using up one sheet more counts beside a cost of 1. */
  #thrift = 0;

  constructor(problem: CuttingProblem, highs: LinearSolver, work: Work) {
    this.#problem = problem;
    this.#highs = highs;
    this.#work = work;
  }

  /** From now on plans at one cost are told apart by what they use up; few use twice as much as this one. */
  beThriftier({ used }: Spending): void {
    if (hasChoice(this.#problem)) this.#thrift = 0.5 / (used + 1);
  }

  /** @returns false when it gives nothing, or nothing that is not known. */
  add(pattern: Pattern): boolean {
    const key = `${pattern.sheet}: ${pattern.counts.join()}`;
    if (this.#known.has(key) || pattern.counts.every((count) => count === 0)) return false;
    this.#known.add(key);
    this.#patterns.push(pattern);
    return true;
  }

  /** Where parts of sheets are allowed, and packs may be opened in part. Undefined when the solver gives up. */
  relax(): Prices | undefined {
    const prices = this.#prices([...this.#cheapest(this.#thrift), ...this.#rows()]);
    const sheets = this.#problem.sheets.map(({ cost, pack = 1, there = 0, use = 1 }, sheet) => {
      const bought = pack > 0 && there === 0 ? cost / pack : (prices?.sheets[sheet] ?? 0);
      return bought + this.#thrift * use;
    });
    return prices && { ...prices, sheets };
  }

  /** With the sheets that are there and in a basket alone: as little left out as can be. */
  relaxWithin({ packs }: Basket): Prices | undefined {
    const { blanks, sheets } = this.#problem;
    const room = Math.max(...blanks.map(({ width, height }) => width * height));
    const missing = blanks.map(({ width, height }, blank) => ` + ${(width * height) / room} s${blank}`);
    const most = sheets.map((_, sheet) => ` k${sheet} <= ${packs[sheet] ?? 0}`);
    return this.#prices(['Minimize', ' missing:', ...missing, ...this.#rows(true), 'Bounds', ...most]);
  }

  /**
   * Whole sheets at the least cost found in about so many steps.
   * @param isThrifty of those the ones that use up little; what is far dearer to use up may then pass for dearer.
   */
  choose(steps: number, isThrifty: boolean): SheetChoice | undefined {
    const thrift = isThrifty ? this.#thrift : 0;
    // Costs are whole numbers: what is within half of the best is the best.
    const exactly = { mip_rel_gap: 0, mip_abs_gap: thrift > 0 ? thrift / 2 : 0.5 };
    return this.#solve([...this.#cheapest(thrift), ...this.#rows(), ...this.#wholeSheets()], steps, exactly);
  }

  /** Whole sheets that cost and use up no more, with about the least effort for the person at the trimmer. */
  easiest(most: Spending, steps: number, effortOf: (pattern: Pattern) => Effort): SheetChoice | undefined {
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
      ` <= ${most.cost}`,
      ' used:',
      ...this.#uses(1),
      ` <= ${most.used}`,
      ...needed.map((each, index) => ` u${index}: x${index} - ${each} y${index} <= 0`),
      'Bounds',
      ...needed.map((each, index) => ` 0 <= x${index} <= ${each}`),
      ...this.#wholeSheets(),
      'Binary',
      ...this.#patterns.map((_, index) => ` y${index}`),
    ];
    return this.#solve(lines, steps, NEARLY);
  }

  #prices(lines: readonly string[]): Prices | undefined {
    this.#work.spend(lines.length * PRICING);
    const solution = this.#highs.solve(program(lines), { output_flag: false });
    if (solution.Status !== 'Optimal') return undefined;
    const { demand, sheets } = this.#problem;
    const prices = solution.Rows.map((row) => ('Dual' in row ? Math.abs(row.Dual) : 0));
    return {
      blanks: prices.slice(0, demand.length),
      sheets: sheets.map((_, sheet) => prices[demand.length + sheet] ?? 0),
      isShort: demand.some((_, blank) => primalOf(solution.Columns[`s${blank}`]) > 1e-6),
    };
  }

  #solve(lines: readonly string[], steps: number, exactness: object): SheetChoice | undefined {
    const node = lines.length * BRANCHING;
    const root = lines.length * ROOT;
    const nodes = Math.max(1, Math.floor((steps - root) / node));
    const options = { output_flag: false, mip_max_nodes: nodes, ...exactness };
    const first = this.#highs.solve(program(lines), options);
    // The package has no word for HiGHS's "solution limit", and then leaves the solution out: the same way there again.
    const isCut = first.Status === 'Unknown' && first.ObjectiveValue < Number.MAX_VALUE;
    const objective_target = first.ObjectiveValue + NEAR;
    const again = isCut ? { ...options, objective_target } : undefined;
    const { Columns, Status } = again ? this.#highs.solve(program(lines), again) : first;
    // It does not say how many nodes it took: all of them where it did not come to its end.
    this.#work.spend(root + (Status === 'Optimal' ? 0 : nodes * node));
    const batches = this.#patterns.flatMap((pattern, index) => {
      const count = Math.round(primalOf(Columns[`x${index}`]));
      return count > 0 ? [{ pattern, count }] : [];
    });
    const isEnough = stillWanted(this.#problem.demand, batches).every((wanted) => wanted === 0);
    return isEnough ? { batches, isBest: Status === 'Optimal' } : undefined;
  }

  #cheapest(thrift: number): readonly string[] {
    return ['Minimize', ' spent:', ...this.#costs(), ...(thrift > 0 ? this.#uses(thrift) : [])];
  }

  #costs(): readonly string[] {
    return this.#problem.sheets.map(({ cost }, sheet) => ` + ${cost} k${sheet}`);
  }

  #uses(of: number): readonly string[] {
    return this.#patterns.map(
      ({ sheet }, index) => ` + ${of * (this.#problem.sheets[sheet]?.use ?? 1)} x${index}`,
    );
  }

  /**
   * A row for each blank; no pattern counts for more of it than is wanted. Then one for each size: as many sheets as are
   * there and in the packs that are bought.
   * @param isShort whether some of what is wanted may be missing.
   */
  #rows(isShort = false): readonly string[] {
    const { demand, sheets } = this.#problem;
    const rows = demand.flatMap((wanted, blank) => {
      const terms = this.#patterns.flatMap(({ counts }, index) => {
        const count = Math.min(counts[blank] ?? 0, wanted);
        return count > 0 ? [` + ${count} x${index}`] : [];
      });
      return [` c${blank}:`, ...terms, ...(isShort ? [` + s${blank}`] : []), ` >= ${wanted}`];
    });
    return ['Subject To', ...rows, ...sheets.flatMap((source, sheet) => this.#supplyOf(source, sheet))];
  }

  #supplyOf({ pack = 1, there = 0 }: SheetSource, size: number): readonly string[] {
    const terms = this.#patterns.flatMap(({ sheet }, index) => (sheet === size ? [` + x${index}`] : []));
    return [` p${size}:`, ...terms, ` - ${pack} k${size} <= ${there}`];
  }

  #wholeSheets(): readonly string[] {
    const packs = this.#problem.sheets.map((_, sheet) => ` k${sheet}`);
    return ['General', ...this.#patterns.map((_, index) => ` x${index}`), ...packs];
  }
}

/** A program in CPLEX LP format, a term a line. */
function program(lines: readonly string[]): string {
  return [...lines, 'End', ''].join('\n');
}

function primalOf(column: object | undefined): number {
  return column && 'Primal' in column && typeof column.Primal === 'number' ? column.Primal : 0;
}
