import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { emptyFolder, sheetwright } from '../cli/terminal.ts';
import { readPdf } from '../print/read-pdf.ts';

/** All files below a folder with their bytes as text, for comparing. */
function contents(folder: string): Map<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  const paths = files.map((entry) => join(entry.parentPath, entry.name));
  // What was made, not what is remembered of it.
  const made = paths.filter((path) => !path.slice(folder.length + 1).startsWith('.'));
  return new Map(made.map((path) => [path.slice(folder.length + 1), readFileSync(path).toString('base64')]));
}

function changed(before: Map<string, string>, after: Map<string, string>): string[] {
  const paths = new Set([...before.keys(), ...after.keys()]);
  return [...paths].filter((path) => before.get(path) !== after.get(path)).sort();
}

function rewrite(path: string, from: string, to: string): void {
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(from);
  writeFileSync(path, text.replaceAll(from, to));
}

const DEMO = fileURLToPath(new URL('../../projects', import.meta.url));
const BOX = 'short-pencil-box';
const sheetOf = (folder: string, slug: string): string => join(folder, 'projects', slug, 'sheet.md');

/** A workspace of some demo projects. */
function workspaceOf(...slugs: readonly string[]): string {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'projects'));
  for (const name of ['site.yaml', 'shared', ...slugs])
    cpSync(join(DEMO, name), join(folder, 'projects', name), { recursive: true });
  return folder;
}

describe('a make with PDFs', () => {
  let folder = '';
  let before = new Map<string, string>();
  let after = new Map<string, string>();
  const pdf = (files: Map<string, string>, name: string): Promise<Awaited<ReturnType<typeof readPdf>>> =>
    readPdf(new Uint8Array(Buffer.from(files.get(`site/${BOX}/${BOX}-${name}.pdf`) ?? '', 'base64')));
  const html = (files: Map<string, string>): string =>
    Buffer.from(files.get(`site/${BOX}/index.html`) ?? '', 'base64').toString('utf8');

  beforeAll(async () => {
    folder = workspaceOf(BOX, 'seed-paper-folder');
    const first = await sheetwright(folder, 'make');
    expect(first.err).toMatch(/made site\/short-pencil-box\/short-pencil-box-a4\.pdf/u);
    expect(first.code).toBe(0);
    before = contents(join(folder, 'dist'));
    // The layer on the front and the back grows: 2 3/4 × 3 3/4 becomes 2 3/4 × 3 7/8.
    rewrite(sheetOf(folder, BOX), 'cut: 2 3/4 x 3 3/4,', 'cut: 2 3/4 x 3 7/8,');
    await sheetwright(folder, 'make');
    after = contents(join(folder, 'dist'));
  }, 180_000);

  it('follows a changed measurement everywhere it is shown, and nowhere else', async () => {
    for (const name of ['letter', 'a4']) {
      const [old, now] = [await pdf(before, name), await pdf(after, name)].map(({ pages }) =>
        pages
          .map(({ text }) => text)
          .join('\n')
          .replaceAll('⁄', '/')
          .replace(/\s+/gu, ' '),
      );
      expect(old).not.toMatch(/2 3\/4 × 3 7\/8 in/u);
      expect(now).toMatch(/2 3\/4 × 3 7\/8 in/u);
      expect(now).not.toMatch(/2 3\/4 × 3 3\/4 in/u);
    }
    expect(html(before)).not.toMatch(/3\s*<[^>]*>7\/8/u);
    expect(html(after)).toMatch(/3\s*<[^>]*>7\/8/u);
    const touched = changed(before, after).filter((path) => !path.endsWith('make.json'));
    const cueCard = `host/${BOX}-cue-card.pdf`;
    expect(touched.filter((path) => !path.startsWith(`site/${BOX}/`))).toEqual([cueCard]);
    expect(touched).toContain(`site/${BOX}/${BOX}-letter.pdf`);
    expect(touched).toContain(`site/${BOX}/${BOX}-a4.pdf`);
    expect(touched).toContain(`site/${BOX}/index.html`);
  });

  it('prints on the papers of ISO 216 and of North America', async () => {
    const [letter, a4] = [await pdf(after, 'letter'), await pdf(after, 'a4')];
    // Letter is 8 1/2 × 11 in (ANSI/ASME Y14.1 A), 215.9 × 279.4 mm; A4 is 210 × 297 mm (ISO 216).
    for (const { widthMm, heightMm } of letter.pages) {
      expect(widthMm).toBeCloseTo(215.9, 1);
      expect(heightMm).toBeCloseTo(279.4, 1);
    }
    for (const { widthMm, heightMm } of a4.pages) {
      expect(Math.abs(widthMm - 210)).toBeLessThan(0.4);
      expect(Math.abs(heightMm - 297)).toBeLessThan(0.4);
    }
  });

  it('makes PDFs that are tagged, outlined, titled, in a language, with fonts embedded and a pinned date', async () => {
    for (const name of ['letter', 'a4', 'large-print']) {
      const { tagged, outline, title, lang, fonts, created, pages } = await pdf(after, name);
      expect(tagged).toBe(true);
      expect(outline.length).toBeGreaterThan(3);
      expect(title).toBe('Short pencil box');
      expect(lang).toBe('en');
      expect(fonts.length).toBeGreaterThan(0);
      expect(fonts.filter(({ embedded }) => !embedded)).toEqual([]);
      expect(created).toMatch(/^D:20270304/u);
      expect(pages[0]?.text).toMatch(new RegExp(`Page 1 of ${pages.length}`, 'u'));
    }
  });

  it('makes the same bytes again', async () => {
    await sheetwright(folder, 'make', '--all', '--only', BOX);
    expect(changed(after, contents(join(folder, 'dist')))).toEqual([]);
  }, 120_000);

  it('makes nothing that is made already', async () => {
    const again = await sheetwright(folder, 'make');
    expect(again.err).not.toContain('.pdf');
    expect(changed(after, contents(join(folder, 'dist')))).toEqual([]);
  });
});

