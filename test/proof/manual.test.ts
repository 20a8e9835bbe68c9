import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { textsOf } from '../drawing/drawn.ts';
import { ruleDrawings, rulesManual } from './rules-manual.ts';
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

  it('shows each rule that can be seen as it fails and as it passes', () => {
    const folder = fileURLToPath(new URL('../../docs/rules/', import.meta.url));
    const drawings = ruleDrawings();
    mkdirSync(folder, { recursive: true });
    for (const [id, drawing] of drawings) {
      const file = join(folder, `${id}.svg`);
      if (process.env.UPDATE || (!existsSync(file) && !process.env.CI)) writeFileSync(file, drawing);
      // How lines are drawn is the drawings' own; what a picture says must be what the example says.
      expect([id, textsOf(readFileSync(file, 'utf8'))]).toEqual([id, textsOf(drawing)]);
      expect(drawing).not.toMatch(/NaN|undefined/u);
    }
    expect(readdirSync(folder).toSorted()).toEqual([...drawings.keys()].map((id) => `${id}.svg`).toSorted());
    expect(drawings.size).toBeGreaterThan(50);
  });

  it('has a heading and the examples of every rule', () => {
    const manual = rulesManual();
    for (const [id] of RULES) expect(manual).toContain(`\n## ${id}\n`);
    for (const { sheet } of SHOWN.flatMap(({ fails, passes }) => [fails, passes]))
      if (!sheet.includes('\u0000')) expect(manual).toContain(sheet.trimEnd());
  });
});
