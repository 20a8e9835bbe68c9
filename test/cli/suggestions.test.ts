import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { folderWith, sheetwright } from './terminal.ts';

const card = (cut: string): string => `---
title: Card
measurements:
  unit: in
  stock: { cream: { name: Cream, sheet: 8 1/2 x 11 } }
  pieces: { card: { stock: cream, cut: ${cut} } }
---
## Cut
Cut :piece[card].
`;
const RIGHT = card('4 x 5');
const TOO_LARGE = card('4 x 50');

type Row = readonly [
  typed: readonly string[],
  files: Readonly<Record<string, string>>,
  suggested: readonly string[],
];

/** What is typed where, and the commands that the answer has for the reader to paste. */
const ROWS: readonly Row[] = [
  [['proof'], {}, ['draft my-first-card']],
  [['proof', 'my-bench'], { 'my-bench/notes.txt': '' }, ['draft my-first-card my-bench']],
  [['proof', 'my bench'], { 'my bench/notes.txt': '' }, ['draft my-first-card "my bench"']],
  [['draft', 'box'], {}, ['proof', 'make']],
  [['draft', 'box', 'my-bench'], {}, ['proof my-bench', 'make my-bench']],
  [['draft', 'box', 'my bench'], {}, ['proof "my bench"', 'make "my bench"']],
  [
    ['draft', 'box', 'my-bench', '--from', 'card', '--holds', '1 x 2 x 3'],
    { 'my-bench/card/sheet.md': TOO_LARGE },
    ['proof my-bench'],
  ],
  [['copies', 'card', '--count', '2'], { 'card/sheet.md': RIGHT }, ['make --only card']],
  [
    ['copies', 'card', 'my-bench', '--count', '2', '--out', 'my site'],
    { 'my-bench/card/sheet.md': RIGHT },
    ['make my-bench --only card --out "my site"'],
  ],
];

/** The words of a line, as a shell parts them. */
const wordsOf = (line: string): string[] =>
  (line.match(/"[^"]*"|\S+/gu) ?? []).map((word) => word.replaceAll('"', ''));

describe('a command that a message suggests', () => {
  it.each(ROWS)('%j', async (typed, files, suggested) => {
    const folder = folderWith(files);
    const { out, err } = await sheetwright(folder, ...typed);
    const lines = [...`${out}${err}`.matchAll(/(["'])sheetwright (.+?)\1/gu)].map(([, , line = '']) => line);
    expect(lines).toEqual(suggested);
    for (const line of lines) {
      const [command = '', ...words] = wordsOf(line);
      const done = await sheetwright(folder, command, ...words, ...(command === 'make' ? ['--no-pdf'] : []));
      // A proof that lists errors has done its work.
      const isProof = command === 'proof' && / error /u.test(done.out);
      expect([line, done.code, done.err.replace(/^made .*\n/gmu, '')]).toEqual([line, isProof ? 1 : 0, '']);
    }
  });

  it('stands in the table, whatever file suggests it', () => {
    const source = fileURLToPath(new URL('../../src', import.meta.url));
    const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.ts'),
    );
    const code = files.map((name) => [name, readFileSync(join(source, name), 'utf8')] as const);
    const suggesting = code.flatMap(([name, text]) => (/commandFor\(/u.test(text) ? [name] : []));
    expect(suggesting.toSorted()).toEqual(
      ['copies', 'draft', 'draft-from', 'workspace-folder'].map((name) => `cli/${name}.ts`).toSorted(),
    );
    // What `publish` writes, or what has been published, is spoken of and not suggested.
    const spoken = code.flatMap(([name, text]) =>
      /['"`].*"sheetwright [a-z]+/u.test(text.replaceAll('"sheetwright publish" wrote', '')) ? [name] : [],
    );
    expect(spoken).toEqual(['project/ledger/ledger-format.ts']);
  });
});
