import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname, uptime } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { withLock } from '../../src/make/lock.ts';
import { ownMark } from '../../src/recall/process-mark.ts';
import { seal, unseal } from '../../src/recall/sealed.ts';
import { CARD_SHEET } from '../card-sheet.ts';
import { folderWith, sheetwright } from '../cli/terminal.ts';

const BROKEN = CARD_SHEET.replace('4 x 5', '4 x 5/0');

const files = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ name }) => name);

const leftovers = (folder: string): string[] => files(folder).filter((name) => name.includes('.making'));

/** The number of a process that has ended. */
function deadProcess(): number {
  return spawnSync(process.execPath, ['--version']).pid;
}

describe('make --only', () => {
  it('refuses a project that is not there before it makes anything', async () => {
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET });
    for (const command of [
      ['make'],
      ['publish'],
      ['publish', '--dry-run'],
      ['kit', 'b', '--attendees', '2'],
    ]) {
      const only = command[0] === 'kit' ? [] : ['--only', 'a', 'b'];
      const { code, out, err } = await sheetwright(folder, ...command, ...only);
      expect([code, out, err]).toEqual([
        2,
        '',
        'sheetwright: no project named "b" here; the projects are: a\n',
      ]);
    }
    expect(existsSync(join(folder, 'dist'))).toBe(false);
  });

  it('looks at no other project', async () => {
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET, 'b/sheet.md': BROKEN });
    const { code, out } = await sheetwright(folder, 'make', '--no-pdf', '--only', 'a');
    expect([code, out]).toEqual([
      0,
      expect.stringMatching(/^nothing found in 1 project\n1 project up to date/u),
    ]);
    expect((await sheetwright(folder, 'make', '--no-pdf', '--only', 'b')).code).toBe(1);
  });
});

describe('two makes at once', () => {
  it('do not work in one folder: the second says who is there', async () => {
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET });
    const out = join(folder, 'dist');
    await withLock(out, async () => {
      const { code, err } = await sheetwright(folder, 'make', '--no-pdf');
      expect([code, err]).toEqual([
        2,
        `sheetwright: another make (process ${process.pid}) is at work in ${out}: wait until it is done, or, if none is, remove ${join(out, '.making')}\n`,
      ]);
    });
    expect((await sheetwright(folder, 'make', '--no-pdf')).code).toBe(0);
    expect(leftovers(out)).toEqual([]);
  });

  it('are not held up by one that died, and clear away after it', async () => {
    const lock = `${deadProcess()} ${hostname()}`;
    const folder = folderWith({
      'a/sheet.md': CARD_SHEET,
      'dist/.making': lock,
      'dist/site/a/index.html.making-0a1b2c3d': 'half a pa',
    });
    expect((await sheetwright(folder, 'make', '--no-pdf')).code).toBe(0);
    expect(leftovers(join(folder, 'dist'))).toEqual([]);
  });

  it('clear away what one left that died before it had the lock, and nothing of one that runs', async () => {
    const [dead, alive] = [`.making-${process.pid}-0badc0de-0a1b2c3d`, `.making-${ownMark()}-0a1b2c3d`];
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET, [`dist/${dead}`]: '', [`dist/${alive}`]: '' });
    expect((await sheetwright(folder, 'make', '--no-pdf')).code).toBe(0);
    expect(leftovers(join(folder, 'dist'))).toEqual([alive]);
  });

  it.each([
    ['empty, as a full disk leaves it', '', 60],
    ['of a process whose number another has now', `${process.pid}-0badc0de ${hostname()}`, 0],
    ['from before the machine was started', `${process.pid} ${hostname()}`, uptime() + 3600],
  ])('are not held up by a lock that is %s', async (_, lock, age) => {
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET, 'dist/.making': lock });
    const then = Date.now() / 1000 - age;
    utimesSync(join(folder, 'dist/.making'), then, then);
    expect((await sheetwright(folder, 'make', '--no-pdf')).code).toBe(0);
    expect(leftovers(join(folder, 'dist'))).toEqual([]);
  });

  it.each([['4711 another-machine'], ['']])('are careful with one they cannot see: "%s"', async (lock) => {
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET, 'dist/.making': lock });
    const { code, err } = await sheetwright(folder, 'make', '--no-pdf');
    expect([code, err]).toEqual([
      2,
      expect.stringMatching(/another make.* is at work in .*remove .*\.making\n$/u),
    ]);
    expect(readFileSync(join(folder, 'dist/.making'), 'utf8')).toBe(lock);
  });
});

