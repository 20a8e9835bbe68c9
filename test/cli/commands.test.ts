import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { flagsOf } from '../../src/recall/engine.ts';
import { folderWith, sheetwright } from './terminal.ts';

const sheetWith = (front: string): string => `---
title: Card
session: 2026-12-10
measurements:
  unit: in
  stock: { cream: { name: Cream, sheet: 8 1/2 x 11, price: 0.40 } }
  pieces:
    card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { front: B1 } }
    front: { stock: cream, cut: ${front}, on: card.front }
---
A card.

## Score the card
Score :piece[card].

## Stick the front
Stick :piece[front] on.
`;

/** One project that is in order, that has a warning, or that has an error. */
const SHEETS = {
  sound: sheetWith('4 x 5 1/4'),
  uneven: sheetWith('4 x 5 1/8'),
  wrong: sheetWith('4 1/2 x 5 1/4'),
};

type Row = readonly [
  sheet: keyof typeof SHEETS,
  line: string,
  code: 0 | 1 | 2,
  /** In what is printed; of the standard error where it exits with 2. */
  says: RegExp,
  /** Files that are there afterward; one that must not be has a `!` before it. */
  files?: readonly string[],
];

const PAGE = 'dist/site/card/index.html';
const LEDGER = 'projects/card/revisions.yaml';
const KIT = 'dist/host/card-kit-2';
const NO_BROWSER = '--browser /no/such/browser';
const NOT_FOUND = /there is no file \/no\/such\/browser/u;

