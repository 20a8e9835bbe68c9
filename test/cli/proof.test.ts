import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli.ts';
import { demoCopy, emptyFolder, sheetwright } from './terminal.ts';

function workspaceWith(sheet: string | Uint8Array): string {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'card'));
  writeFileSync(join(folder, 'card', 'sheet.md'), sheet);
  return folder;
}

const sheetWith = (cut: string, more = ''): string => `---
title: Card
measurements:
  unit: in
  stock:
    cream: { name: Cream cardstock, sheet: 8 1/2 x 11 }
  pieces:
    card: { stock: cream, cut: ${cut} }
${more}---
A card.

## Cut it
Cut :piece[card].
`;

describe('sheetwright proof', () => {
  it('finds nothing wrong with the demo', async () => {
    const { code, out, err } = await sheetwright(demoCopy(), 'proof', '--strict');
    expect(err).toBe('');
    expect(out).not.toMatch(/ error | warning /u);
    expect(code).toBe(0);
  });

  it('prints file, line, column, the line and a caret under the very number', async () => {
    const { code, out } = await sheetwright(workspaceWith(sheetWith('2 1/0 x 4')), 'proof');
    expect(code).toBe(1);
    const [head, source, caret] = out.split('\n');
    expect(head).toMatch(/^card\/sheet\.md:8:32 {2}error {2}.*2 1\/0.* {2}\[unreadable-length\]$/u);
    expect(source?.trim()).toBe('card: { stock: cream, cut: 2 1/0 x 4 }');
    expect(source?.slice(caret?.indexOf('^'), (caret?.lastIndexOf('^') ?? 0) + 1)).toBe('2 1/0');
    expect(out).toMatch(/1 error/u);
  });

  it('prints one JSON array and nothing else with --json', async () => {
    const { code, out, err } = await sheetwright(workspaceWith(sheetWith('-3 x 4')), 'proof', '--json');
    expect(code).toBe(1);
    expect(err).toBe('');
    const findings: unknown = JSON.parse(out);
    expect(findings).toMatchObject([
      {
        file: 'card/sheet.md',
        line: 8,
        column: 32,
        endLine: 8,
        endColumn: 34,
        severity: 'error',
        rule: 'unreadable-length',
      },
    ]);
  });

  it.each([
    ['a length with a denominator of zero', sheetWith('2 1/0 x 4'), 'unreadable-length'],
    ['a length with two strokes', sheetWith('1/4/2 x 4'), 'unreadable-length'],
    ['a negative length', sheetWith('-3 x 4'), 'unreadable-length'],
    ['an absurd length', sheetWith('99999 x 4'), 'unreadable-length'],
    ['a length in words', sheetWith('two inches x 4'), 'unreadable-length'],
    ['broken YAML', sheetWith('4 x 4').replace('title: Card', 'title: [Card'), 'broken-yaml'],
    ['a file without frontmatter', '# Just text\n', 'no-frontmatter'],
    ['an empty file', '', 'empty-file'],
    ['a binary file', new Uint8Array([0, 1, 2, 255, 254, 0]), 'not-text'],
    ['a layer on itself', sheetWith('4 x 4').replace('4 x 4 }', '4 x 4, on: card }'), 'circular-base'],
    [
      'a base that is not there',
      sheetWith('4 x 4').replace('4 x 4 }', '4 x 4, on: crad }'),
      'unknown-reference',
    ],
    [
      'a picture that leaves the folder',
      `${sheetWith('4 x 4')}\n![A card](../../etc/hosts)\n`,
      'outside-picture',
    ],
    ['a script', `${sheetWith('4 x 4')}\n<script>alert(1)</script>\n`, 'unsafe-content'],
    ['a script link', `${sheetWith('4 x 4')}\n[press](javascript:alert)\n`, 'unsafe-content'],
  ])('says what is wrong with %s, without a stack trace', async (_, sheet, rule) => {
    const { out, err } = await sheetwright(workspaceWith(sheet), 'proof');
    expect(out).toContain(`[${rule}]`);
    expect(out).not.toContain('[internal]');
    expect(out + err).not.toMatch(/^\s+at .+\(/mu);
    expect(err).toBe('');
  });

  it('refuses a folder without projects, in one line that says what to do', async () => {
    const { code, err } = await sheetwright(emptyFolder(), 'proof');
    expect(code).toBe(2);
    expect(err).toMatch(/^sheetwright: no projects here.*draft.*\n$/u);
  });

  it('refuses what it does not know', async () => {
    expect((await sheetwright(emptyFolder(), 'prove')).code).toBe(2);
    expect((await sheetwright(emptyFolder(), 'proof', '--loud')).code).toBe(2);
  });

  it('helps and tells its version', async () => {
    const help = await sheetwright(emptyFolder(), '--help');
    expect([help.code, help.out]).toEqual([0, expect.stringContaining('proof')]);
    expect((await sheetwright(emptyFolder(), '--version')).out).toMatch(/^\d+\.\d+\.\d+\n$/u);
  });

  it('goes on to its end when nobody reads on, as behind `head`', async () => {
    const closed = Object.assign(new Error('write EPIPE'), { code: 'EPIPE' });
    const stdout = new Writable({ write: (_chunk, _encoding, done) => done(closed) });
    const stderr = new Writable({ write: (_chunk, _encoding, done) => done() });
    const cwd = workspaceWith(sheetWith('4 1/4 x 5 1/2'));
    const argv = ['proof', '--editions'];
    const code = await run({ argv, cwd, env: {}, stdin: Readable.from([]), stdout, stderr });
    expect([code, stdout.errored]).toEqual([0, closed]);
  });

  it('says in one line that what it prints cannot be written, as on a full disk', async () => {
    const full = Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC' });
    const stdout = new Writable({ write: (_chunk, _encoding, done) => done(full) });
    const told: string[] = [];
    const stderr = new Writable({
      write: (chunk, _encoding, done) => {
        told.push(String(chunk));
        done();
      },
    });
    const cwd = workspaceWith(sheetWith('4 1/4 x 5 1/2'));
    const argv = ['proof', '--json'];
    const code = await run({ argv, cwd, env: {}, stdin: Readable.from([]), stdout, stderr });
    expect([code, told.join('')]).toEqual([
      2,
      expect.stringMatching(/^sheetwright: .*ENOSPC.*make room.*\n$/u),
    ]);
  });

  it('prints a table of both editions', async () => {
    const { out } = await sheetwright(workspaceWith(sheetWith('4 1/4 x 5 1/2')), 'proof', '--editions');
    expect(out).toMatch(/4 1\/4 +107\.95 +108 +\+0\.05 +card width/u);
  });

  // By hand: 4 mm is 0.1575 in, 3/16 in is 4.7625 mm; 85 mm is 3.3465 in, and 3 3/8 in is 85.725 mm.
  it('says how far off the printed number is, of what is merely converted too', async () => {
    const holds = 'measurements:\n  holds: { item: coaster, size: 85 mm x 55 mm x 4 mm }';
    const written = sheetWith('108 x 140').replace('unit: in', 'unit: mm').replace('8 1/2 x 11', 'A4');
    const sheet = written.replace('measurements:', holds);
    const { out } = await sheetwright(workspaceWith(sheet), 'proof', '--editions');
    expect(out).toMatch(/ 4 +0\.1575 +3\/16 +\+0\.763 /u);
    expect(out).toMatch(/ 85 +3\.3465 +3 3\/8 +\+0\.725 /u);
    expect(out).toContain('greatest deviation 0.763 mm');
  });

  it('says of a project with one edition that it is printed alone', async () => {
    const sheet = sheetWith('4 1/4 x 5 1/2').replace('measurements:', 'units: inch\nmeasurements:');
    const { out } = await sheetwright(workspaceWith(sheet), 'proof', '--editions');
    expect(out).toContain('written in inches, printed in inches alone');
    expect(out).not.toContain('mm');
  });
});
