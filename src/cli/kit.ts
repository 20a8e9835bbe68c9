import { relative, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { Kit } from '../kit/plan.ts';
import { kitCsv } from '../kit/report/csv.ts';
import type { Currency } from '../kit/report/figures.ts';
import { kitJson } from '../kit/report/json.ts';
import { requestKit } from '../make/kit.ts';
import { kitFolder, makeKitFiles } from '../make/kit-files.ts';
import { sayCount } from '../proof/words.ts';
import { type KitCommandOptions, kitOrder } from './kit-order.ts';
import { costLines, kitProgressOn, stockLines, tellFindings } from './kit-telling.ts';
import { variantCounts } from './kit-variants.ts';
import { rosterIn } from './roster.ts';
import { type CommandRun, Refusal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

/** `sheetwright kit SLUG [workspace] --attendees N` */
export const run: CommandRun<KitCommandOptions> = async ([slug = '', named], options, terminal) => {
  if (options.json && options.csv) throw new Refusal('use --json or --csv, not both');
  const people = options.roster === undefined ? [] : rosterIn(options.roster, terminal.cwd);
  const progress = kitProgressOn(terminal, options);
  const reply = await requestKit({
    root: workspaceFolder(named, terminal.cwd),
    namedFrom: terminal.cwd,
    slug,
    orderFor: kitOrder(options, people),
    attendeesOf: (variants, { attendees }) => variantCounts(options.variant ?? [], variants, attendees, slug),
    clock: () => performance.now() / 1000,
    progress: progress.tell,
  });
  progress.end();
  if (reply.kind === 'findings') {
    tellFindings(reply.findings, reply.projects, options, terminal);
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
  const written = await makeKitFiles({
    kit: planned,
    site: workspace.site,
    currency,
    out,
    labels,
    people,
    browser,
  });
  if (!options.quiet) {
    const folder = relative(terminal.cwd, resolve(out, kitFolder(planned)));
    terminal.stdout.write(`${sayCount(written.length, 'file')} in ${folder || '.'}/\n`);
  }
  return 0;
};

function summary({ project, makings, attendees, spares, stocks, cost }: Kit, currency: Currency): string {
  const party = [sayCount(attendees, 'attendee'), ...(spares > 0 ? [sayCount(spares, 'spare kit')] : [])];
  const variants = makings.flatMap(({ variant, attendees: own }) =>
    variant === undefined ? [] : [`${own} × ${variant}`],
  );
  const made = variants.length > 0 ? ` (${variants.join(', ')})` : '';
  return [
    `${project.title.value}: class kit for ${party.join(' and ')}${made}`,
    ...stockLines(stocks, currency),
    ...costLines(cost, currency),
    '',
  ].join('\n');
}
