/**
 * Measures the class kit: `node bench/kit.ts` (Node 22.18 or later, which runs TypeScript as it is).
 *
 * Every demo project at 24 attendees, stock by stock; then ten made-up projects of 20 kinds of pieces at 200 attendees,
 * 5 million steps each. Prints sheets, the bound that is proven, and seconds.
 */
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { type KitOrder, planKit } from '../src/kit/kit.ts';
import type { Kit } from '../src/kit/plan.ts';
import { planSheets } from '../src/kit/solver/plan-sheets.ts';
import type { CuttingProblem } from '../src/kit/solver/problem.ts';
import { Work } from '../src/kit/solver/work.ts';
import { Length } from '../src/measure/length.ts';
import type { Project } from '../src/project/model.ts';
import { mergeFindings } from '../src/proof/tell.ts';
import { buildShapes } from '../src/shape/build.ts';
import { loadHighs } from '../src/shape/highs.ts';
import { loadWorkspace } from '../src/shape/workspace.ts';

const clock = (): number => performance.now() / 1000;
const highs = await loadHighs();
const { projects, site } = await loadWorkspace(fileURLToPath(new URL('../projects', import.meta.url)));

const ORDER: KitOrder = {
  attendees: 24,
  spares: 0,
  work: 5,
  bench: { kerf: Length.zero, trimMargin: Length.zero, trimmer: site.bench.trimmer.value },
};

function kitOf(project: Project): Kit {
  const result = planKit([{ project, shapes: buildShapes(project), attendees: ORDER.attendees }], ORDER, {
    highs,
    clock,
  });
  if ('kit' in result) return result.kit;
  throw new Error(
    mergeFindings(result.findings)
      .map(({ message }) => message)
      .join('; '),
  );
}

/** Twenty kinds of pieces on a letter sheet in sixteenths of an inch; the same in every run. */
function largeProblem(seed: number): CuttingProblem {
  let state = seed;
  const below = (most: number): number => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return Math.floor((state / 4294967296) * most);
  };
  const blanks = Array.from({ length: 20 }, () => ({
    width: 8 + below(72),
    height: 8 + below(90),
    turnable: seed % 2 === 0,
  }));
  return { blanks, demand: blanks.map(() => 200), sheets: [{ width: 136, height: 176, cost: 1 }] };
}

function row(...cells: readonly (string | number)[]): void {
  const [name = '', stock = '', ...numbers] = cells.map(String);
  console.log([name.padEnd(24), stock.padEnd(20), ...numbers.map((cell) => cell.padStart(9))].join(' '));
}

row('project', 'stock', 'sheets', 'bound', 'proven', 'layouts', 'seconds');
for (const project of projects) {
  for (const { stock, total, bound, proven, layouts, seconds } of kitOf(project).stocks)
    row(
      project.slug,
      stock.id.value,
      total,
      bound,
      proven ? 'yes' : 'no',
      layouts.length,
      seconds.toFixed(2),
    );
}
for (let seed = 1; seed <= 10; seed += 1) {
  const start = clock();
  const { cost, bound, batches } = planSheets(largeProblem(seed), { highs, work: new Work(5e6) });
  const seconds = (clock() - start).toFixed(2);
  row(
    '20 kinds, 200 people',
    `made up, ${seed}`,
    cost,
    bound,
    cost === bound ? 'yes' : 'no',
    batches.length,
    seconds,
  );
}
