import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { seasonWords } from '../../src/kit-pages/season-page.ts';
import { requestSeason, type SeasonReply } from '../../src/make/season.ts';
import type { Project } from '../../src/project/model.ts';
import { seasonJson } from '../../src/season/report.ts';
import type { Season } from '../../src/season/season.ts';
import { preparationCalendar } from '../../src/site/preparation-calendar.ts';
import { demoCopy, folderWith, sheetwright } from '../cli/terminal.ts';
import { labels } from '../handout/sample.ts';
import { readPdf } from '../print/read-pdf.ts';
import { type Asked, type JsonStock, wrongWith } from './check-plan.ts';
import { cpuClock } from './cpu-clock.ts';
import { askedOf, BENCH, order, planned } from './kits.ts';

const PEOPLE = 18;
const EIGHT = [
  'harbour-light-bookmark',
  'shortbread-tray',
  'seed-packet-keeper',
  'note-card-band',
  'three-layer-thank-you',
  'gate-fold-valentine',
  'short-pencil-box',
  'seed-paper-folder',
];

/** The first eight sessions of the demo. */
function requestEight(work: number): Promise<SeasonReply> {
  const root = fileURLToPath(new URL('../../projects', import.meta.url));
  return requestSeason({
    root,
    namedFrom: root,
    from: '2026-10-15',
    to: '2027-04-01',
    attendeesAt: ({ slug }) => (EIGHT.includes(slug) ? PEOPLE : 0),
    orderFor: () => ({ spares: 0, bench: BENCH, work }),
    clock: cpuClock,
  });
}

let reply: Extract<SeasonReply, { kind: 'planned' }>;
let season: Season;
beforeAll(async () => {
  const planned = await requestEight(2);
  if (planned.kind !== 'planned') throw new Error(planned.kind);
  reply = planned;
  season = planned.season;
});

/** What each paper is asked for by all projects, straight from them: piece names with the project before them. */
function askedTogether(stock: string, projects: readonly Project[]): Asked {
  const each = projects
    .filter(
      (project) =>
        project.stock.has(stock) && [...project.pieces.values()].some((p) => p.stock?.value === stock),
    )
    .map((project) => ({ project, asked: askedOf(project, stock, PEOPLE) }));
  const pieces = each.flatMap(({ project, asked }) =>
    [...asked.pieces].map(([name, wanted]) => [`${project.slug}/${name}`, wanted] as const),
  );
  return { pieces: new Map(pieces), sheets: each[0]?.asked.sheets ?? [], kerf: 0 };
}

describe('a season of eight sessions for 18 people', () => {
  it('can be cut as it says: every piece of every session, no more', () => {
    const projects = season.sessions.map(({ project }) => project);
    expect(projects.map(({ slug }) => slug).toSorted()).toEqual(EIGHT.toSorted());
    const { stocks } = JSON.parse(seasonJson(season, reply.currency)) as { stocks: readonly JsonStock[] };
    expect(stocks.length).toBeGreaterThan(8);
    for (const stock of stocks) expect(wrongWith(stock, askedTogether(stock.stock, projects))).toEqual([]);
  });

  it('takes fewer sheets than eight kits by themselves', () => {
    const single = season.sessions.map(({ project }) =>
      planned(project, order(PEOPLE)).stocks.reduce((sum, { total }) => sum + total, 0),
    );
    const apart = single.reduce((sum, sheets) => sum + sheets, 0);
    const together = season.stocks.reduce((sum, { total }) => sum + total, 0);
    // 193 and 187 were seen; how few depends on the time there is.
    expect(together).toBeLessThan(apart);
  });

  it('costs what whole packs come to, reckoned from the prices as they are written', () => {
    const packs = season.stocks.flatMap(({ stock, layouts }) => {
      const [sheet] = stock.sheets;
      const sheets = layouts.reduce((sum, { count }) => sum + count, 0);
      const price = Number(sheet?.price?.value.minor);
      const pack = sheet?.pack?.value ?? 1;
      return [Math.ceil(sheets / pack) * pack * price];
    });
    const paper = season.shopping.filter(({ kind }) => kind === 'stock');
    expect(paper.map(({ cost }) => Number(cost?.minor))).toEqual(packs);
    const all = season.shopping.reduce((sum, { cost }) => sum + Number(cost?.minor ?? 0), 0);
    expect(Number(season.cost.toBuy.total?.minor)).toBe(all);
  });

  it('has every piece cut before the day it is for, on a sheet that is cut once', () => {
    const cuts = season.preparations.flatMap((each) => (each.kind === 'cut' ? [each] : []));
    for (const cut of cuts) expect(cut.date < cut.session.date).toBe(true);
    const sheets = cuts.flatMap((cut) => cut.sheets).reduce((sum, { count }) => sum + count, 0);
    expect(sheets).toBe(season.stocks.reduce((sum, { total }) => sum + total, 0));
    // What one puts aside another takes, and the other way round; never later than it is needed.
    const kept = cuts.flatMap(({ date, kept: pieces }) =>
      pieces.map(({ piece, count }) => ({ date, piece, count })),
    );
    const taken = cuts.flatMap(({ taken: pieces }) => pieces);
    expect(kept.length).toBeGreaterThan(0);
    const total = (list: readonly { readonly count: number }[]): number =>
      list.reduce((sum, { count }) => sum + count, 0);
    expect(total(kept)).toBe(total(taken));
    for (const { date, piece } of kept) expect(date < (piece.session?.date ?? '')).toBe(true);
  });

  it('has a calendar that another program reads: what to do, each on its day', () => {
    const { site } = reply.workspace;
    const words = seasonWords({ season, currency: reply.currency, labels } as Parameters<
      typeof seasonWords
    >[0]);
    const text = preparationCalendar(season, site, words);
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    const days = events.map((event) => String(event.getFirstPropertyValue('dtstart')));
    expect(days).toEqual(season.preparations.map(({ date }) => date));
    expect(new Set(events.map((event) => event.getFirstPropertyValue('uid'))).size).toBe(days.length);
  });
});

