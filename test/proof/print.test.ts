import { describe, expect, it } from 'vitest';
import { sourceFile, startOf } from '../../src/project/source.ts';
import { findingsJson, printFindings } from '../../src/proof/print.ts';
import type { Told } from '../../src/proof/told.ts';
import { findingsOf, workspaceOf } from './workspace.ts';

const SHEET = `---
title: Card
measurements:
  unit: in
  stock:
    cream: { name: Cream, sheet: 8 1/2 x 11 }
  pieces:
    box: { stock: cream, cut: 3 1/2 x 5 }
    front: { stock: cream, cut: 3 3/4 x 4 3/4, on: box }
---
## Stick
Stick :piece[front] on :piece[box].
`;

/** A finding at the first `needle` of a text. */
function findingAt(text: string, needle: string, rest: Partial<Told> = {}): Told {
  const file = sourceFile('a/sheet.md', text);
  const start = file.text.indexOf(needle);
  const at = { file, start, end: start + needle.length };
  return { rule: 'unknown-key', severity: 'error', message: 'this is wrong', at, notes: [], ...rest };
}

/** The source line and the line of carets. */
function frame(text: string, needle: string): string[] {
  return printFindings([findingAt(text, needle)], { summary: false })
    .split('\n')
    .slice(1, 3)
    .map((line) => line.slice(4));
}

describe('findings as text', () => {
  it('points at the number, says the remedy and the second place, and sums up', () => {
    const { projects } = workspaceOf(SHEET, { 'other/sheet.md': SHEET.replace('3 3/4', '3 1/4') });
    const findings = findingsOf(SHEET, { 'other/sheet.md': SHEET.replace('3 3/4', '3 1/4') });
    expect(printFindings(findings, { projects })).toBe(
      `card/sheet.md:9:33  error  front is 3 3/4 in wide, 1/4 in more than box (3 1/2 in)  [layer-overhang]
        front: { stock: cream, cut: 3 3/4 x 4 3/4, on: box }
                                    ^^^^^
  remedy: cut it at 3 1/4 in for a 1/8 in reveal
  see card/sheet.md:8:31  box is 3 1/2 in wide
        box: { stock: cream, cut: 3 1/2 x 5 }
                                  ^^^^^

1 error in 1 of 2 projects
`,
    );
  });

  it('prints a finding without a place by its file alone', () => {
    expect(printFindings(findingsOf(''), { summary: false })).toBe(
      `card/sheet.md  error  the file is empty  [empty-file]
  remedy: write what belongs in it, or delete it
`,
    );
  });

  it.each<[string, Told[], number | undefined, string]>([
    ['nothing', [], undefined, 'nothing found\n'],
    ['nothing in projects', [], 3, 'nothing found in 3 projects\n'],
    ['one', [findingAt('abc', 'b')], undefined, '1 error in 1 file\n'],
  ])('sums up %s', (_, findings, count, expected) => {
    const projects = workspaceOf(SHEET).projects.flatMap((project) =>
      Array<typeof project>(count ?? 0).fill(project),
    );
    const text = printFindings(findings, count === undefined ? {} : { projects });
    expect(text.split('\n').slice(-2).join('\n')).toBe(expected);
  });

  it('sums up each severity, and files that are no project', () => {
    const files = { 'site.yaml': 'titel: Bench\n' };
    const sheet = SHEET.replace(
      '## Stick\nStick :piece[front] on :piece[box].',
      '## Stick\nStick :piece[front].',
    );
    const text = printFindings(findingsOf(sheet, files), { projects: workspaceOf(sheet, files).projects });
    expect(text.trimEnd().split('\n').at(-1)).toBe('1 error, 2 warnings in 1 of 1 project and 1 other file');
  });

  it('leaves everything plain unless it is given ink', () => {
    const finding = findingAt('abc', 'b', { severity: 'warning', remedy: 'mend it' });
    expect(printFindings([finding])).not.toContain('\u001B');
    expect(printFindings([finding], { ink: (ink, text) => `<${ink}>${text}</>`, summary: false })).toBe(
      `<bold>a/sheet.md:1:2</>  <yellow>warning</>  this is wrong  <gray>[unknown-key]</>
    abc
    <yellow> ^</>
  remedy: mend it
`,
    );
  });
});

