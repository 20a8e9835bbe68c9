import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RuleId } from '../../src/project/finding.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { runs } from '../runs.ts';
import { foundIn } from './examples.ts';
import { blamed, findingsOf } from './workspace.ts';
import { RULES, SHOWN, type WrittenExample } from './written-example.ts';

const folder = fileURLToPath(new URL('../../src/proof/rules/', import.meta.url));
const files = readdirSync(folder).filter((name) => name.endsWith('.ts') && name !== 'index.ts');

/** Words of programrs, which mean nothing to a demonstrator. */
const JARGON =
  /\b(?:scalar|token|undefined|null|NaN|parse[rd]?|YAML|string|boolean|array|object|syntax|node|schema|exception|invalid)\b/iu;

describe('the registry', () => {
  it('has one rule a file, named like its file and its export', async () => {
    expect(files.length).toBeGreaterThan(30);
    for (const name of files) {
      const id = name.slice(0, -3);
      const module: Record<string, unknown> = await import(join(folder, name));
      const exported = id.replace(/-(\w)/gu, (_, letter: string) => letter.toUpperCase());
      expect(Object.keys(module)).toContain(exported);
      expect(module[exported]).toMatchObject({ summary: RULES.find(([each]) => each === id)?.[1].summary });
    }
    expect(RULES.map(([id]) => `${id}.ts`)).toEqual(files.sort());
  });

  it('has an example to show of every rule but of the one for its own mistakes', () => {
    const shown = SHOWN.map(({ id }) => id);
    expect(RULES.map(([id]) => id).filter((id) => !shown.includes(id))).toEqual(['internal']);
    expect(SHOWN.filter(({ fails, passes }) => fails.sheet === passes.sheet).map(({ id }) => id)).toEqual([
      'long-folder-name',
      'missing-picture',
      'same-slug',
      'unreadable-font',
      'unreadable-outline',
    ]);
  });
});

describe.each(SHOWN)('$id', (rule) => {
  it('finds what its failing example shows', async () => {
    const findings = (await proofOf(rule.id, rule.fails)).filter((finding) => finding.rule === rule.id);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.map(blamed)).toContain(rule.fails.blames);
    for (const { message, remedy = '' } of findings) expect(`${message} ${remedy}`).not.toMatch(JARGON);
  });

  it('passes its passing example, which has no error at all', async () => {
    const findings = await proofOf(rule.id, rule.passes);
    expect(findings.filter((each) => each.rule === rule.id || each.severity === 'error')).toEqual([]);
  });

  it('never breaks, whatever is missing of its failing example', () => {
    const lines = rule.fails.sheet.split('\n');
    const kept = fc.array(fc.boolean(), { minLength: lines.length, maxLength: lines.length });
    const cut = fc.nat(rule.fails.sheet.length);
    fc.assert(
      fc.property(kept, cut, cut, (keep, from, length) => {
        const stripped = lines.filter((_, index) => keep[index]).join('\n');
        const torn = rule.fails.sheet.slice(0, from) + rule.fails.sheet.slice(from + length);
        for (const sheet of [stripped, torn]) {
          expect(findingsOf(sheet, rule.fails.files).filter((each) => each.rule === 'internal')).toEqual([]);
        }
      }),
      runs(20_261_210, 8, 200),
    );
  });
});

async function proofOf(id: RuleId, example: WrittenExample): Promise<readonly Told[]> {
  return mergeFindings(await foundIn(id, example));
}