describe('a make without PDFs', () => {
  let madeOnce = '';

  beforeAll(async () => {
    madeOnce = workspaceOf(BOX, 'three-layer-thank-you', 'seed-paper-folder');
    expect((await sheetwright(madeOnce, 'make', '--no-pdf')).code).toBe(0);
  });

  /** A workspace of three demo projects, and all that was made of it. */
  function madeWorkspace(): string {
    const folder = emptyFolder();
    cpSync(madeOnce, folder, { recursive: true });
    return folder;
  }

  it('keeps the last good output of a project with an error, makes the others, and fails', async () => {
    const folder = madeWorkspace();
    const before = contents(join(folder, 'dist'));
    rewrite(sheetOf(folder, BOX), 'cut: 9 x 6 1/2', 'cut: 9 x 6 1/0');
    rewrite(sheetOf(folder, 'three-layer-thank-you'), 'title: ', 'title: Another ');
    const { code, out } = await sheetwright(folder, 'make', '--no-pdf');
    expect(code).toBe(1);
    expect(out).toContain('[unreadable-length]');
    expect(out).toContain(`not updated because of errors: ${BOX}`);
    const after = contents(join(folder, 'dist'));
    const touched = changed(before, after);
    const ofBox = (path: string): boolean =>
      path.startsWith(`site/${BOX}/`) || path.startsWith(`host/${BOX}`);
    expect(touched.filter(ofBox)).toEqual([]);
    expect(touched).toContain('site/three-layer-thank-you/index.html');
    const index = readFileSync(join(folder, 'dist/site/index.html'), 'utf8');
    expect(index).toContain('Short pencil box');
    expect(index).toContain('Another');
  });

  it('makes only the projects named, and refuses one that is not there', async () => {
    const folder = workspaceOf(BOX, 'seed-paper-folder');
    await sheetwright(folder, 'make', 'projects', '--no-pdf', '--only', 'seed-paper-folder');
    expect(existsSync(join(folder, 'dist/site/seed-paper-folder'))).toBe(true);
    expect(existsSync(join(folder, 'dist/site', BOX))).toBe(false);
    const missing = await sheetwright(folder, 'make', '--no-pdf', '--only', 'nothing-of-the-kind');
    expect(missing.code).toBe(2);
    expect(missing.err).toContain(BOX);
  });

  it('removes what it made of a project that is gone, and nothing else', async () => {
    const folder = madeWorkspace();
    const mine = join(folder, 'dist/site/mine.txt');
    writeFileSync(mine, 'mine');
    rmSync(join(folder, 'projects', BOX), { recursive: true });
    await sheetwright(folder, 'make', '--no-pdf');
    expect(existsSync(join(folder, 'dist/site', BOX, 'index.html'))).toBe(false);
    expect(readFileSync(join(folder, 'dist/site/index.html'), 'utf8')).not.toContain('Short pencil box');
    expect(readFileSync(mine, 'utf8')).toBe('mine');
  });

  it('follows a shared value into every project that uses it, and into no other', async () => {
    const folder = madeWorkspace();
    const before = contents(join(folder, 'dist'));
    rewrite(join(folder, 'projects/shared/stock.yaml'), 'Ripple print', 'Wavelet print');
    await sheetwright(folder, 'make', '--no-pdf');
    const pages = changed(before, contents(join(folder, 'dist'))).filter((path) => path.endsWith('.html'));
    expect(pages).toContain(`site/${BOX}/index.html`);
    expect(pages).toContain('site/three-layer-thank-you/index.html');
    expect(pages).not.toContain('site/seed-paper-folder/index.html');
  });

  it('says which picture cannot be read, and where it is named', async () => {
    const folder = workspaceOf(BOX);
    writeFileSync(join(folder, 'projects', BOX, 'photos/flat.jpg'), 'not a picture');
    const { code, out } = await sheetwright(folder, 'make', '--no-pdf');
    expect(code).toBe(1);
    expect(out).toMatch(
      /short-pencil-box\/sheet\.md:\d+:\d+ {2}error {2}photos\/flat\.jpg .*\[unreadable-picture\]/u,
    );
  });

  it('refuses an output folder that is a file, and a browser that is not there', async () => {
    const folder = workspaceOf('seed-paper-folder');
    writeFileSync(join(folder, 'taken'), '');
    const taken = await sheetwright(folder, 'make', '--no-pdf', '--out', 'taken');
    expect(taken.code).toBe(2);
    expect(taken.err).toMatch(/^sheetwright: cannot write into .*--out\n$/u);
    const missing = await sheetwright(folder, 'make', '--browser', '/no/such/browser');
    expect(missing.code).toBe(2);
    expect(missing.err.split('\n').filter((line) => line.startsWith('sheetwright:'))).toHaveLength(1);
  });

  it('lets nothing of a project reach a page as code', async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'projects/trap'), { recursive: true });
    const sheet = `---
title: "<script>alert('title')</script> {{slug}}"
summary: "<img src=x onerror=alert(1)>"
measurements:
  unit: in
  stock: { cream: { name: "<b>Cream</b>", sheet: 8 1/2 x 11 } }
  pieces:
    card: { stock: cream, cut: 4 x 4 }
supplies:
  - { item: "{{{constructor}}} <i>pen</i>", kind: tool }
---
Hello {{title}} and {{{this}}}.

## Cut <script>alert('step')</script> it
Cut :piece[card] <b onclick="alert(2)">now</b>. [press](javascript:alert(3)) [data](data:text/html,x)
`;
    writeFileSync(join(folder, 'projects/trap/sheet.md'), sheet);
    const { out } = await sheetwright(folder, 'make', '--no-pdf');
    expect(out).toContain('[unsafe-content]');
    // Whatever a finding stops, what can be made of the rest must be harmless too.
    writeFileSync(
      join(folder, 'projects/trap/sheet.md'),
      sheet.replace(/## Cut[\s\S]*$/u, '## Cut it\nCut :piece[card] {{#each this}}x{{/each}}.\n'),
    );
    const clean = await sheetwright(folder, 'make', '--no-pdf');
    expect(clean.out).not.toContain(' error ');
    for (const path of ['trap/index.html', 'index.html']) {
      const page = readFileSync(join(folder, 'dist/site', path), 'utf8');
      expect(page).not.toMatch(/<script>alert|<img src=x|<i>pen|<b>Cream/u);
      if (path.startsWith('trap')) {
        expect(page).toContain('{{title}}');
        expect(page).toContain('{{#each this}}x{{/each}}');
      }
    }
  });
});
