import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openExamination } from '../../src/examine/examine.ts';
import type { Job } from '../../src/make/job.ts';
import { perform } from '../../src/make/perform.ts';
import { PrintFault } from '../../src/print/fault.ts';
import { Recall } from '../../src/recall/recall.ts';
import { CARD_SHEET } from '../card-sheet.ts';
import { folderWith, type Outcome, sheetwright } from '../cli/terminal.ts';

const LONG = 'a'.repeat(240);

async function madeBeside(bad: Readonly<Record<string, string>>): Promise<Outcome & { isMade: boolean }> {
  const folder = folderWith({ 'good/sheet.md': CARD_SHEET, ...bad });
  const outcome = await sheetwright(folder, 'make', '--no-pdf');
  return { ...outcome, isMade: existsSync(join(folder, 'dist/site/good/index.html')) };
}

describe('one bad project', () => {
  it.each([
    ['a name too long for a file', { [`${LONG}/sheet.md`]: CARD_SHEET }, 'long-folder-name'],
    ['3,000 lists in one another', { 'b/sheet.md': headed(`tags: ${'- '.repeat(3000)}x`) }, 'broken-yaml'],
    ['3,000 lists below a key', { 'b/sheet.md': headed(`tags:\n  ${'- '.repeat(3000)}x`) }, 'broken-yaml'],
    ['3,000 brackets in one another', { 'b/sheet.md': headed(`tags: ${'['.repeat(3000)}`) }, 'broken-yaml'],
    [
      'an address too long for a printed code',
      { 'b/sheet.md': headed(`video: https://example.org/${'a'.repeat(2500)}`) },
      'unexpected-value',
    ],
    ['300 brackets, all closed', { 'b/sheet.md': headed(`tags: ${nested(300)}`) }, 'broken-yaml'],
  ])('with %s is one finding, and the others are made', async (_, bad, rule) => {
    const { code, out, err, isMade } = await madeBeside(bad);
    expect([code, isMade]).toEqual([1, true]);
    expect(out).toContain(`[${rule}]`);
    expect(err).not.toContain('sheetwright:');
  });

  it('may say what it likes of the far future, or in its title', async () => {
    const far = headed('session: 9999-12-31').replace('title: Card', 'title: What endobj means');
    const site =
      'sessions: { every: 2 weeks, on: thursday, at: "18:30", zone: America/Chicago, from: 2026-10-01 }';
    expect(await madeBeside({ 'b/sheet.md': far, 'site.yaml': site })).toMatchObject({
      code: 0,
      isMade: true,
    });
  });
});

describe('a page that fails', () => {
  it('has nothing more drawn of its project', async () => {
    const drawn: string[] = [];
    const jobFor = (path: string, print: () => Promise<Uint8Array>): Job => ({
      path,
      isPrinted: true,
      produce: () => {
        drawn.push(path);
        return print();
      },
    });
    const never = (): Promise<Uint8Array> => new Promise(() => {});
    const fault = new PrintFault('no');
    const jobs = [
      jobFor('a.pdf', never),
      jobFor('b.pdf', () => Promise.reject(fault)),
      jobFor('c.pdf', never),
    ];
    const root = folderWith({ 'a/sheet.md': CARD_SHEET });
    const recall = await Recall.open(root, root, async (texts) => openExamination(texts));
    const { inputs, stamps } = recall;
    const bench = { inputs, stamps, out: root, pdf: true, isLeft: () => false, working: () => {} };
    const kinds = [{ name: 'handout', jobsOf: () => jobs }];
    const task = { folder: 'a', kinds, before: undefined, stale: 'new' } as const;
    await expect(perform(task, bench)).rejects.toBe(fault);
    expect(drawn).toEqual(['a.pdf', 'b.pdf']);
  });
});

describe('a browser that does not start', () => {
  /** A browser that says its version, notes that it was started, and ends. */
  const BROWSER =
    '#!/bin/sh\nif [ "$1" = --version ]; then echo 1; else echo x >> "$0.started"; exit 1; fi\n';

  async function madeWith(
    sheet: string,
  ): Promise<{ readonly outcomes: readonly Outcome[]; readonly starts: number }> {
    const folder = folderWith({ 'a/sheet.md': sheet, headless_shell: BROWSER });
    const browser = join(folder, 'headless_shell');
    chmodSync(browser, 0o755);
    const outcomes = [
      await sheetwright(folder, 'make', '--browser', browser),
      await sheetwright(folder, 'make', '--browser', browser),
    ];
    const started = `${browser}.started`;
    return { outcomes, starts: existsSync(started) ? readFileSync(started, 'utf8').length / 2 : 0 };
  }

  it('is told of only where something is printed', async () => {
    const { outcomes } = await madeWith(CARD_SHEET);
    for (const { code, err } of outcomes) {
      expect(code).toBe(2);
      expect(err).toContain('headless_shell');
    }
  });

  it('is started once at most for a sheet with an error, while that is not known', async () => {
    const { outcomes, starts } = await madeWith(CARD_SHEET.replace('stock: cream,', 'stock: green,'));
    for (const { code, err } of outcomes) {
      expect(code).toBe(1);
      expect(err).not.toContain('headless_shell');
    }
    expect(starts).toBe(1);
  });
});

function headed(line: string): string {
  return CARD_SHEET.replace('measurements:', `${line}\nmeasurements:`);
}

function nested(levels: number): string {
  return `${'['.repeat(levels)}x${']'.repeat(levels)}`;
}
