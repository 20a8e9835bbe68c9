import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { folderWith, sheetwright } from '../cli/terminal.ts';
import { blocksOf, blockWith, PAGES, type Page, root } from './pages.ts';
import { SHEET, wholeWorkspace } from './whole-sheet.ts';

/** A line to type, and where it is written. */
type Typed = { readonly page: string; readonly line: string };

/** What a page tells its reader to type: between fences, or between backticks. */
function typedOn(page: Page): Typed[] {
  const fenced = blocksOf(page)
    .filter(({ language }) => language === 'sh' || language === '')
    .flatMap(({ text }) => text.split('\n'));
  const spans = [...page.text.matchAll(/`([^`\n]+)`/gu)].map(([, span = '']) => span);
  return [...fenced, ...spans]
    .flatMap((line) => line.trim().split(' && '))
    .filter((line) => /^(?:UPDATE=1 )?(?:sheetwright|npm|npx|node) [^)]*$/u.test(line))
    .map((line) => ({ page: page.path, line }));
}

const TYPED = PAGES.filter(({ path }) => path !== 'docs/rules.md').flatMap(typedOn);

/** Lines that cannot be typed as they are, and why. */
const NOT_TYPED: readonly (readonly [line: RegExp, why: string])[] = [
  [/^sheetwright preview/u, 'it serves until it is stopped: test/preview'],
  [/…|\b[A-Z]{4,}\b/u, 'it leaves something for the reader to fill in'],
];

/** What is left out for the sake of time: PDFs, which test/print and test/kit make. */
const WITHOUT_PDF: Readonly<Record<string, string>> = {
  make: '--no-pdf',
  publish: '--no-pdf',
  kit: '--csv',
  season: '--csv',
};

/** A handout that was made, as far as `copies` looks at it. */
async function twoPages(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  for (const page of ['1', '2']) pdf.addPage([612, 792]).drawText(page);
  return pdf.save();
}

/** A folder in which all that the docs speak of is there, as the docs themselves write it. */
async function readersFolder(): Promise<string> {
  const [plain, keeper, bulbs, shared, sharing, people] = [
    blockWith('docs/writing-a-project.md', 'title: Plain layered card'),
    blockWith('README.md', 'title: Seed packet keeper'),
    blockWith('docs/writing-a-project.md', '  variants:\n    small:'),
    blockWith('docs/writing-a-project.md', '# shared/cupboard.yaml'),
    blockWith('docs/writing-a-project.md', '{ use: shared.seed-box }'),
    blockWith('docs/class-kit.md', 'Reed, Juniper'),
  ];
  const made = 'dist/site/seed-packet-keeper/seed-packet-keeper';
  return folderWith({
    'my-bench/plain-card/sheet.md': plain.text.replace('4 1/2 x 5 1/4', '4 x 5 1/4'),
    'my-copy/plain-card/sheet.md': plain.text.replace('4 1/2 x 5 1/4', '4 x 5 1/4'),
    'projects/seed-packet-keeper/sheet.md': keeper.text.replace('\n', '\nsession: 2026-12-10\n'),
    'projects/bulb-box/sheet.md': wholeWorkspace(bulbs)[SHEET] ?? '',
    'projects/card/sheet.md': wholeWorkspace(sharing)[SHEET] ?? '',
    'projects/shared/cupboard.yaml': shared.text,
    'people.csv': people.text,
    [`${made}-letter.pdf`]: await twoPages(),
    [`${made}-a4.pdf`]: await twoPages(),
  });
}

/** The words of a line, as a shell parts them. */
function wordsOf(line: string): string[] {
  return (line.match(/(?:"[^"]*"|\S)+/gu) ?? []).map((word) => word.replaceAll('"', ''));
}

describe('every command of ours in the docs', () => {
  let folder = '';
  beforeAll(async () => {
    folder = await readersFolder();
  });

  const ours = TYPED.filter(({ line }) => line.startsWith('sheetwright'));
  const lines = [...new Map(ours.map((typed) => [typed.line, typed])).values()];
  const run = lines.filter(({ line }) => !NOT_TYPED.some(([why]) => why.test(line)));

  it.each(run.map(({ page, line }) => [line, page]))('%s (%s)', async (line) => {
    const [, command = '', ...rest] = wordsOf(line);
    if (command === 'draft')
      rmSync(join(folder, 'projects', rest[0] ?? ''), { recursive: true, force: true });
    const faster = WITHOUT_PDF[command];
    const { code, out, err } = await sheetwright(folder, command, ...rest, ...(faster ? [faster] : []));
    expect({ code, told: code === 0 ? '' : `${out}${err}` }).toEqual({ code: 0, told: '' });
  });

  it('leaves only lines out that have a reason', () => {
    const left = lines.filter((each) => !run.includes(each)).map(({ line }) => line);
    expect(NOT_TYPED.filter(([why]) => !left.some((line) => why.test(line)))).toEqual([]);
    expect(run.length).toBeGreaterThan(25);
  });
});

describe('every other command in the docs', () => {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>;
  };
  const others = TYPED.filter(({ line }) => !line.startsWith('sheetwright'));

  it('runs a script that there is', () => {
    const named = others.flatMap(({ line }) => /npm (?:run (?:-s )?)?([a-z]+)/u.exec(line)?.[1] ?? []);
    const npmsOwn = ['install', 'pack'];
    expect(named.filter((name) => !npmsOwn.includes(name) && !(name in scripts))).toEqual([]);
    expect(named).toContain('ordeal');
  });

  it('takes files and folders that there are', () => {
    const paths = others.flatMap(({ line }) => line.match(/(?:test|bench|docs|src)\/[\w./-]+/gu) ?? []);
    expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
    expect(paths.length).toBeGreaterThan(10);
  });
});
