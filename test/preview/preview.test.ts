import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createServer, get, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { text } from 'node:stream/consumers';
import { afterEach, describe, expect, it } from 'vitest';
import { run } from '../../src/cli.ts';
import { takeLock, withLock } from '../../src/make/lock.ts';
import { openPreview } from '../../src/preview/preview.ts';
import type { PreviewOptions } from '../../src/preview/preview-options.ts';
import { demoCopy, emptyFolder, sheetwright } from '../cli/terminal.ts';

type Running = {
  readonly folder: string;
  readonly address: string;
  readonly printed: () => string;
  readonly end: () => Promise<number>;
};

const running: Running[] = [];

afterEach(async () => {
  await Promise.all(running.splice(0).map((each) => each.end()));
});

/** Starts `sheetwright preview` on a workspace of one drafted project and waits until it serves. */
async function preview(...more: string[]): Promise<Running> {
  const folder = emptyFolder();
  await sheetwright(folder, 'draft', 'card');
  return previewOf(folder, ...more);
}

async function previewOf(folder: string, ...more: string[]): Promise<Running> {
  let out = '';
  const ends = new AbortController();
  const into = (): Writable =>
    new Writable({
      write: (chunk, _, done) => {
        out += String(chunk);
        done();
      },
    });
  const finished = run({
    argv: ['preview', '--port', '0', ...more],
    cwd: folder,
    env: {},
    stdin: Readable.from([]),
    stdout: into(),
    stderr: into(),
    ends: ends.signal,
  });
  await until(() => /preview at (\S+)/u.test(out));
  const [, address = ''] = /preview at (\S+)/u.exec(out) ?? [];
  const started: Running = {
    folder,
    address,
    printed: () => out,
    end: () => {
      ends.abort();
      return finished;
    },
  };
  running.push(started);
  return started;
}

