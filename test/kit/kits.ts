import type { CuttingBench } from '../../src/kit/bench.ts';
import { type KitOrder, type KitResult, planKit } from '../../src/kit/kit.ts';
import type { Kit } from '../../src/kit/plan.ts';
import { kitJson } from '../../src/kit/report/json.ts';
import { Length } from '../../src/measure/length.ts';
import type { Project } from '../../src/project/model.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { loadHighs } from '../../src/shape/highs.ts';
import { keptUpright } from '../../src/shape/keep-upright.ts';
import { sheetsOf } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import type { Asked, JsonStock } from './check-plan.ts';
import { cpuClock } from './cpu-clock.ts';

export const BENCH: CuttingBench = {
  kerf: Length.zero,
  trimMargin: Length.zero,
  trimmer: Length.of(12, 1, 'in'),
};

const highs = await loadHighs();

export function order(attendees: number, more: Partial<KitOrder> = {}): KitOrder {
  return { attendees, spares: 0, bench: BENCH, work: 5, ...more };
}

export function plan(project: Project, asked: KitOrder, clock: () => number = cpuClock): KitResult {
  return planKit([{ project, shapes: buildShapes(project), attendees: asked.attendees }], asked, {
    highs,
    clock,
  });
}

/** @throws when the project cannot be planned. */
export function planned(project: Project, asked: KitOrder): Kit {
  const result = plan(project, asked);
  if ('kit' in result) return result.kit;
  throw new Error(
    mergeFindings(result.findings)
      .map(({ message }) => message)
      .join('\n'),
  );
}

export function jsonStocks(kit: Kit): readonly JsonStock[] {
  const value = JSON.parse(kitJson(kit, { code: 'USD', decimals: 2 })) as { stocks: readonly JsonStock[] };
  return value.stocks;
}

/** A project of these measurements, in inches; anything else of a sheet behind them. */
export function projectOf(measurements: string, more = ''): Project {
  const sheet = `---\ntitle: Trial\nmeasurements:\n  unit: in\n${measurements}\n${more}---\nText.\n`;
  const [project] = readWorkspaceFromTexts({ 'trial/sheet.md': sheet }).projects;
  if (!project) throw new Error('no project');
  return project;
}

/** What one stock of a project is asked for, straight from the project. */
export function askedOf(project: Project, stock: string, kits: number, kerf = 0): Asked {
  const { nets } = buildShapes(project);
  const own = project.stock.get(stock);
  if (!own) throw new Error(`there is no stock ${stock}`);
  const turnable = keptUpright(own) === undefined;
  const pieces = [...project.pieces].flatMap(([id, piece]) =>
    piece.stock?.value === stock
      ? sheetsOf(nets, id).map(({ name, net }) => {
          const { width, height } = net.size;
          const rectangle = { width: width.mm, height: height.mm, count: piece.count.value * kits, turnable };
          return [name === undefined ? id : `${id}.${name}`, rectangle] as const;
        })
      : [],
  );
  const sheets = own.sheets.map(({ size }) => ({ width: size.width.value.mm, height: size.height.value.mm }));
  return { pieces: new Map(pieces), sheets, kerf };
}
