import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith, type Outcome, sheetwright } from '../cli/terminal.ts';

const GOOD = `---
title: Card
measurements:
  unit: in
  stock: { cream: { name: Cream cardstock, sheet: 8 1/2 x 11 } }
  pieces: { card: { stock: cream, cut: 4 x 5 } }
---
A card.

## Cut it
Cut :piece[card].
`;
const LONG = 'a'.repeat(240);

async function madeBeside(bad: Readonly<Record<string, string>>): Promise<Outcome & { isMade: boolean }> {
  const folder = folderWith({ 'good/sheet.md': GOOD, ...bad });
  const outcome = await sheetwright(folder, 'make', '--no-pdf');
  return { ...outcome, isMade: existsSync(join(folder, 'dist/site/good/index.html')) };
}

describe('one bad project', () => {
  it.each([
    ['a name too long for a file', { [`${LONG}/sheet.md`]: GOOD }, 'long-folder-name'],
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

function headed(line: string): string {
  return GOOD.replace('measurements:', `${line}\nmeasurements:`);
}

function nested(levels: number): string {
  return `${'['.repeat(levels)}x${']'.repeat(levels)}`;
}