const TABLE: Readonly<Record<string, readonly Row[]>> = {
  proof: [
    ['sound', 'proof', 0, /^nothing found in 1 project\n$/u],
    ['uneven', 'proof', 0, /warning .*\[uneven-reveal\][\s\S]*1 warning in 1 of 1 project/u],
    ['wrong', 'proof', 1, /error .*\[layer-overhang\]/u],
    ['uneven', 'proof --strict', 1, /warning .*\[uneven-reveal\]/u],
    ['wrong', 'proof --json', 1, /^\[\n?\s*\{[\s\S]*"rule": ?"layer-overhang"[\s\S]*\]\n$/u],
    ['sound', 'proof --json', 0, /^\[\]\n$/u],
    ['sound', 'proof --editions', 0, /edition mm/u],
    ['sound', 'proof --quiet', 0, /^$/u],
    ['uneven', 'proof --quiet --no-color', 0, /^projects\/card\/sheet\.md:9:\d+ {2}warning/u],
    ['sound', 'proof nowhere', 2, /no projects in nowhere/u],
    ['sound', 'proof projects more', 2, /too many arguments/u],
    ['sound', 'proof --loud', 2, /unknown option '--loud'/u],
  ],
  make: [
    [
      'sound',
      'make --no-pdf',
      0,
      /1 project up to date, \d+ files new or changed, in dist\/\nopen dist\/site\/index\.html to see them\n$/u,
      [PAGE],
    ],
    ['sound', 'make --no-pdf --quiet', 0, /^$/u, [PAGE]],
    ['sound', 'make --no-pdf --out elsewhere --no-color', 0, /in elsewhere\//u, ['!dist', 'elsewhere/site']],
    ['sound', 'make --no-pdf --all', 0, /1 project up to date/u, [PAGE]],
    ['sound', 'make --no-pdf --shard 2/2', 0, /0 projects up to date/u, ['!dist/site']],
    [
      'sound',
      'make --browser-endpoint ws://127.0.0.1:9/x',
      2,
      /no browser answers at ws:\/\/127\.0\.0\.1:9\/x/u,
      [`!${PAGE}`],
    ],
    ['sound', 'make --no-pdf --why', 0, /^site\/card\/index\.html new: it was not made before$/mu, [PAGE]],
    ['wrong', 'make --no-pdf', 1, /not updated because of errors: card/u, [`!${PAGE}`]],
    ['uneven', 'make --no-pdf', 0, /1 project up to date/u, [PAGE]],
    ['uneven', 'make --no-pdf --strict', 1, /0 projects up to date/u, [`!${PAGE}`]],
    ['sound', 'make --no-pdf --only card', 0, /1 project up to date/u, [PAGE]],
    [
      'sound',
      'make --no-pdf --only box',
      2,
      /no project named "box" here; the projects are: card/u,
      ['!dist'],
    ],
    ['sound', `make ${NO_BROWSER}`, 2, NOT_FOUND, [`!${PAGE}`]],
    ['wrong', `make ${NO_BROWSER}`, 2, NOT_FOUND, ['!dist/site']],
  ],
  publish: [
    ['sound', 'publish --no-pdf', 0, /card, revision 1:\n {2}first published/u, [PAGE, LEDGER]],
    ['sound', 'publish --no-pdf --quiet --no-color', 0, /^$/u, [LEDGER]],
    ['sound', 'publish --no-pdf --shard 2/2', 0, /none was recorded/u, [`!${LEDGER}`]],
    ['sound', 'publish --browser-endpoint ws://127.0.0.1:9/x', 2, /no browser answers/u, [`!${LEDGER}`]],
    ['sound', 'publish --no-pdf --why', 0, /^site\/card\/index\.html new: it was not made/mu, [LEDGER]],
    ['sound', 'publish --dry-run', 0, /1 revision would be recorded/u, ['!dist', `!${LEDGER}`]],
    [
      'sound',
      'publish --no-pdf --all --only card --out other',
      0,
      /1 revision recorded/u,
      ['other/site', LEDGER],
    ],
    ['uneven', 'publish --no-pdf --strict', 1, /none was recorded/u, [`!${LEDGER}`]],
    ['wrong', 'publish --no-pdf', 1, /none was recorded/u, [`!${LEDGER}`]],
    ['sound', 'publish --dry-run --only box', 2, /no project named "box" here/u],
    ['sound', `publish ${NO_BROWSER}`, 2, NOT_FOUND, [`!${LEDGER}`]],
  ],
  copies: [
    [
      'sound',
      'copies card --count 2',
      2,
      /no handout of "card" in .*: run "sheetwright make --only card" first/u,
      ['!dist'],
    ],
    [
      'sound',
      'copies card --count 2 --print a4 --out other --quiet --no-color',
      2,
      /no a4 handout/u,
      ['!other'],
    ],
    ['sound', 'copies card --count 0', 2, /--count is a number from 1 to 500/u],
    ['sound', 'copies card --count 2 --layout folded', 2, /--layout is one of single, two-up, booklet/u],
    ['sound', 'copies card --count 2 --print poster', 2, /--print is one of letter, a4, large-print/u],
    ['sound', 'copies ../card --count 2', 2, /is no project's name/u],
  ],
  season: [
    [
      'sound',
      'season --from 2026-10-15 --attendees 2 --json',
      0,
      /^\{[\s\S]*"date": ?"2026-12-10"/u,
      ['!dist'],
    ],
    ['sound', 'season --from 2027-01-01', 2, /no project has a session from 2027-01-01 on/u],
    ['sound', 'season --from 2026-10-15 --to 2026-10-01', 2, /before 2026-10-15/u],
    ['sound', 'season --spares 1 --work 1 --kerf 1/32 --trim-margin 1/8 --csv --json', 2, /not both/u],
    [
      'sound',
      `season --from 2026-10-15 --session card=2 --out other --quiet --no-color ${NO_BROWSER}`,
      2,
      NOT_FOUND,
      ['other/host/season/season.ics', '!other/site'],
    ],
    ['sound', 'season --from soon', 2, /--from takes a day such as 2026-10-15, not "soon"/u],
    [
      'sound',
      'season --from 2026-10-15 --attendees 2 --variant card=large',
      2,
      /card has no variants: leave/u,
    ],
  ],
  uses: [
    ['sound', 'uses cream', 0, /^card \(session 2026-12-10\)\n[\s\S]*cream: 1 project\n$/u],
    ['sound', 'uses cream --json --quiet --no-color', 0, /^\[[\s\S]*"project": ?"card"/u],
    ['sound', 'uses nothing', 2, /nothing here uses "nothing"/u],
    ['sound', 'uses', 2, /missing required argument 'name'/u],
  ],
  kit: [
    ['sound', 'kit card --attendees 2 --json', 0, /^\{[\s\S]*"attendees": ?2[\s\S]*\}\n$/u, ['!dist']],
    ['sound', 'kit card --attendees 2 --csv', 0, /^[\w ,]+\r\n/u, ['!dist']],
    ['sound', 'kit card --attendees 2 --spares 3 --json', 0, /"spares": ?3/u],
    ['sound', 'kit card --attendees 2 --work 1 --kerf 1/32 --trim-margin 1/4 --json', 0, /"total": ?\d/u],
    ['sound', 'kit card --attendees 2 --margin 20 --json', 0, /"marginPercent": ?20/u],
    ['sound', `kit card --attendees 2 --quiet ${NO_BROWSER}`, 2, NOT_FOUND, [`${KIT}/kit.json`]],
    [
      'sound',
      `kit card --attendees 2 --labels --out other --no-color ${NO_BROWSER}`,
      2,
      NOT_FOUND,
      ['!dist'],
    ],
    ['wrong', 'kit card --attendees 2', 1, /\[layer-overhang\]/u, ['!dist']],
    ['sound', 'kit card --attendees 2 --variant small', 2, /card has no variants: leave --variant out/u],
    ['sound', 'kit card', 2, /required option '--attendees <number>' not specified/u],
    ['sound', 'kit card --roster nobody.csv', 2, /nobody\.csv cannot be read/u],
    ['sound', 'kit --attendees 2', 2, /missing required argument 'slug'/u],
    ['sound', 'kit box --attendees 2', 2, /no project named "box" here; the projects are: card/u],
    ['sound', 'kit card --attendees 2 --json --csv', 2, /use --json or --csv, not both/u],
    ['sound', 'kit card --attendees 0', 2, /--attendees takes a whole number from 1 to 1000, not "0"/u],
    ['sound', 'kit card --attendees 2 --spares some', 2, /--spares takes a whole number from 0 to 1000/u],
    ['sound', 'kit card --attendees 2 --work 0', 2, /--work takes a number above 0 and up to 600/u],
    ['sound', 'kit card --attendees 2 --margin 100', 2, /--margin takes percent from 0 to under 100/u],
    ['sound', 'kit card --attendees 2 --kerf thin', 2, /--kerf takes a length/u],
    ['sound', 'kit card --attendees 2 --trim-margin -1', 2, /--trim-margin takes a length/u],
  ],
  preview: [
    ['sound', 'preview --port abc', 2, /"abc" is no port/u],
    ['sound', 'preview --port 65536', 2, /"65536" is no port/u],
    [
      'sound',
      `preview nowhere --host --out other --quiet --no-color ${NO_BROWSER}`,
      2,
      /no projects in nowhere/u,
    ],
  ],
  draft: [
    ['sound', 'draft box', 0, /^wrote projects\/box\/sheet\.md/u, ['projects/box/sheet.md']],
    ['sound', 'draft box --quiet --no-color', 0, /^$/u, ['projects/box/sheet.md']],
    ['sound', 'draft box elsewhere', 0, /^wrote elsewhere\/box\/sheet\.md/u, ['elsewhere/box/sheet.md']],
    ['sound', 'draft box --form tray', 0, /^wrote/u, ['projects/box/sheet.md']],
    ['sound', 'draft box --form cube', 2, /there is no form named "cube"/u, ['!projects/box']],
    ['sound', 'draft card', 2, /is there already: choose another name/u],
    [
      'sound',
      'draft box --from card --holds 1x2x3 --count 2 --name tin',
      2,
      /nothing in card makes a room: it has no box, bag, band or pocket/u,
      ['!projects/box'],
    ],
    ['sound', 'draft box --from card --holds 1x2x3 --variant small', 2, /^sheetwright: .*variant/u],
    ['sound', 'draft box --count 2', 2, /--count goes with --from/u, ['!projects/box']],
    ['sound', 'draft', 2, /missing required argument 'slug'/u],
  ],
};

const ROWS = Object.values(TABLE)
  .flat()
  .map((row) => [`of a project that is ${row[0]}: ${row[1]} exits with ${row[2]}`, row] as const);

describe('a command line', () => {
  it.each(ROWS)('%s', async (_, [sheet, line, code, says, files = []]) => {
    const folder = folderWith({ 'projects/card/sheet.md': SHEETS[sheet] });
    const done = await sheetwright(folder, ...line.split(' '));
    expect({ code: done.code, says: code === 2 ? done.err : done.out }).toEqual({
      code,
      says: expect.stringMatching(says),
    });
    for (const file of files) {
      expect([file, existsSync(join(folder, file.replace('!', '')))]).toEqual([file, !file.startsWith('!')]);
    }
    if (code === 2) expect(done.err).not.toMatch(/mistake of ours/u);
  });

  it('prints the version and the help, and knows every command of the table', async () => {
    const folder = folderWith({});
    const version = await sheetwright(folder, '--version');
    expect(version).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/u) });
    const help = await sheetwright(folder, '--help');
    const commands = [...help.out.matchAll(/^ {2}([a-z]+) (?:\[|<)/gmu)].map(([, name]) => name);
    expect(help.code).toBe(0);
    expect(commands.filter((name) => name !== 'help').toSorted()).toEqual(Object.keys(TABLE).toSorted());
    expect(await sheetwright(folder, 'fold')).toMatchObject({
      code: 2,
      err: expect.stringContaining("unknown command 'fold'"),
    });
    expect(await sheetwright(folder, 'help', 'kitt')).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringMatching(/unknown command 'kitt'\n\(Did you mean kit\?\)/u),
    });
    expect((await sheetwright(folder, 'help', 'kit')).out).toContain('--attendees');
  });

  it.each(Object.keys(TABLE))('%s: every option it has is in the table', async (command) => {
    const { code, out } = await sheetwright(folderWith({}), command, '--help');
    const known = [...out.matchAll(/^ {2}(--[a-z-]+)/gmu)].map(([, option = '']) => option);
    const tried = new Set(TABLE[command]?.flatMap(([, line]) => line.split(' ')));
    expect(code).toBe(0);
    expect(known.length).toBeGreaterThan(2);
    expect(known.filter((option) => option !== '--help' && !tried.has(option))).toEqual([]);
  });
});

describe('what the engine is asked for', () => {
  it('is known to it', () => {
    for (const flag of Object.values(flagsOf() ?? {})) {
      const { status, stderr } = spawnSync(process.execPath, [flag, '-e', ''], { encoding: 'utf8' });
      expect([flag, status, stderr]).toEqual([flag, 0, '']);
    }
  });

  it('is something for the engines of Node 20, 22 and 24, and nothing for one that we do not know', () => {
    const engines = ['11.3.244.8-node.33', '12.4.254.21-node.33', '13.6.233.17-node.37', '99.1.2.3-node.4'];
    expect(engines.map((v8) => flagsOf(v8) !== undefined)).toEqual([true, true, true, false]);
  });
});