async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 400; tries += 1) {
    if (await holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
  throw new Error('it never came about');
}

/** A request as no client of ours sends it: its path as it is. */
function asked(
  address: string,
  path: string,
  headers: Readonly<Record<string, string>>,
): Promise<{ status: number | undefined; headers: IncomingHttpHeaders; body: string }> {
  const { port } = new URL(address);
  return new Promise((resolve, reject) => {
    get({ host: '127.0.0.1', port, path, headers }, (answer) => {
      const { statusCode: status, headers: told } = answer;
      text(answer).then((body) => resolve({ status, headers: told, body }), reject);
    }).on('error', reject);
  });
}

type Found = { rule: string; line: number; severity: string; slug: string | null; where: string };
type State = { version: number; findings: Found[]; drafts: { slug: string }[] };
const stateOf = async (address: string): Promise<State> =>
  (await (await fetch(`${address}-preview/state.json`)).json()) as State;

describe('sheetwright preview', () => {
  it('serves on loopback and follows a save', async () => {
    const { folder, address } = await preview();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/u);
    const page = await fetch(`${address}card/`);
    expect(page.headers.get('content-type')).toContain('text/html');
    expect(await page.text()).toContain('-preview/live.js');
    const { version, drafts } = await stateOf(address);
    expect(drafts).toMatchObject([{ slug: 'card' }]);

    const sheet = join(folder, 'projects/card/sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: A finer card'));
    await until(async () => (await stateOf(address)).version > version);
    expect(await (await fetch(`${address}card/index.html`)).text()).toContain('A finer card');
  });

  it.each([
    ['a length that is none', 'cut: 4 x 5 1/4', 'cut: 4 x 5 1/0', 'unreadable-length'],
    ['broken YAML', 'title: Card', 'title: [Card', 'broken-yaml'],
    ['an empty file', /[\s\S]*/u, '', 'empty-file'],
    ['bytes', /[\s\S]*/u, '\0\0\0', 'not-text'],
  ])('survives %s, keeps the page and says what was found', async (_, from, to, rule) => {
    const { folder, address } = await preview();
    const before = await (await fetch(`${address}card/`)).text();
    const sheet = join(folder, 'projects/card/sheet.md');
    const good = readFileSync(sheet, 'utf8');
    writeFileSync(sheet, good.replace(from, to));
    await until(async () => (await stateOf(address)).findings.some((finding) => finding.rule === rule));
    const after = await (await fetch(`${address}card/`)).text();
    expect(after.replace(/data-version="\d+"/u, '')).toBe(before.replace(/data-version="\d+"/u, ''));
    writeFileSync(sheet, good);
    await until(async () => (await stateOf(address)).findings.length === 0);
  });

  it('tells an open page of a new make', async () => {
    const { folder, address } = await preview();
    const events = await fetch(`${address}-preview/events`);
    const reader = events.body?.getReader();
    if (!reader) throw new Error('no events');
    const next = async (): Promise<string> => new TextDecoder().decode((await reader.read()).value);
    expect(await next()).toBe('data: 1\n\n');
    const sheet = join(folder, 'projects/card/sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: Another'));
    expect(await next()).toBe('data: 2\n\n');
    await reader.cancel();
  });

  it('prints a PDF when it is asked for', async () => {
    const { address } = await preview();
    const pdf = new Uint8Array(await (await fetch(`${address}card/card-letter.pdf`)).arrayBuffer());
    expect(new TextDecoder().decode(pdf.slice(0, 5))).toBe('%PDF-');
  });

  it('prints the one PDF that is opened, each as the sheet is then, and leaves the others as they were', async () => {
    const { folder, address } = await preview();
    const site = join(folder, 'dist/preview/site/card');
    const printed = (): string[] => readdirSync(site).filter((name) => name.endsWith('.pdf'));
    const open = async (name: string): Promise<Buffer> =>
      Buffer.from(await (await fetch(`${address}card/${name}`)).arrayBuffer());
    expect(printed()).toEqual([]);
    const letter = await open('card-letter.pdf');
    expect(printed()).toEqual(['card-letter.pdf']);
    const a4 = await open('card-a4.pdf');
    expect(printed()).toEqual(['card-a4.pdf', 'card-letter.pdf']);
    expect(readFileSync(join(site, 'card-letter.pdf'))).toEqual(letter);

    const sheet = join(folder, 'projects/card/sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: A finer card'));
    await until(async () => (await (await fetch(`${address}card/`)).text()).includes('A finer card'));
    expect(await open('card-a4.pdf')).not.toEqual(a4);
    expect(readFileSync(join(site, 'card-letter.pdf'))).toEqual(letter);
    expect(await open('card-letter.pdf')).not.toEqual(letter);
  });

  it('serves nothing outside its folder, to no other name, and takes nothing', async () => {
    const { address } = await preview();
    for (const path of ['..%2f..%2fsheet.md', '%2e%2e/%2e%2e/etc/passwd', '..%5c..%5cx', '%00']) {
      expect((await fetch(`${address}${path}`)).status).toBe(404);
    }
    expect((await fetch(address, { method: 'POST' })).status).toBe(405);
    const { port } = new URL(address);
    const status = await new Promise((resolve) => {
      get({ host: '127.0.0.1', port, path: '/', headers: { Host: 'elsewhere.example' } }, (answer) => {
        answer.resume();
        resolve(answer.statusCode);
      });
    });
    expect(status).toBe(403);
  });

  it('has a door: nothing for other sites but a page that is gone to, and no way to another host', async () => {
    const { address } = await preview();
    const cross = { 'sec-fetch-site': 'cross-site' };
    const visit = { ...cross, 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' };
    const statuses = [
      ['/card/card-letter.pdf', visit],
      ['/card/card-letter.p%64F', visit],
      ['/card/', cross],
      ['/card/', visit],
      ['/card/', { 'sec-fetch-site': 'same-origin' }],
      ['//', {}],
      ['/.//card', {}],
    ] as const;
    const answers = [];
    for (const [path, headers] of statuses) answers.push(await asked(address, path, headers));
    expect(answers.map(({ status }) => status)).toEqual([403, 403, 403, 200, 200, 200, 302]);
    expect(answers.at(-1)?.headers.location).toBe('/card/');
    for (const { headers } of answers) {
      expect(headers).toMatchObject({
        'content-security-policy': expect.stringMatching(
          /default-src 'self'.*script-src 'self';.*frame-ancestors 'none'/u,
        ),
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'DENY',
        'cross-origin-resource-policy': 'same-origin',
      });
    }
  });

  it('tells of the findings of those files alone in which they are others than before', async () => {
    const folder = emptyFolder();
    await sheetwright(folder, 'draft', 'card');
    await sheetwright(folder, 'draft', 'other');
    const { printed } = await previewOf(folder);
    const write = (slug: string, from: string, to: string): void => {
      const sheet = join(folder, 'projects', slug, 'sheet.md');
      writeFileSync(sheet, readFileSync(sheet, 'utf8').replace(from, to));
    };
    write('card', '4 x 5 1/4', '4 x 5 1/0');
    await until(() => /card\/sheet\.md:\d+:\d+ {2}error/u.test(printed()));
    const first = printed().length;
    write('other', '4 x 5 1/4', '4 x 5 1/0');
    await until(() => /other\/sheet\.md:\d+:\d+ {2}error/u.test(printed()));
    write('other', '4 x 5 1/0', '4 x 5 1/4');
    await until(() => printed().includes('no findings left in projects/other/sheet.md\n'));
    expect(printed().slice(first)).not.toContain('card/sheet.md');
    write('card', '4 x 5 1/0', '4 x 5 1/4');
    await until(() => printed().includes('no findings left\n'));
  });

  it('follows on when its workspace was away, and says so', async () => {
    const { folder, address, printed } = await preview();
    const [here, away] = [join(folder, 'projects'), join(folder, 'away')];
    renameSync(here, away);
    await until(() => printed().includes('is not there: the preview goes on once it is back'));
    const { version } = await stateOf(address);
    renameSync(away, here);
    await until(async () => (await stateOf(address)).version > version);
    expect(printed()).toContain('the preview goes on\n');
    const sheet = join(here, 'card/sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: Card again'));
    await until(async () => (await (await fetch(`${address}card/`)).text()).includes('Card again'));
    // Whose files they are, besides how many.
    await until(() => /^card: \d+ files? new or changed in /mu.test(printed()));
  });

  it('waits for another make in its folder, and leaves its folder to the preview that was first', async () => {
    const first = await preview();
    const out = join(first.folder, 'dist/preview');
    const sheet = join(first.folder, 'projects/card/sheet.md');
    await withLock(out, async () => {
      writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: Card again'));
      await until(() => first.printed().includes('is at work in'));
    });
    await until(async () => (await (await fetch(`${first.address}card/`)).text()).includes('Card again'));
    const release = await takeLock(join(first.folder, 'x'), '.previewing');
    const second = await preview('--out', join(first.folder, 'x'));
    expect(existsSync(join(first.folder, 'x-2/site/card/index.html'))).toBe(true);
    await second.end();
    await release();
  });

  it('runs twice on one workspace, each in a folder of its own', async () => {
    const first = await preview();
    const second = await previewOf(first.folder);
    expect(second.address).not.toBe(first.address);
    const holds = (out: string): boolean => existsSync(join(first.folder, out, '.previewing'));
    expect(['dist/preview', 'dist/preview-2'].map(holds)).toEqual([true, true]);
    const sheet = join(first.folder, 'projects/card/sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: Card again'));
    for (const { address } of [first, second]) {
      await until(async () => (await (await fetch(`${address}card/`)).text()).includes('Card again'));
    }
    // One that begins after the first is over has its folder again.
    await first.end();
    expect(holds('dist/preview')).toBe(false);
    await previewOf(first.folder);
    expect(['dist/preview', 'dist/preview-3'].map(holds)).toEqual([true, false]);
  });

  it('neither waits for a pipe that somebody laid among the files nor stops following for it', async () => {
    const { folder, address } = await preview();
    const [project, other] = [join(folder, 'projects/card'), join(folder, 'projects/pipe')];
    mkdirSync(other);
    for (const pipe of [join(project, 'notes.md'), join(project, 'card.jpg'), join(other, 'sheet.md')]) {
      execFileSync('mkfifo', [pipe]);
    }
    const sheet = join(project, 'sheet.md');
    const written = readFileSync(sheet, 'utf8').replace('title: Card', 'title: Card again');
    writeFileSync(sheet, written);
    await until(async () => (await (await fetch(`${address}card/`)).text()).includes('Card again'));
    writeFileSync(sheet, `${written}\n![A card](card.jpg)\n`);
    await until(async () => (await stateOf(address)).findings.some(({ slug }) => slug === 'card'));
  });

  it('follows a workspace whose name begins as that of its output does', async () => {
    const { folder, address } = await preview('--out', 'proj');
    const sheet = join(folder, 'projects/card/sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: Card again'));
    await until(async () => (await (await fetch(`${address}card/`)).text()).includes('Card again'));
  });

  it('lets another device in by a key that opens once, and tells nothing to who has none', async () => {
    const folder = emptyFolder();
    await sheetwright(folder, 'draft', 'card');
    const keys: string[] = [];
    const open = await openPreview({
      root: join(folder, 'projects'),
      out: join(folder, 'out'),
      namedFrom: folder,
      today: '2026-12-01',
      port: 0,
      host: true,
      entered: (key) => keys.push(key),
      told: () => {},
    });
    const Host = '192.0.2.7:4300';
    const ask = (path: string, cookie = ''): ReturnType<typeof asked> =>
      asked(open.address, path, { Host, ...(cookie && { cookie }) });
    for (const path of ['/', '/?key=', `/?key=${open.key}x`, '/-preview/state.json']) {
      expect(await ask(path)).toMatchObject({ status: 403, body: '' });
    }
    const entered = await ask(`/.//card/?key=${open.key}`);
    expect(entered).toMatchObject({
      status: 302,
      headers: { location: '/card/', 'referrer-policy': 'no-referrer' },
    });
    expect(keys).toEqual([expect.not.stringMatching(open.key)]);
    expect((await ask(`/card/?key=${open.key}`)).status).toBe(403);
    const [cookie = ''] = entered.headers['set-cookie'] ?? [];
    expect(cookie).toMatch(/; Path=\/; HttpOnly; SameSite=Lax$/u);
    expect((await ask('/card/', cookie.split(';')[0])).status).toBe(200);
    expect((await ask('/card/', 'sheetwright-preview=x')).status).toBe(403);
    expect((await fetch(`${open.address}card/`)).status).toBe(200);
    await open.close();
  });

  it('says why there is nothing to be shown, or nothing to be printed', async () => {
    const { address } = await preview('--browser', '/nowhere/browser');
    const none = await fetch(`${address}crad/`);
    expect([none.status, await none.text()]).toEqual([
      404,
      expect.stringMatching(
        /live\.js.*There is no project “crad” in this workspace\. Its only one is card\./su,
      ),
    ]);
    expect(await (await fetch(`${address}card/none.html`)).text()).toContain('“card” has no such page');
    const pdf = await fetch(`${address}card/card-letter.pdf`);
    expect([pdf.status, await pdf.text()]).toEqual([
      500,
      expect.stringMatching(/This can’t be printed.*\/nowhere\/browser/su),
    ]);
  });

  it('says what is wrong in a shared file once, where it is wrong, and what became of a picture', async () => {
    const { folder, address, printed } = await preview();
    const sheet = join(folder, 'projects/card/sheet.md');
    const written = readFileSync(sheet, 'utf8');
    mkdirSync(join(folder, 'projects/shared'));
    const stock = join(folder, 'projects/shared/stock.yaml');
    writeFileSync(
      stock,
      'stock:\n  moss: { name: Moss cardstock, sheet: 8 1/2 x 11, weight: 80 lb cover }\n',
    );
    writeFileSync(sheet, `${written.replace('stock: layer', 'stock: shared.moss')}\n![A card](card.jpg)\n`);
    await until(async () => (await stateOf(address)).findings.some(({ rule }) => rule === 'missing-picture'));
    writeFileSync(stock, 'stock:\n  moss: [\n');
    await until(async () => (await stateOf(address)).findings.some(({ rule }) => rule === 'broken-yaml'));
    const { findings } = await stateOf(address);
    const grave = findings.filter(({ severity }) => severity === 'error');
    // Nothing of the paper that the sheet takes from there.
    expect(grave).toMatchObject([
      { rule: 'missing-picture', slug: 'card' },
      { rule: 'broken-yaml', slug: null, where: expect.stringMatching(/stock\.yaml:\d/u) },
    ]);
    expect(printed()).not.toContain('ENOENT');
  });

  it('takes the next port when the one wanted is taken, and says so', async () => {
    const squatter = createServer();
    await new Promise<void>((resolve) => squatter.listen(0, '127.0.0.1', resolve));
    const { port } = squatter.address() as AddressInfo;
    const { address, printed } = await preview('--port', String(port));
    expect(Number(new URL(address).port)).toBeGreaterThan(port);
    expect(printed()).toContain(`port ${port} is taken, perhaps by another preview: this one is on `);
    await new Promise((resolve) => squatter.close(resolve));
  });

  it('ends when it is told to, and leaves nothing running', async () => {
    const { address, end } = await preview();
    expect(await end()).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });

  it('refuses a port that is none', async () => {
    const { code, err } = await sheetwright(demoCopy(), 'preview', '--port', 'many');
    expect([code, err]).toEqual([2, expect.stringContaining('"many" is no port')]);
  });
});

