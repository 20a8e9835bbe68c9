import { relative, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { Currency } from '../kit/report/figures.ts';
import { requestSeason, type SeasonRequest } from '../make/season.ts';
import { makeSeasonFiles, SEASON_FOLDER } from '../make/season-files.ts';
import type { Project, Workspace } from '../project/model.ts';
import { sayCount } from '../proof/words.ts';
import { seasonCsv, seasonJson } from '../season/report.ts';
import type { Season } from '../season/season.ts';
import { benchFor, MOST_PEOPLE, wholeNumber, workOf } from './kit-order.ts';
import { costLines, kitProgressOn, stockLines, tellFindings } from './kit-telling.ts';
import { today } from './make.ts';
import { type CommandRun, type CommonOptions, Refusal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

type SeasonOptions = CommonOptions & {
  readonly from?: string;
  readonly to?: string;
  readonly attendees?: string;
  readonly session?: readonly string[];
  readonly variant?: readonly string[];
  readonly spares: string;
  readonly work: string;
  readonly kerf?: string;
  readonly trimMargin?: string;
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly out: string;
  readonly browser?: string;
};

/** `sheetwright season [workspace]` */
export const run: CommandRun<SeasonOptions> = async ([named], options, terminal) => {
  if (options.json && options.csv) throw new Refusal('use --json or --csv, not both');
  const spares = wholeNumber('--spares', options.spares, 0, MOST_PEOPLE);
  const work = workOf(options.work);
  const from = options.from === undefined ? today() : dayOf('--from', options.from);
  const to = options.to === undefined ? undefined : dayOf('--to', options.to);
  if (to !== undefined && to < from) throw new Refusal(`--to ${to} is before ${from}, the first day`);
  const progress = kitProgressOn(terminal, options);
  const reply = await requestSeason({
    root: workspaceFolder(named, terminal.cwd),
    namedFrom: terminal.cwd,
    from,
    to,
    attendeesAt: attendeesBy(options),
    variantAt: variantBy(options),
    orderFor: (first, workspace) => ({ spares, work, bench: benchFor(options, first, workspace) }),
    clock: () => performance.now() / 1000,
    progress: progress.tell,
  });
  progress.end();
  if (reply.kind === 'none')
    throw new Refusal(
      `no project has a session from ${from}${to ? ` to ${to}` : ' on'}: write "session: ${from}" in a sheet, or give --from and --to`,
    );
  if (reply.kind === 'findings') {
    tellFindings(reply.findings, reply.projects, options, terminal);
    return 1;
  }
  const { season, currency, workspace } = reply;
  if (options.json || options.csv) {
    terminal.stdout.write((options.json ? seasonJson : seasonCsv)(season, currency));
    return 0;
  }
  const out = resolve(terminal.cwd, options.out);
  if (!options.quiet) terminal.stdout.write(summary(season, currency));
  const written = await makeSeasonFiles({
    season,
    site: workspace.site,
    currency,
    out,
    browser: options.browser,
  });
  if (!options.quiet) {
    const folder = relative(terminal.cwd, resolve(out, SEASON_FOLDER));
    terminal.stdout.write(`${sayCount(written.length, 'file')} in ${folder}/\n`);
  }
  return 0;
};

/** A day of the calendar, as it is written in a project. */
function dayOf(option: string, text: string): string {
  const day = text.trim();
  const date = new Date(`${day}T00:00:00Z`);
  const isDay = /^\d{4}-\d{2}-\d{2}$/u.test(day) && !Number.isNaN(date.valueOf());
  if (isDay && date.toISOString().startsWith(day)) return day;
  throw new Refusal(`${option} takes a day such as 2026-10-15, not "${text}"`);
}

/** `--session bulb-box=14` for one, `--attendees` for all others, and where that is not given what the schedule says. */
function attendeesBy({
  attendees,
  session = [],
}: SeasonOptions): (project: Project, workspace: Workspace) => number {
  const usual = attendees === undefined ? undefined : wholeNumber('--attendees', attendees, 1, MOST_PEOPLE);
  const own = new Map(session.map(sessionWish));
  return ({ slug }, { site, projects }) => {
    const slugs = projects.map((project) => project.slug);
    const unknown = [...own.keys()].find((each) => !slugs.includes(each));
    if (unknown !== undefined) throw new Refusal(`--session ${unknown}: there are ${slugs.join(', ')}`);
    const people = own.get(slug) ?? usual ?? site.sessions?.people?.value;
    if (people !== undefined) return people;
    throw new Refusal(`say how many come: --attendees 12, or --session ${slug}=12`);
  };
}

function sessionWish(text: string): readonly [string, number] {
  const [, slug, number] = /^([^=]+)=(.+)$/u.exec(text) ?? [];
  if (slug === undefined || number === undefined)
    throw new Refusal(`--session takes a project and how many come, such as bulb-box=14, not "${text}"`);
  return [slug.trim(), wholeNumber(`--session ${slug.trim()}`, number, 0, MOST_PEOPLE)];
}

/** `--variant bulb-box=large`. @throws Refusal for a project or a variant that there isn't. */
function variantBy({ variant = [] }: SeasonOptions): NonNullable<SeasonRequest['variantAt']> {
  const asked = new Map(
    variant.map((text) => {
      const [, slug = '', name = ''] = /^([^=]+)=(.+)$/su.exec(text) ?? [];
      if (name !== '') return [slug.trim(), name.trim()] as const;
      throw new Refusal(`--variant takes a project and its variant, such as bulb-box=large, not "${text}"`);
    }),
  );
  return ({ slug }, variants, { projects }) => {
    const slugs = projects.map((project) => project.slug);
    const unknown = [...asked.keys()].find((each) => !slugs.includes(each));
    if (unknown !== undefined) throw new Refusal(`--variant ${unknown}: there are ${slugs.join(', ')}`);
    const name = asked.get(slug);
    if (name === undefined || variants.includes(name)) return name;
    throw new Refusal(
      variants.length === 0
        ? `${slug} has no variants: leave --variant ${slug}=${name} out`
        : `${slug} has no variant named "${name}"; its variants are: ${variants.join(', ')}`,
    );
  };
}

function summary({ sessions, stocks, cost }: Season, currency: Currency): string {
  const width = Math.max(...sessions.map(({ project }) => project.slug.length));
  return [
    `the season: ${sayCount(sessions.length, 'session')}`,
    ...sessions.map(
      ({ project, session, attendees, variant }) =>
        `  ${session.date}  ${project.slug.padEnd(width)}  ${sayCount(attendees, 'attendee')}${variant === undefined ? '' : `, ${variant}`}`,
    ),
    ...stockLines(stocks, currency),
    ...costLines(cost, currency, 'each attendee of a session'),
    '',
  ].join('\n');
}
