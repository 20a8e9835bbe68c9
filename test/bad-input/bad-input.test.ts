import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { findingJson } from '../../src/proof/print.ts';
import { sheetWith } from '../proof/sheet-with.ts';
import { EXAMPLE_SHEET, findingsOf } from '../proof/workspace.ts';
import { cases } from './generate.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
const table = join(here, 'expected.json');

if (process.env.UPDATE) {
  for (const folder of ['right', 'wrong']) rmSync(join(here, folder), { recursive: true, force: true });
  for (const { name, sheet } of cases()) {
    mkdirSync(dirname(join(here, name)), { recursive: true });
    writeFileSync(join(here, name), sheet);
  }
  const rows = cases().map(({ name, expected }) => [name, expected]);
  writeFileSync(table, `${JSON.stringify(Object.fromEntries(rows), null, 2)}\n`);
}

const expected = JSON.parse(readFileSync(table, 'utf8')) as Readonly<Record<string, string>>;
const kept = ['right', 'wrong'].flatMap((folder) =>
  readdirSync(join(here, folder)).map((name) => `${folder}/${name}`),
);

/** A right sheet beside wrong settings or shared files. */
const PLAIN = sheetWith({ pieces: 'card: { stock: cream, cut: 4 x 5 }' });

/** Which file of the workspace a text of the corpus stands for. */
function fileOf(name: string): string {
  if (name.includes('/site-')) return 'site.yaml';
  return name.includes('/ledger') ? EXAMPLE_SHEET.replace('sheet.md', 'revisions.yaml') : 'shared/all.yaml';
}

/** Slips that are more than one: a name that others use is gone with it, or the file that it names is not there. */
const SEVERAL: ReadonlySet<string> = new Set([
  'wrong/forms-dot-in-name.md',
  'wrong/forms-no-colon-space.md',
  'wrong/forms-piece-twice.md',
  'wrong/metric-unit-none.md',
  'wrong/prose-picture-unsaid.md',
  'wrong/shapes-corner-twice.md',
  'wrong/shapes-drawn-nowhere.md',
  'wrong/shapes-kind-plural.md',
  'wrong/variants-place-both.md',
]);

/** `12:5 unknown-key` of each error and warning. */
function foundIn(name: string): string[] {
  const text = readFileSync(join(here, name), 'utf8');
  const found = name.endsWith('.md') ? findingsOf(text) : findingsOf(PLAIN, { [fileOf(name)]: text });
  return found
    .filter(({ severity }) => severity !== 'note')
    .map((finding) => {
      const { line, column, rule } = findingJson(finding);
      return `${line}:${column} ${rule}`;
    });
}

describe('the corpus of sheets', () => {
  it('is as large as it is said to be, each file with what is expected of it', () => {
    expect(kept.toSorted()).toEqual(Object.keys(expected).toSorted());
    expect(kept.filter((name) => name.startsWith('wrong/')).length).toBeGreaterThanOrEqual(250);
    expect(kept.filter((name) => name.startsWith('right/')).length).toBeGreaterThanOrEqual(50);
  });

  it('that are right has nothing to blame', () => {
    const right = kept.filter((name) => name.startsWith('right/'));
    expect(right.flatMap((name) => foundIn(name).map((found) => `${name} ${found}`))).toEqual([]);
  });

  it('that are wrong has its one slip blamed, by its rule and at its place, and nothing else', () => {
    const wrong = kept.filter((name) => name.startsWith('wrong/'));
    const missed = wrong.flatMap((name) => {
      const found = foundIn(name);
      return (found.length === 1 || SEVERAL.has(name)) && found.includes(expected[name] ?? '')
        ? []
        : [`${name}: ${expected[name]}, not ${found.join('; ')}`];
    });
    expect(missed).toEqual([]);
  });
});