describe('a make that cannot go on', () => {
  it('names the file that is in its way, leaves no half file, and keeps what is done', async () => {
    const folder = folderWith({
      'a/sheet.md': CARD_SHEET,
      'b/sheet.md': CARD_SHEET,
      'dist/site/b/index.html/x.txt': '',
    });
    const { code, err } = await sheetwright(folder, 'make', '--no-pdf');
    expect(code).toBe(2);
    expect(err.split('\n').at(-2)).toMatch(
      /^sheetwright: cannot write into .*dist \(\w+ at site.b.index\.html\): free or unlock it/u,
    );
    const out = join(folder, 'dist');
    expect(leftovers(out)).toEqual([]);
    rmSync(join(out, 'site/b/index.html'), { recursive: true });
    const again = await sheetwright(folder, 'make', '--no-pdf', '--why');
    expect(again.code).toBe(0);
    expect(again.out).not.toContain('site/a/');
    expect(again.out).toMatch(/site\/b\/preview-\w+\.jpg is as it was: it was not made before/u);
  });

  it('says so when it cannot remove what is no longer made', async () => {
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET, 'b/sheet.md': CARD_SHEET });
    await sheetwright(folder, 'make', '--no-pdf');
    rmSync(join(folder, 'b'), { recursive: true });
    rmSync(join(folder, 'dist/site/b/index.html'));
    mkdirSync(join(folder, 'dist/site/b/index.html'));
    const { code, err } = await sheetwright(folder, 'make', '--no-pdf');
    expect([code, err]).toEqual([2, expect.stringMatching(/^sheetwright: cannot write into .*index\.html/u)]);
  });
});

describe('what is left of a project that is gone', () => {
  it('is nothing, not even its folders, but what somebody else put there', async () => {
    const folder = folderWith({
      'a/sheet.md': CARD_SHEET,
      'b/sheet.md': CARD_SHEET,
      'c/sheet.md': CARD_SHEET,
    });
    await sheetwright(folder, 'make', '--no-pdf');
    writeFileSync(join(folder, 'dist/site/c/mine.txt'), 'mine');
    for (const gone of ['b', 'c']) rmSync(join(folder, gone), { recursive: true });
    await sheetwright(folder, 'make', '--no-pdf');
    const site = join(folder, 'dist/site');
    expect(existsSync(join(site, 'a'))).toBe(true);
    expect(existsSync(join(site, 'b'))).toBe(false);
    expect(readdirSync(join(site, 'c'))).toEqual(['mine.txt']);
  });
});

describe('the record', () => {
  it('is the same wherever the command runs', async () => {
    const folder = folderWith({ 'bench/a/sheet.md': CARD_SHEET, 'elsewhere/x.txt': '' });
    const record = (): string => readFileSync(join(folder, 'dist/site/make.json'), 'utf8');
    await sheetwright(folder, 'make', 'bench', '--no-pdf');
    const first = record();
    await sheetwright(join(folder, 'elsewhere'), 'make', '../bench', '--no-pdf', '--out', '../dist');
    expect(record()).toBe(first);
    expect(first).toContain('"source": "a/sheet.md"');
  });

  it.each(['', '{', '[]', '{"projects":{"a":{}}}', '\0'])('counts as none when it holds %j', async (text) => {
    const files = ['site/make.json', '.made/site.json', '.made/projects/a.json', '.made/projects/b.json'];
    const folder = folderWith({
      'a/sheet.md': CARD_SHEET,
      ...Object.fromEntries(files.map((path) => [`dist/${path}`, text])),
    });
    const { code } = await sheetwright(folder, 'make', '--no-pdf');
    expect(code).toBe(0);
    const record: unknown = JSON.parse(readFileSync(join(folder, 'dist/site/make.json'), 'utf8'));
    expect(record).toMatchObject({ projects: { a: { source: 'a/sheet.md' } } });
  });

  it('leads to nothing outside the output folder', async () => {
    const folder = folderWith({ 'a/sheet.md': CARD_SHEET, 'mine.txt': 'mine', 'dist/x': '' });
    await sheetwright(folder, 'make', '--no-pdf');
    const path = join(folder, 'dist/.made/projects/a.json');
    const whose = 'sheetwright make 2 projects/a';
    const record = unseal(readFileSync(path, 'utf8'), whose) as {
      outputs: { page: { files: Record<string, unknown> } };
    };
    const outside = ['../mine.txt', '..', '.', 'site/../../mine.txt'];
    for (const each of outside) record.outputs.page.files[each] = { sha256: 'x' };
    writeFileSync(path, seal(record, whose));
    expect((await sheetwright(folder, 'make', '--no-pdf')).code).toBe(0);
    expect(readFileSync(join(folder, 'mine.txt'), 'utf8')).toBe('mine');
  });
});