describe('a preview in which much happens at once', () => {
  /** One of a drafted project, told as often as a make begins how many began before it. */
  async function openCard(
    began: (makes: number) => void,
    more: Partial<PreviewOptions> = {},
  ): Promise<Opened> {
    const folder = emptyFolder();
    await sheetwright(folder, 'draft', 'card');
    const out = join(folder, 'out');
    const sheet = join(folder, 'projects/card/sheet.md');
    let makes = 0;
    const nothing = (): void => {};
    const begin = (): void => began(makes++);
    const options: PreviewOptions = {
      root: join(folder, 'projects'),
      out,
      namedFrom: folder,
      today: '2026-12-01',
      port: 0,
      told: nothing,
      progress: { begin, working: nothing, wrote: nothing, passed: nothing, end: nothing },
      ...more,
    };
    return {
      folder,
      options,
      retitle: () =>
        writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('title: Card', 'title: A finer card')),
      page: () => readFileSync(join(out, 'site/card/index.html'), 'utf8'),
    };
  }
  type Opened = {
    readonly folder: string;
    readonly options: PreviewOptions;
    readonly retitle: () => void;
    readonly page: () => string;
  };

  it('shows what was saved while it opened', async () => {
    const card = await openCard((makes) => makes === 0 && card.retitle());
    const open = await openPreview(card.options);
    await until(() => card.page().includes('A finer card'));
    await open.close();
  });

  it('makes nothing once it is closed', async () => {
    let closing: Promise<void> | undefined;
    let last = 0;
    const card = await openCard((makes) => {
      last = makes;
      if (isSaved) closing ??= open.close();
    });
    let isSaved = false;
    const open = await openPreview(card.options);
    isSaved = true;
    card.retitle();
    await until(() => closing !== undefined);
    await closing;
    const atClose = last;
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(last).toBe(atClose);
  });

  it('shows no page by older settings than one before it', async () => {
    const benches: boolean[] = [];
    let isSaved = false;
    const card = await openCard(
      () => {
        if (isSaved) card.retitle();
        isSaved = false;
      },
      { told: () => benches.push(card.page().includes('Another bench')) },
    );
    const open = await openPreview(card.options);
    writeFileSync(join(card.folder, 'projects/site.yaml'), 'title: Another bench\n');
    isSaved = true;
    await until(() => card.page().includes('A finer card'));
    await open.close();
    expect(benches).toEqual([...benches].sort());
  });

  it('tells open pages also of what was made beside a PDF', async () => {
    const card = await openCard(() => {});
    const open = await openPreview(card.options);
    const { version } = await stateOf(open.address);
    card.retitle();
    await (await fetch(`${open.address}card/card-letter.pdf`)).arrayBuffer();
    expect(card.page()).toContain('A finer card');
    await until(async () => (await stateOf(open.address)).version > version);
    await open.close();
  });

  it('leaves its folder to the next where it cannot be opened', async () => {
    const card = await openCard(() => {});
    await expect(openPreview({ ...card.options, port: -1 })).rejects.toThrow();
    const open = await openPreview(card.options);
    expect(existsSync(`${card.options.out}-2`)).toBe(false);
    await open.close();
  });
});