describe('sheetwright season', () => {
  const demo = demoCopy();
  /** Nothing of it is written. */
  const season = (...argv: string[]) => sheetwright(demo, 'season', 'projects', ...argv);

  it('writes and prints its pages in the typeface of all others', async () => {
    const folder = demoCopy();
    const days = ['--from', '2027-01-01', '--to', '2027-01-20', '--session', 'note-card-band=5'];
    const { code } = await sheetwright(folder, 'season', 'projects', ...days, '--quiet', '--work', '1');
    expect(code).toBe(0);
    const written = join(folder, 'dist/host/season');
    const page = readFileSync(join(written, 'index.html'), 'utf8');
    expect(page).toMatch(/@font-face[^}]+"Public Sans"/u);
    // The same people may come each time: they are not added up.
    expect(page).toContain('2 sessions with 5 to 12 attendees each');
    expect(page).toMatch(/\d per attendee and session/u);
    const { fonts } = await readPdf(readFileSync(join(written, 'season.pdf')));
    expect(fonts.filter(({ name }) => !name.includes('PublicSans'))).toEqual([]);
  });

  it('prints JSON and nothing else, with the people of the schedule or its own', async () => {
    const { code, out } = await season(
      ...['--from', '2026-12-01', '--to', '2027-01-31', '--session', 'note-card-band=5', '--json', '--quiet'],
      ...['--work', '1'],
    );
    expect(code).toBe(0);
    expect(JSON.parse(out).sessions).toEqual([
      { project: 'seed-packet-keeper', date: '2026-12-10', attendees: 12 },
      { project: 'note-card-band', date: '2027-01-07', attendees: 5 },
      { project: 'three-layer-thank-you', date: '2027-01-07', attendees: 12 },
    ]);
  });

  it("makes the variant that is named, the first where none is, and speaks each project's own unit", async () => {
    const sheet = (day: string, text: string): string =>
      `---\ntitle: Trial\nsession: ${day}\n${text}\n---\nText.\n`;
    const folder = folderWith({
      'box/sheet.md': sheet(
        '2027-01-02',
        'supplies: [{ item: Twine, each: 24 in, pack: 5 yd }]\nmeasurements:\n  unit: in\n  stock: { card: { sheet: 8 1/2 x 11 } }\n  pieces: { box: { stock: card, cut: 3 x 4 } }\n  variants: { small: {}, large: { box: { cut: 4 x 4 } } }',
      ),
      'label/sheet.md': sheet(
        '2027-01-01',
        'supplies: [{ item: Tape, each: 12 cm, pack: 5 m }]\nmeasurements:\n  unit: mm\n  stock: { paper: { sheet: A4 } }\n  pieces: { label: { stock: paper, cut: 50 x 70 } }',
      ),
    });
    const run = (...argv: string[]) =>
      sheetwright(folder, 'season', '.', '--from', '2027-01-01', '--attendees', '2', ...argv);
    const made = async (...argv: string[]): Promise<unknown> =>
      JSON.parse((await run('--json', '--quiet', ...argv)).out).sessions.map(
        ({ variant }: { variant?: string }) => variant,
      );
    expect(await made()).toEqual([undefined, 'small']);
    expect(await made('--variant', 'box=large')).toEqual([undefined, 'large']);
    const rows = (await run('--csv', '--quiet')).out.split('\r\n').map((row) => row.split(','));
    const bought = rows.filter(([list]) => list === 'buy');
    expect(bought.map((row) => [row[4], row[13]])).toEqual([
      ['Paper', '1'],
      ['Card', '1'],
      ['Tape', '24 cm'],
      ['Twine', '48 in'],
    ]);
    for (const wrong of ['box=huge', 'label=large', 'bix=large', 'box'])
      expect(await run('--variant', wrong)).toMatchObject({ code: 2 });
  });

  it.each([
    [['--from', '2026-02-30'], /--from takes a day such as/u],
    [['--from', '2026-10-15', '--to', '2026-10-01'], /before/u],
    [['--from', '2031-01-01'], /no project has a session/u],
    [['--from', '2026-10-15', '--session', 'no-such=3'], /there are/u],
    [['--from', '2026-10-15', '--session', 'bulb-box'], /such as bulb-box=14/u],
    [['--json', '--csv'], /not both/u],
  ])('refuses %j', async (argv, message) => {
    const { code, err } = await season(...argv);
    expect([code, err]).toEqual([2, expect.stringMatching(message)]);
  });
});
