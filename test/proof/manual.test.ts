import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { rules as byId } from '../../src/proof/rules/index.ts';
import { rulesManual } from './rules-manual.ts';

const rules = Object.values(byId);
const path = fileURLToPath(new URL('../../docs/rules.md', import.meta.url));

describe('docs/rules.md', () => {
  it('is what the rules say of themselves', () => {
    const manual = rulesManual(rules);
    if (process.env.UPDATE) writeFileSync(path, manual);
    expect(readFileSync(path, 'utf8')).toBe(manual);
  });

  it('has a heading and the examples of every rule', () => {
    const manual = rulesManual(rules);
    for (const { id, fails, passes } of rules) {
      expect(manual).toContain(`\n## ${id}\n`);
      for (const { sheet } of [fails ?? [], passes ?? []].flat())
        if (!sheet.includes('\u0000')) expect(manual).toContain(sheet.trimEnd());
    }
  });
});
