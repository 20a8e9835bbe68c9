import { relative, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { KitProgress } from '../kit/kit.ts';
import type { Kit, StockPlan } from '../kit/plan.ts';
import { kitCsv } from '../kit/report/csv.ts';
import { type Currency, moneyFigure } from '../kit/report/figures.ts';
import { kitJson } from '../kit/report/json.ts';
import { requestKit } from '../make/kit.ts';
import { kitFolder, makeKitFiles } from '../make/kit-files.ts';
import type { Project } from '../project/model.ts';
import type { Money } from '../project/stock.ts';
import { printFindings } from '../proof/print.ts';
import type { Told } from '../proof/told.ts';
import { type KitCommandOptions, kitOrder } from './kit-order.ts';
import { variantCounts } from './kit-variants.ts';
import { type CommandRun, type CommonOptions, count, inkFor, Refusal, type Terminal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

/** `sheetwright kit SLUG [workspace] --attendees N` */
export const run: CommandRun<KitCommandOptions> = async ([slug = '', named], options, terminal) => {
  if (options.json && options.csv)
    throw new Refusal('ask for --json or for --csv: only one of them can be printed');
  const progress = kitProgressOn(terminal, options);
  const reply = await requestKit({
    root: workspaceFolder(named, terminal.cwd),
    namedFrom: terminal.cwd,
    slug,
    orderFor: kitOrder(options),
    attendeesOf: (variants, { attendees }) => variantCounts(options.variant ?? [], variants, attendees, slug),
    clock: () => performance.now() / 1000,
    progress: progress.tell,
  });
  progress.end();
  if (reply.kind === 'findings') {
    tellFindings(reply.findings, reply.project, options, terminal);
    return 1;
  }
  const { kit: planned, currency, workspace } = reply;
  if (options.json || options.csv) {
    terminal.stdout.write((options.json ? kitJson : kitCsv)(planned, currency));
    return 0;
  }
  const out = resolve(terminal.cwd, options.out);
  const { labels = false, browser } = options;
  if (!options.quiet) terminal.stdout.write(summary(planned, currency));
  const written = await makeKitFiles({ kit: planned, site: workspace.site, currency, out, labels, browser });
  if (!options.quiet) {
    const folder = relative(terminal.cwd, resolve(out, kitFolder(planned)));
    terminal.stdout.write(`${count(written.length, 'file')} in ${folder || '.'}/\n`);
  }
  return 0;
};

/** How a search is told: `tell` at each better plan, `end` once. */
type KitTelling = { readonly tell: KitProgress; readonly end: () => void };

/** One line that changes on a terminal, a plain line each elsewhere, nothing when quiet. */
function kitProgressOn({ stderr }: Terminal, options: CommonOptions): KitTelling {
  if (options.quiet) return { tell: () => {}, end: () => {} };
  const isTerminal = stderr.isTTY === true;
  return {
    tell: (stock, { cost, bound, isPriced }) => {
      const found = isPriced
        ? `a plan found, the cheapest costs at least ${Math.floor((100 * bound) / cost)} % of this one`
        : `${cost} found, at least ${bound} needed`;
      const text = `planning ${stock}: ${found}`;
      stderr.write(isTerminal ? `\r\u001b[K${text}` : `${text}\n`);
    },
    end: () => {
      if (isTerminal) stderr.write('\r\u001b[K');
    },
  };
}

/** With `--json` or `--csv` nothing but that may stand on the standard output. */
function tellFindings(
  findings: readonly Told[],
  project: Project,
  options: KitCommandOptions,
  terminal: Terminal,
): void {
  const isData = options.json === true || options.csv === true;
  const ink = inkFor(terminal, isData ? { ...options, color: false } : options);
  const text = printFindings(findings, {
    ink,
    projects: [project],
    summary: options.quiet !== true && !isData,
  });
  (isData ? terminal.stderr : terminal.stdout).write(text);
}

function summary({ project, makings, attendees, spares, stocks, cost }: Kit, currency: Currency): string {
  const sum = (money: Money | undefined): string => (money ? moneyText(money, currency) : 'cost unknown');
  const without = (names: readonly string[]): string =>
    names.length > 0 ? `, without ${names.join(', ')}` : '';
  const each = cost.perAttendee ? `, ${sum(cost.perAttendee)} for each attendee` : '';
  const party = [count(attendees, 'attendee'), ...(spares > 0 ? [count(spares, 'spare kit')] : [])];
  const variants = makings.flatMap(({ variant, attendees: own }) =>
    variant === undefined ? [] : [`${own} × ${variant}`],
  );
  const made = variants.length > 0 ? ` (${variants.join(', ')})` : '';
  const width = Math.max(...stocks.map(({ stock }) => stock.name.length));
  return [
    `${project.title.value}: class kit for ${party.join(' and ')}${made}`,
    ...stocks.map((plan) => `  ${plan.stock.name.padEnd(width)}  ${standing(plan, currency)}`),
    `to buy now: ${sum(cost.toBuy.total)}${without(cost.toBuy.without)}`,
    `used by the kits: ${sum(cost.used.total)}${each}${without(cost.used.without)}`,
    ...(cost.price
      ? [`price at a margin of ${cost.price.margin.toString()} %: ${sum(cost.price.each)}`]
      : []),
    '',
  ].join('\n');
}

function moneyText(money: Money, { code, decimals }: Currency): string {
  return `${moneyFigure(money, decimals)} ${code}`;
}

/** `24 sheets, proven the fewest`. */
function standing({ total, bound, proven, price, layouts, seconds }: StockPlan, currency: Currency): string {
  const least = price ? moneyText(price.bound, currency) : bound;
  const proof = proven ? `proven the ${price ? 'cheapest' : 'fewest'}` : `at least ${least} are needed`;
  return `${count(total, 'sheet')} in ${count(layouts.length, 'layout')}, ${proof} (${seconds.toFixed(1)} s)`;
}
