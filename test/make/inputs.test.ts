import { execFileSync } from 'node:child_process';
import { cpSync, readdirSync, readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { make } from '../../src/make/make.ts';
import type { MakeOptions, MakeResult } from '../../src/make/make-options.ts';
import type { ProjectRecord } from '../../src/make/records.ts';
import type { Recall, Spot } from '../../src/recall/recall.ts';
import { seal, unseal } from '../../src/recall/sealed.ts';
import { emptyFolder, folderWith, type Outcome, sheetwright } from '../cli/terminal.ts';

const sheet = (stock: string, rest = ''): string => `---
title: Card
measurements:
  unit: in
  stock: { own: { name: Own paper, sheet: 8 1/2 x 11 } }
  pieces: { card: { stock: ${stock}, cut: 4 x 5 } }
---
A card.${rest}

## Cut it
Cut :piece[card].
`;

const FILES = {
  'site.yaml': 'title: Bench\nurl: https://example.org/\n',
  'shared/stock.yaml':
    'stock:\n  moss: { name: Moss, sheet: 8 1/2 x 11 }\n  fern: { name: Fern, sheet: 12 x 12 }\n',
  'a/sheet.md': sheet('shared.moss'),
  'b/sheet.md': sheet('shared.fern'),
  'c/sheet.md': sheet('own'),
};

let first = '';

beforeAll(async () => {
  first = folderWith(FILES);
  expect((await sheetwright(first, 'make', '--no-pdf')).code).toBe(0);
});

/** The workspace, made once, as it is after some of its files were written anew. */
function changedTo(files: Readonly<Record<string, string>>): string {
  const folder = emptyFolder();
  cpSync(first, folder, { recursive: true });
  for (const [path, text] of Object.entries(files)) writeFileSync(join(folder, path), text);
  return folder;
}

/** What a make says it made again, and why: `a/index.html changed: sheet.md`. */
async function madeAgain(folder: string): Promise<readonly string[]> {
  const { out } = await sheetwright(folder, 'make', '--no-pdf', '--why');
  return out
    .split('\n')
    .flatMap((line) => (/^(?:site|host)\//u.test(line) ? [line.replace('site/', '')] : []));
}

/** The projects whose findings are not known, but worked out. */
async function lookedAtAnew(recall: Recall, spots: readonly Spot[]): Promise<readonly string[]> {
  const study = vi.spyOn(recall, 'study');
  for (const spot of spots) await recall.findings(spot);
  return study.mock.calls.map(([{ folder }]) => folder);
}

/** Of which pages of its own were made; the further projects it leads to are the site's to say. */
const projectsIn = (lines: readonly string[]): readonly string[] =>
  [...new Set(lines.flatMap((line) => /^([abc])\/(?!more\.js)/u.exec(line)?.[1] ?? []))].sort();

const contents = (folder: string): readonly (readonly [string, string])[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .toSorted()
    .filter((path) => !path.startsWith('.') && /\.\w+$/u.test(path))
    .map((path) => [path, readFileSync(join(folder, path), 'base64')]);

const optionsIn = (folder: string): MakeOptions => ({
  root: folder,
  out: join(folder, 'dist'),
  namedFrom: folder,
  pdf: false,
  today: '2026-12-01',
});

describe('a make again', () => {
  it('makes nothing where nothing is another, whenever it was written', async () => {
    const folder = changedTo({});
    const later = new Date('2031-02-03');
    for (const path of Object.keys(FILES)) utimesSync(join(folder, path), later, later);
    const { out, err } = await sheetwright(folder, 'make', '--no-pdf', '--why');
    expect(err).toBe('');
    expect(out).toBe(
      'nothing found in 3 projects\n3 projects up to date, 0 files new or changed, in dist/\n',
    );
  });

  it.each([
    ['a sheet', 'a/sheet.md', sheet('shared.moss', ' Once more.'), ['a'], 'sheet.md'],
    [
      'a shared value',
      'shared/stock.yaml',
      FILES['shared/stock.yaml'].replace('Moss', 'Meadow'),
      ['a'],
      'shared.stock.moss',
    ],
    [
      'another shared value',
      'shared/stock.yaml',
      `${FILES['shared/stock.yaml']}  ivy: { sheet: 6 x 6 }\n`,
      [],
      '',
    ],
    ['a line above shared values', 'shared/stock.yaml', `# Papers\n${FILES['shared/stock.yaml']}`, [], ''],
    ['a ledger', 'b/revisions.yaml', 'revisions: []\n', ['b'], 'revisions.yaml'],
    [
      'a setting all use',
      'site.yaml',
      FILES['site.yaml'].replace('Bench', 'Table'),
      ['a', 'b', 'c'],
      'site.title',
    ],
    ['a remark in the settings', 'site.yaml', `# Ours\n${FILES['site.yaml']}`, [], ''],
  ])('follows %s into the projects that use it, and says so', async (_, path, text, projects, why) => {
    const lines = await madeAgain(changedTo({ [path]: text }));
    expect(projectsIn(lines)).toEqual(projects);
    for (const slug of projects) {
      const said = lines.filter((line) => line.startsWith(`${slug}/`));
      expect(said.every((line) => line.includes(why))).toBe(true);
    }
  });

  it('follows numbers that a ledger brings from elsewhere, in every kind of output', async () => {
    const leaf = (text: string): string => text.replace('cut: 4 x 5', 'use: shared.leaf');
    const folder = changedTo({
      'shared/stock.yaml': `${FILES['shared/stock.yaml']}pieces:\n  leaf: { cut: 4 x 5 }\n`,
      'a/sheet.md': leaf(FILES['a/sheet.md']),
      'c/sheet.md': leaf(FILES['c/sheet.md']),
    });
    await sheetwright(folder, 'publish', '--no-pdf', '--only', 'a');
    await sheetwright(folder, 'make', '--no-pdf');
    const ledger = join(folder, 'a/revisions.yaml');
    const elsewhere = readFileSync(ledger, 'utf8').replaceAll('[ 102 mm, 127 mm ]', '[ 103 mm, 127 mm ]');
    writeFileSync(ledger, elsewhere);
    await sheetwright(folder, 'make', '--no-pdf');
    await sheetwright(folder, 'make', '--no-pdf', '--out', 'anew');
    // The other has not published the piece, which they share.
    for (const slug of ['a', 'c'])
      expect(readFileSync(join(folder, `anew/site/${slug}/picture.svg`), 'utf8')).toContain('103');
    expect(contents(join(folder, 'dist'))).toEqual(contents(join(folder, 'anew')));
  });

  it('knows what was found by the ledger on disk, whichever a project is made with', async () => {
    const texts = changedTo({});
    const { recall, spots } = await make({ ...optionsIn(texts), only: ['a'] });
    for (const { folder } of spots) recall.inputs.setOf(folder, 'ledger', 'about to be published');
    expect(await lookedAtAnew(recall, spots)).toEqual([]);
  });

  it('says of what it made that it is as it was', async () => {
    const folder = changedTo({
      'c/sheet.md': sheet('own').replace('8 1/2 x 11 }', '8 1/2 x 11, price: 0.40 }'),
    });
    const lines = await madeAgain(folder);
    expect(lines).toContain('c/index.html is as it was: sheet.md');
  });

  it('makes what somebody changed or removed', async () => {
    const folder = changedTo({ 'dist/site/a/index.html': 'mine' });
    rmSync(join(folder, 'dist/site/b/share/index.html'));
    await sheetwright(folder, 'make', '--no-pdf');
    expect(contents(join(folder, 'dist'))).toEqual(contents(join(first, 'dist')));
  });

  it('waits for no pipe that has taken the place of a file of ours', async () => {
    const folder = changedTo({});
    for (const path of ['site/make.json', '.made/projects/a.json', 'site/b/index.html']) {
      rmSync(join(folder, 'dist', path));
      execFileSync('mkfifo', [join(folder, 'dist', path)]);
    }
    expect(await sheetwright(folder, 'make', '--no-pdf')).toMatchObject({ code: 0 });
    expect(contents(join(folder, 'dist'))).toEqual(contents(join(first, 'dist')));
  });

  it('makes the same bytes with what is remembered and without, in any time zone, language or file mode', async () => {
    const folder = folderWith(FILES);
    const [zone, language, mask] = [process.env.TZ, process.env.LC_ALL, process.umask(0o077)];
    Object.assign(process.env, { TZ: 'Pacific/Kiritimati', LC_ALL: 'ar_EG.UTF-8' });
    try {
      await sheetwright(folder, 'make', '--no-pdf');
    } finally {
      process.umask(mask);
      for (const [name, value] of Object.entries({ TZ: zone, LC_ALL: language })) {
        if (value === undefined) delete process.env[name];
        else process.env[name] = value;
      }
    }
    const again = changedTo({ 'a/sheet.md': sheet('own') });
    await sheetwright(again, 'make', '--no-pdf');
    writeFileSync(join(again, 'a/sheet.md'), FILES['a/sheet.md']);
    await sheetwright(again, 'make', '--no-pdf');
    const made = contents(join(first, 'dist'));
    expect(made.length).toBeGreaterThan(20);
    expect(contents(join(folder, 'dist'))).toEqual(made);
    expect(contents(join(again, 'dist'))).toEqual(made);
  });
});

describe('what tells a program from another', () => {
  let loaded = 0;

  /** The code, loaded once more, as it would be of a package in that folder. */
  async function programIn(root: string): Promise<typeof import('../../src/recall/program.ts')> {
    vi.doMock('../../src/recall/package-root.ts', () => ({ packageRoot: () => root }));
    loaded += 1;
    const path = `/src/recall/program.ts?again=${loaded}`;
    return import(/* @vite-ignore */ path);
  }

  afterEach(() => {
    vi.doUnmock('../../src/recall/package-root.ts');
    vi.unstubAllGlobals();
  });

  it('is what its templates are called, too: the labels of a language go by the name of their file', async () => {
    const files = {
      'templates/labels/pl-pl.yaml': 'cut: Wytnij\n',
      'templates/labels/sv.yaml': 'cut: Skär\n',
    };
    const root = folderWith(files);
    const { templatesDigest } = await programIn(root);
    const before = templatesDigest();
    expect(templatesDigest()).toBe(before);
    renameSync(join(root, 'templates/labels/pl-pl.yaml'), join(root, 'templates/labels/pl.yaml'));
    expect(templatesDigest()).not.toBe(before);
  });

  // America/Coyhaique is a zone from 2025b of the tz database on: Node 20.19.0, which has 2025a, refuses it.
  it.each(['icu', 'cldr', 'tz', 'unicode'])('is what its Node knows, by its %s', async (part) => {
    const root = folderWith({ 'package.json': '{}' });
    const before = (await programIn(root)).programDigest();
    expect((await programIn(root)).programDigest()).toBe(before);
    const versions = { ...process.versions, [part]: '2025a' };
    vi.stubGlobal('process', Object.create(process, { versions: { value: versions } }));
    expect((await programIn(root)).programDigest()).not.toBe(before);
  });
});

describe('a make in parts', () => {
  it('is, laid together, the same as one make, of which only the site’s own pages are left to make', async () => {
    const folder = folderWith(FILES);
    for (const part of [1, 2]) {
      const out = `part-${part}`;
      const { code } = await sheetwright(folder, 'make', '--no-pdf', '--shard', `${part}/2`, '--out', out);
      expect(code).toBe(0);
      expect(readdirSync(join(folder, out, 'site')).toSorted()).toEqual(part === 1 ? ['a', 'c'] : ['b']);
      cpSync(join(folder, out), join(folder, 'dist'), { recursive: true });
    }
    expect(projectsIn(await madeAgain(folder))).toEqual([]);
    expect(contents(join(folder, 'dist'))).toEqual(contents(join(first, 'dist')));
  });

  it.each(['0/2', '3/2', '1', '1/0', 'a/b'])('is refused where it is no part: %s', async (part) => {
    const { code, err } = await sheetwright(first, 'make', '--no-pdf', '--shard', part);
    expect([code, err]).toEqual([
      2,
      `sheetwright: --shard takes which part of how many, such as 2/5, not "${part}"\n`,
    ]);
  });
});

describe('a make that was stopped', () => {
  const SAVED = {
    'a/sheet.md': sheet('shared.moss', ' Look.'),
    'b/sheet.md': sheet('shared.fern', ' Look.'),
  };
  let whole: ReturnType<typeof contents> = [];

  beforeAll(async () => {
    const folder = folderWith({ ...FILES, ...SAVED });
    await make(optionsIn(folder));
    whole = contents(join(folder, 'dist'));
  });

  it('looks at no project that it leaves', async () => {
    const options = optionsIn(changedTo(SAVED));
    const { recall, spots } = await make({ ...options, isOver: () => true });
    expect(await lookedAtAnew(recall, spots)).toEqual(['a', 'b', 'c']);
  });

  it.each([1, 2, 4, 8, 16])(
    'after %i questions is gone on with by the next, and is then whole',
    async (most) => {
      const folder = changedTo(SAVED);
      const questions = Array.from({ length: most }).values();
      const stopped = await make({ ...optionsIn(folder), isOver: () => questions.next().done === true });
      expect(stopped.isWhole).toBe(false);
      expect(contents(join(folder, 'dist'))).not.toEqual(whole);
      const next = await make(optionsIn(folder));
      expect(next.isWhole).toBe(true);
      expect(contents(join(folder, 'dist'))).toEqual(whole);
      expect((await make(optionsIn(folder))).written).toEqual([]);
    },
  );

  it('leaves what no page shows until the page of what was saved is made', async () => {
    const folder = changedTo({});
    const { recall } = await make(optionsIn(folder));
    for (const [path, text] of Object.entries(SAVED))
      writeFileSync(join(folder, path), text.replace('Card', 'Tag'));
    const known = { recall, changed: new Set(['a']) };
    const hasty = await make({ ...optionsIn(folder), known });
    const paths = ({ written }: MakeResult): readonly string[] => written.map(({ path }) => path);
    expect(paths(hasty)).toContain('site/a/index.html');
    expect(paths(hasty).filter((path) => /\.(?:png|jpg)$/u.test(path))).toEqual([]);
    const next = await make({ ...optionsIn(folder), known: { recall: hasty.recall } });
    expect(paths(next)).toEqual(expect.arrayContaining(['site/a/a-square.jpg', 'site/b/index.html']));
    expect(next.written.find(({ path }) => path === 'site/a/a-square.jpg')?.why).toContain('due');
  });
});

describe('what is remembered', () => {
  const work = (): string => join(process.env.XDG_CACHE_HOME ?? '', 'sheetwright', 'work');

  it.each(['', '{', '\0\0', 'deadbeef\n{"a":1}\n'])('may be damaged at any time: %j', async (text) => {
    const folder = changedTo({ 'b/sheet.md': sheet('shared.none') });
    const before = await sheetwright(folder, 'proof');
    expect(before.out).toContain('[unknown-reference]');
    for (const name of readdirSync(work())) writeFileSync(join(work(), name), text);
    expect(await sheetwright(folder, 'proof')).toEqual(before);
    rmSync(work(), { recursive: true });
    expect(await sheetwright(folder, 'proof')).toEqual(before);
  });

  it('is not taken for what is remembered of another workspace', async () => {
    const files = { 'a/sheet.md': sheet('own', '\n\n## Fold it :step{minutes=soon}\nFold it.') };
    const folder = emptyFolder();
    for (const name of ['one', 'two']) cpSync(folderWith(files), join(folder, name), { recursive: true });
    const proofed = async (): Promise<readonly Outcome[]> => [
      await sheetwright(folder, 'proof', 'one'),
      await sheetwright(folder, 'proof', 'two'),
    ];
    const usual = process.env.XDG_CACHE_HOME;
    process.env.XDG_CACHE_HOME = join(folder, 'cache');
    const before = await proofed();
    expect(before[0]?.out).toContain('[');
    const [one = '', other = ''] = readdirSync(work()).filter((name) => name.endsWith('-found.json'));
    cpSync(join(work(), one), join(work(), 'aside'));
    cpSync(join(work(), other), join(work(), one));
    cpSync(join(work(), 'aside'), join(work(), other));
    const after = await proofed();
    process.env.XDG_CACHE_HOME = usual;
    expect(after).toEqual(before);
  });

  it('is told at the lines where it stands now', async () => {
    const folder = changedTo({ 'shared/stock.yaml': 'stock:\n  moss: { name: Moss, sheet: 8 1/2 x 1/0 }\n' });
    const at = async (): Promise<string> =>
      /shared\/stock\.yaml:\d+:\d+/u.exec((await sheetwright(folder, 'proof')).out)?.[0] ?? '';
    expect(await at()).toBe('shared/stock.yaml:2:38');
    writeFileSync(
      join(folder, 'shared/stock.yaml'),
      `\n\n${readFileSync(join(folder, 'shared/stock.yaml'), 'utf8')}`,
    );
    expect(await at()).toBe('shared/stock.yaml:4:38');
  });

  it('is done without where nothing can be kept', async () => {
    const folder = changedTo({});
    const usual = process.env.XDG_CACHE_HOME;
    process.env.XDG_CACHE_HOME = join(folder, 'site.yaml');
    const { code, out } = await sheetwright(folder, 'proof');
    process.env.XDG_CACHE_HOME = usual;
    expect([code, out]).toEqual([0, 'nothing found in 3 projects\n']);
  });
});

describe('a record that somebody else wrote', () => {
  const whose = (slug: string): string => `sheetwright make 2 projects/${slug}`;

  /** A project's record, changed and sealed as ours are. */
  function forge(folder: string, slug: string, change: (record: ProjectRecord) => unknown): void {
    const path = join(folder, 'dist/.made/projects', `${slug}.json`);
    const record = unseal(readFileSync(path, 'utf8'), whose(slug)) as ProjectRecord;
    writeFileSync(path, seal(change(record), whose(slug)));
  }
  const cardWith = (more: object) => (record: ProjectRecord) => ({
    ...record,
    card: { ...(record.card as object), ...more },
  });
  const seenIn = (folder: string): string => readFileSync(join(folder, 'dist/site/index.html'), 'utf8');

  it.each(
    Object.entries({
      'a link that runs': cardWith({ links: [{ name: 'More', href: 'javascript:alert(1)' }] }),
      'a handout elsewhere': cardWith({
        papers: [{ line: 'site-handout', paper: 'site-paper-a4', href: 'javascript:alert(1)' }],
      }),
      'a word that no language has': cardWith({ papers: [{ line: 'x', paper: 'x', href: 'a/a.pdf' }] }),
      'a picture elsewhere': cardWith({
        picture: { src: '//example.org/x', alternative: '', width: 1, height: 1, drawn: false },
      }),
      'a color that is a style': cardWith({ accent: 'red;background:url(//example.org/x)' }),
      'the address of another': cardWith({ slug: '../b' }),
      'a day that is none': cardWith({ session: 'someday' }),
      'no card': (record) => ({ ...record, card: 7 }),
      'nothing of what we write': () => ({}),
      'a list': () => [],
      'outputs that are none': (record) => ({ ...record, outputs: { page: null } }),
    } satisfies Readonly<Record<string, (record: ProjectRecord) => unknown>>),
  )('with %s brings nothing into the list: its project is made anew', async (_, change) => {
    const folder = changedTo({});
    forge(folder, 'a', change);
    const { code, err } = await sheetwright(folder, 'make', '--no-pdf');
    expect([code, err]).toEqual([0, '']);
    expect(seenIn(folder)).toBe(seenIn(first));
    expect(await madeAgain(folder)).toEqual([]);
  });

  it('of another project has nothing of that removed', async () => {
    const folder = changedTo({});
    const records = join(folder, 'dist/.made/projects');
    renameSync(join(records, 'a.json'), join(folder, 'aside'));
    renameSync(join(records, 'b.json'), join(records, 'a.json'));
    renameSync(join(folder, 'aside'), join(records, 'b.json'));
    await sheetwright(folder, 'make', '--no-pdf');
    expect(contents(join(folder, 'dist/site'))).toEqual(contents(join(first, 'dist/site')));
  });

  it('has nothing removed that we did not make', async () => {
    const folder = changedTo({ 'dist/kept.txt': 'mine' });
    forge(folder, 'a', ({ outputs, ...record }) => ({
      ...record,
      outputs: { ...outputs, old: { uses: [], files: { 'kept.txt': { sha256: '' } } } },
    }));
    await sheetwright(folder, 'make', '--no-pdf');
    expect(readFileSync(join(folder, 'dist/kept.txt'), 'utf8')).toBe('mine');
  });
});
