import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { rulesManual } from './rules-manual.ts';
import { RULES, SHOWN } from './written-example.ts';

const path = fileURLToPath(new URL('../../docs/rules.md', import.meta.url));

describe('docs/rules.md', () => {
  it('is what the rules say of themselves', () => {
    const manual = rulesManual();
    const isNew = RULES.some(([id]) => !readFileSync(path, 'utf8').includes(`\n## ${id}\n`));
    // A rule that was just added is written down at once, but for CI, where it should have been committed.
    if (process.env.UPDATE || (isNew && !process.env.CI)) writeFileSync(path, manual);
    expect(readFileSync(path, 'utf8')).toBe(manual);
  });

  it('has a heading and the examples of every rule', () => {
    const manual = rulesManual();
    for (const [id] of RULES) expect(manual).toContain(`\n## ${id}\n`);
    for (const { sheet } of SHOWN.flatMap(({ fails, passes }) => [fails, passes]))
      if (!sheet.includes('\u0000')) expect(manual).toContain(sheet.trimEnd());
  });
});