describe('findings by the thousand', () => {
  const many = Array.from({ length: 2345 }, () => findingAt('one\ntwo', 'two', { severity: 'warning' }));
  const error = findingAt('one\ntwo', 'one', { message: 'this stops it' });
  const elsewhere = { ...error, at: startOf(sourceFile('b/sheet.md', 'abc')) };
  const text = printFindings([...many, error, elsewhere]);

  it('are told up to a hundred of a file, its errors first, and how many more there are', () => {
    expect(text.match(/this is wrong/gu)).toHaveLength(99);
    expect(text).toContain('and 2,246 more in a/sheet.md\n\nb/sheet.md  error');
    expect(text.match(/this stops it/gu)).toHaveLength(2);
  });

  it('are all counted, and all in JSON', () => {
    expect(text).toContain('\n2 errors, 2,345 warnings in 2 files\n');
    expect(JSON.parse(findingsJson([...many, error]))).toHaveLength(2346);
  });
});

describe('the source line', () => {
  it.each<[string, string, string, string[]]>([
    ['in the middle', 'one\ntwo three\nfour', 'three', ['two three', '    ^^^^^']],
    ['at the very end', 'one\ntwo', 'two', ['two', '^^^']],
    ['with tabs before it', 'a\tb\tcut: 3', '3', ['a\tb\tcut: 3', ' \t \t     ^']],
    ['with Windows line ends', 'one\r\ntwo\r\nfour', 'two', ['two', '^^^']],
    ['over several lines', 'one\ntwo\nthree', 'two\nthree', ['two', '^^^']],
    ['at the end of a line', 'one\ntwo', '\n', ['one', '   ^']],
    ['with a letter of two units', 'cut 𝟛 x 4', '𝟛', ['cut 𝟛 x 4', '    ^']],
  ])('%s', (_, text, needle, expected) => {
    expect(frame(text, needle)).toEqual(expected);
  });

  it('is cut round the place when it is long, and the carets stay under it', () => {
    for (const before of [0, 10, 60, 100, 150, 299]) {
      const line = `${'a'.repeat(before)}3 1/4${'b'.repeat(300 - before)}`;
      const [source = '', carets = ''] = frame(line, '3 1/4');
      expect(source.length).toBeLessThanOrEqual(102);
      expect(source.slice(carets.indexOf('^'), carets.lastIndexOf('^') + 1)).toBe('3 1/4');
      expect(carets.trim()).toBe('^^^^^');
      expect(source.startsWith('…')).toBe(before > 40);
      expect(source.endsWith('…')).toBe(before < 245);
    }
  });

  it('keeps a short line whole and a long place within the cut', () => {
    expect(frame('x'.repeat(100), 'x'.repeat(100))).toEqual(['x'.repeat(100), '^'.repeat(100)]);
    const [source = '', carets = ''] = frame(`${'x'.repeat(500)}`, 'x'.repeat(500));
    expect(source).toBe(`${'x'.repeat(100)}…`);
    expect(carets).toBe('^'.repeat(100));
  });

  it('never lets a text take hold of the terminal', () => {
    const finding = findingAt('cut: \u001B[2J3', '3', {
      message: 'no \u001B]0;title\u0007',
      remedy: 'a\u009Bb',
    });
    const text = printFindings([finding]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be printed
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/u);
    expect(text).toContain('cut: �[2J3');
  });
});

describe('findings as JSON', () => {
  it('has one record a finding, with null where there is no place or remedy', () => {
    const place = findingAt('one\ntwo three', 'three', { remedy: 'mend it' });
    const at = startOf(sourceFile('b/sheet.md', 'abc'));
    const nowhere = findingAt('abc', 'b', { severity: 'note', at });
    const json = findingsJson([place, nowhere]);
    expect(json.endsWith(']\n')).toBe(true);
    expect(JSON.parse(json)).toEqual([
      {
        file: 'a/sheet.md',
        line: 2,
        column: 5,
        endLine: 2,
        endColumn: 10,
        severity: 'error',
        rule: 'unknown-key',
        message: 'this is wrong',
        remedy: 'mend it',
      },
      {
        file: 'b/sheet.md',
        line: null,
        column: null,
        endLine: null,
        endColumn: null,
        severity: 'note',
        rule: 'unknown-key',
        message: 'this is wrong',
        remedy: null,
      },
    ]);
    expect(findingsJson([])).toBe('[]\n');
  });
});
