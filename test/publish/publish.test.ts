import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadTexts } from '../../src/project/load.ts';
import { sourceFile } from '../../src/project/source.ts';
import { keepPrints } from '../../src/publish/keep.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { emptyFolder, folderWith, sheetwright } from '../cli/terminal.ts';

const SHEET = `---
title: Card
session: 2026-12-10
measurements:
  unit: in
  stock: { cream: { name: Cream, sheet: 8 1/2 x 11 } }
  pieces:
    card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { front: B1 } }
    front: { stock: cream, cut: 4 x 5 1/4, on: card.front }
---
A card.

## Score the card
Score :piece[card].

## Stick the front
Stick :piece[front] on.
`;

function workspace(): { folder: string; sheet: string; ledger: string } {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'projects/card'), { recursive: true });
  const sheet = join(folder, 'projects/card/sheet.md');
  writeFileSync(sheet, SHEET);
  return { folder, sheet, ledger: join(folder, 'projects/card/revisions.yaml') };
}

const edit = (path: string, from: string, to: string): void =>
  writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
const pageOf = (folder: string): string => readFileSync(join(folder, 'dist/site/card/index.html'), 'utf8');

/** Every file below a folder, with its bytes. */
function filesIn(folder: string): ReadonlyMap<string, string> {
  const all = readdirSync(folder, { recursive: true, withFileTypes: true });
  const paths = all.filter((each) => each.isFile()).map((each) => join(each.parentPath, each.name));
  const named = paths.map((path) => [path.slice(folder.length), readFileSync(path, 'latin1')] as const);
  return new Map(named.toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

describe('sheetwright publish', () => {
  it('records exactly one revision for each real change', async () => {
    const { folder, sheet, ledger } = workspace();
    const first = await sheetwright(folder, 'publish', '--no-pdf');
    expect(first).toMatchObject({ code: 0 });
    expect(first.out).toContain('card, revision 1:\n  first published\n1 revision recorded');
    const recorded = readFileSync(ledger, 'utf8');

    const again = await sheetwright(folder, 'publish', '--no-pdf');
    expect(again.out).toContain('nothing has changed since the last revision, so none was recorded');
    expect(readFileSync(ledger, 'utf8')).toBe(recorded);

    edit(sheet, '4 x 5 1/4', '4 x 5 1/8');
    const second = await sheetwright(folder, 'publish', '--no-pdf');
    expect(second.out).toContain('front was 4 × 5¼ in (102 × 134 mm), is 4 × 5⅛ in (102 × 130 mm)');
    expect(second.out).toContain('to cut again: front');
    expect(pageOf(folder)).toContain('front was 4 × 5¼ in (102 × 134 mm), is 4 × 5⅛ in (102 × 130 mm)');
    expect(pageOf(folder)).toContain(
      'If you cut your pieces from revision 1 or earlier, cut these again: front.',
    );
    expect(readFileSync(ledger, 'utf8')).toMatch(/number: 2/u);
    expect((await sheetwright(folder, 'publish', '--no-pdf')).out).toContain('none was recorded');
  });

  it('leads to what was handed out before, from the folder where it is kept, and says on top what to cut again', async () => {
    const { folder, sheet, ledger } = workspace();
    await sheetwright(folder, 'publish', '--no-pdf');
    // As a browser would have printed it; nothing is kept of what was made without PDFs.
    const kept = join(folder, 'projects/card/revisions/r1');
    expect(existsSync(kept)).toBe(false);
    mkdirSync(kept, { recursive: true });
    writeFileSync(join(kept, 'handout-a4.pdf'), 'as handed out');
    for (const size of ['4 x 5 1/8', '3 3/4 x 5 1/8']) {
      writeFileSync(sheet, SHEET.replace('4 x 5 1/4', size).replace('8 1/2 x 5 1/2', '8 1/2 x 5 1/4'));
      await sheetwright(folder, 'publish', '--no-pdf');
    }
    const page = pageOf(folder);
    const notice = page.slice(page.indexOf('class="revision correction"'), page.indexOf('id="cut"'));
    expect(notice).toContain('If you cut your pieces from revision 2 or earlier, cut these again: front.');
    expect(notice).toMatch(/from revision 1 or earlier, cut these again: (card and front|front and card)\./u);
    const href = 'r1/card-r1-handout-a4.pdf';
    expect(page).toContain(`href="${href}"`);
    expect(readFileSync(join(folder, 'dist/site/card', href), 'utf8')).toBe('as handed out');

    // A workspace is all there is: copied elsewhere, without what was made, it gives the same bytes.
    const elsewhere = join(emptyFolder(), 'moved house');
    cpSync(join(folder, 'projects'), join(elsewhere, 'projects'), { recursive: true });
    await sheetwright(elsewhere, 'make', '--no-pdf');
    const made = filesIn(join(folder, 'dist'));
    expect(made.size).toBeGreaterThan(20);
    expect(filesIn(join(elsewhere, 'dist'))).toEqual(made);
    expect((await sheetwright(folder, 'make', '--no-pdf')).out).toContain('0 files new or changed');
    expect(readFileSync(ledger, 'utf8')).toMatch(/number: 3/u);
  });

  it('completes what a publish that was ended kept, and leaves what was handed out as it is', async () => {
    const folder = folderWith({
      'projects/card/sheet.md': SHEET,
      'projects/card/revisions/r1/handout-a4.pdf': 'as handed out',
      'dist/site/card/card-a4.pdf': 'made anew',
      'dist/site/card/card-template.pdf': 'the template',
    });
    const texts = await loadTexts(join(folder, 'projects'), {});
    const spot = { slug: 'card', folder: 'card', file: sourceFile('card/sheet.md', SHEET) };
    const { site } = readWorkspaceFromTexts({ 'site.yaml': 'paper: a4\n' });
    await keepPrints({ texts, out: join(folder, 'dist') }, spot, 1, site);
    const kept = join(folder, 'projects/card/revisions/r1');
    expect(readFileSync(join(kept, 'handout-a4.pdf'), 'utf8')).toBe('as handed out');
    expect(readFileSync(join(kept, 'template-a4.pdf'), 'utf8')).toBe('the template');
  });

  it('hands out nothing that a link leads to outside the project, and no folder', async () => {
    const { folder, ledger } = workspace();
    const kept = join(folder, 'projects/card/revisions/r1');
    mkdirSync(join(kept, 'template-a4.pdf'), { recursive: true });
    writeFileSync(join(folder, 'secret.txt'), 'for nobody');
    symlinkSync(join(folder, 'secret.txt'), join(kept, 'handout-a4.pdf'));
    const revision = (number: number): string => `  - { number: ${number}, date: 2026-01-01, changes: [] }\n`;
    writeFileSync(ledger, `revisions:\n${revision(1)}${revision(2)}`);
    expect(await sheetwright(folder, 'make', '--no-pdf')).toMatchObject({ code: 0 });
    expect(existsSync(join(folder, 'dist/site/card/index.html'))).toBe(true);
    expect(existsSync(join(folder, 'dist/site/card/r1'))).toBe(false);
  });

  it('keeps no handouts where a link leads out of the project, and says so of a dry run too', async () => {
    const { folder } = workspace();
    const project = join(folder, 'projects/card');
    mkdirSync(join(folder, 'elsewhere'));
    const texts = await loadTexts(join(folder, 'projects'), {});
    const { site } = readWorkspaceFromTexts({ 'site.yaml': 'paper: a4\n' });
    const spot = { slug: 'card', folder: 'card', file: sourceFile('card/sheet.md', SHEET) };
    mkdirSync(join(folder, 'dist/site/card'), { recursive: true });
    writeFileSync(join(folder, 'dist/site/card/card-a4.pdf'), 'a handout');
    const keep = (): Promise<void> => keepPrints({ texts, out: join(folder, 'dist') }, spot, 1, site);

    symlinkSync(join(folder, 'elsewhere'), join(project, 'revisions'));
    await expect(keep()).rejects.toThrow('card/revisions is a link that leads out of the project');
    expect(await sheetwright(folder, 'publish', '--dry-run')).toMatchObject({
      code: 2,
      err: expect.stringContaining('card/revisions is a link that leads out'),
    });
    rmSync(join(project, 'revisions'));
    mkdirSync(join(project, 'revisions'));
    symlinkSync(join(folder, 'elsewhere'), join(project, 'revisions/r1'));
    await expect(keep()).rejects.toThrow('card/revisions/r1 is a link that leads out of the project');
    expect(readdirSync(join(folder, 'elsewhere'))).toEqual([]);
    rmSync(join(project, 'revisions/r1'));
    await keep();
    expect(readdirSync(join(project, 'revisions/r1'))).toEqual(['handout-a4.pdf']);
  });

  it('records nothing in a dry run, but says what it would', async () => {
    const { folder, ledger } = workspace();
    const dry = await sheetwright(folder, 'publish', '--dry-run');
    expect(dry.out).toContain('1 revision would be recorded');
    expect(existsSync(ledger)).toBe(false);
    expect(existsSync(join(folder, 'dist'))).toBe(false);
  });

  it('fails in a dry run where it would fail', async () => {
    const { folder, sheet, ledger } = workspace();
    writeFileSync(ledger, '<<<<<<< HEAD\nrevisions: []\n=======\n');
    for (const dry of [[], ['--dry-run']]) {
      const { code, out } = await sheetwright(folder, 'publish', '--no-pdf', ...dry);
      expect([code, out]).toEqual([
        1,
        expect.stringMatching(/^projects\/card\/revisions\.yaml:1:1 .*\n.*<<<<<<< HEAD/u),
      ]);
      expect(out).toContain('none was recorded');
    }
    rmSync(ledger);
    edit(sheet, '4 x 5 1/4', '4 1/2 x 5 1/4');
    expect((await sheetwright(folder, 'publish', '--dry-run')).code).toBe(1);
  });

  it('that was killed after its ledger and before its pages has them made by the next run, and leaves nothing', async () => {
    const { folder, sheet, ledger } = workspace();
    await sheetwright(folder, 'publish', '--no-pdf');
    edit(sheet, '4 x 5 1/4', '4 x 5 1/8');
    const page = join(folder, 'dist/site/card/index.html');
    const before = readFileSync(page);
    // A folder in the place of the page stops it where a kill would.
    rmSync(page);
    mkdirSync(page);
    writeFileSync(`${ledger}.making-0a1b2c3d`, 'half');
    expect((await sheetwright(folder, 'publish', '--no-pdf')).code).toBe(2);
    expect(readFileSync(ledger, 'utf8')).toMatch(/number: 2/u);
    rmSync(page, { recursive: true });
    writeFileSync(page, before);
    const { code, out } = await sheetwright(folder, 'publish', '--no-pdf');
    expect([code, out]).toEqual([0, expect.stringContaining('none was recorded')]);
    expect(pageOf(folder)).toContain('front was 4 × 5¼ in (102 × 134 mm), is 4 × 5⅛ in (102 × 130 mm)');
    expect(readdirSync(join(folder, 'projects/card')).sort()).toEqual(['revisions.yaml', 'sheet.md']);
  });

  it('does not publish a project with an error', async () => {
    const { folder, sheet, ledger } = workspace();
    edit(sheet, '4 x 5 1/4', '4 1/2 x 5 1/4');
    const { code, out } = await sheetwright(folder, 'publish', '--no-pdf');
    expect(code).toBe(1);
    expect(out).toContain('[layer-overhang]');
    expect(existsSync(ledger)).toBe(false);
  });

  it('finds the same in numbers that are kept as in those that were found', async () => {
    const { folder, sheet } = workspace();
    const strips = [1, 2, 3, 4].map(
      (left) => `    s${left}: { stock: cream, cut: 1 x 3, on: base, at: { left: ${left} } }\n`,
    );
    const first = '    s0: { stock: cream, cut: 1 x 3, on: base, at: { right: 4 } }\n';
    edit(
      sheet,
      '  pieces:\n',
      `  pieces:\n    base: { stock: cream, cut: 5 x 3 }\n${first}${strips.join('')}`,
    );
    const { out } = await sheetwright(folder, 'proof', '--json');
    expect(out).toContain('1 in of s2 becomes 27 mm');
    await sheetwright(folder, 'publish', '--no-pdf');
    edit(sheet, 'A card.', 'A card!');
    expect((await sheetwright(folder, 'proof', '--json')).out).toBe(out);
  });

  it('never writes over a ledger that it cannot read', async () => {
    const { folder, sheet, ledger } = workspace();
    await sheetwright(folder, 'publish', '--no-pdf');
    writeFileSync(ledger, 'revisions: [oops');
    edit(sheet, '4 x 5 1/4', '4 x 5 1/8');
    const { code, out } = await sheetwright(folder, 'publish', '--no-pdf');
    expect(code).toBe(1);
    expect(out).toContain('card/revisions.yaml');
    expect(readFileSync(ledger, 'utf8')).toBe('revisions: [oops');
  });

  it.each([
    ['a day that is none', 'date: 2026-12-01', 'date: 2026-02-30'],
    ['scores without an edge', 'changes: []', 'changes: [{ piece: card, what: scores, after: { word: x } }]'],
    ['paper with an edge', 'changes: []', 'changes: [{ piece: card, what: paper, from: left, after: {} }]'],
  ])('holds a project for %s in its ledger, and publishes the others', async (_, from, to) => {
    const { folder, ledger } = workspace();
    const healthy = join(folder, 'projects/tag');
    mkdirSync(healthy);
    writeFileSync(join(healthy, 'sheet.md'), SHEET);
    const broken = 'revisions:\n  - number: 1\n    date: 2026-12-01\n    changes: []\n'.replace(from, to);
    writeFileSync(ledger, broken);

    const made = await sheetwright(folder, 'make', '--no-pdf', '--quiet');
    expect(made).toMatchObject({ code: 1, err: '' });
    expect(made.out).toContain('card/revisions.yaml');
    expect(existsSync(join(folder, 'dist/site/tag/index.html'))).toBe(true);
    expect(existsSync(join(folder, 'dist/site/card/index.html'))).toBe(false);

    const published = await sheetwright(folder, 'publish', '--no-pdf');
    expect(published.code).toBe(1);
    expect(published.out).toContain('tag, revision 1:');
    expect(readFileSync(ledger, 'utf8')).toBe(broken);
    expect(existsSync(join(healthy, 'revisions.yaml'))).toBe(true);
  });

  it('records nothing when the browser is missing', async () => {
    const { folder, ledger } = workspace();
    const { code } = await sheetwright(folder, 'publish', '--browser', '/no/such/browser');
    expect(code).toBe(2);
    expect(existsSync(ledger)).toBe(false);
    rmSync(folder, { recursive: true, force: true });
  });
});
