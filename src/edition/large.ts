import { loadHighs } from '../shape/highs.ts';
import type { LinearForm, Search, WholeNumberProblem } from './whole-numbers.ts';

/** A solver for problems with too many combinations to walk through. */
export type LargeSolver = (problem: WholeNumberProblem) => Search;

/** A project's edition is worked out while somebody waits: seconds for each of the two solves. */
const TIME_LIMIT = 0.1;

/** The solver for large problems, ready to be used. */
export async function largeSolver(): Promise<LargeSolver> {
  const highs = await loadHighs();
  return (problem) => {
    const solve = (text: string): ReadonlyMap<string, number> | undefined => {
      const options = { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0, time_limit: TIME_LIMIT } as const;
      const solution = highs.solve(text, options);
      if (solution.Status !== 'Optimal') return undefined;
      return new Map(
        Object.entries(solution.Columns).map(([name, column]) => [
          name,
          'Primal' in column ? column.Primal : 0,
        ]),
      );
    };
    return solveLarge(problem, solve);
  };
}

type Solve = (text: string) => ReadonlyMap<string, number> | undefined;

/** First the smallest greatest deviation, then the smallest sum within it. */
function solveLarge(problem: WholeNumberProblem, solve: Solve): Search {
  const first = solve(program(problem, 'greatest', problem.reach));
  if (!first) return { kind: 'none' };
  const greatest = first.get('z') ?? problem.reach;
  const second = solve(program(problem, 'sum', Math.round(greatest * 1e6) / 1e6)) ?? first;
  const values = problem.targets.map((_, variable) => Math.round(second.get(`x${variable}`) ?? 0));
  const deviations = values.map(
    (value, variable) =>
      (problem.weights?.[variable] ?? 1) * Math.abs(value * problem.scale - (problem.targets[variable] ?? 0)),
  );
  return {
    kind: 'best',
    best: {
      values,
      greatestDeviation: Math.max(0, ...deviations),
      sumOfDeviations: deviations.reduce((sum, each) => sum + each, 0),
    },
  };
}

/** The problem in CPLEX LP format: x the values, d their deviations, z the greatest of them. */
function program(problem: WholeNumberProblem, want: 'greatest' | 'sum', within: number): string {
  const { targets, scale, weights, equalities, atLeast } = problem;
  const variables = targets.map((_, variable) => variable);
  const deviations = variables.flatMap((variable) => {
    const weight = weights?.[variable] ?? 1;
    const target = weight * (targets[variable] ?? 0);
    const slope = weight * scale;
    return [
      `d${variable} - ${slope} x${variable} >= ${-target}`,
      `d${variable} + ${slope} x${variable} >= ${target}`,
      `z - d${variable} >= 0`,
    ];
  });
  return [
    'Minimize',
    want === 'greatest' ? ' z' : ` ${variables.map((variable) => `d${variable}`).join(' + ')}`,
    'Subject To',
    ...deviations,
    ...equalities.map((form) => row(form, '=')),
    ...atLeast.map((form) => row(form, '>=')),
    'Bounds',
    `0 <= z <= ${within}`,
    ...variables.map((variable) => `x${variable} free`),
    'General',
    ` ${variables.map((variable) => `x${variable}`).join(' ')}`,
    'End',
  ].join('\n');
}

function row({ terms, constant }: LinearForm, relation: '=' | '>='): string {
  const left = terms.map(
    ({ variable, coefficient }) => `${coefficient < 0 ? '-' : '+'} ${Math.abs(coefficient)} x${variable}`,
  );
  return `${left.join(' ')} ${relation} ${constant}`;
}
