import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { languageFindings } from '../../src/make/languages.ts';
import { readPictures } from '../../src/make/pictures.ts';
import { EXAMPLE_SHEET } from '../../src/proof/example.ts';
import type { Finding } from '../../src/proof/finding.ts';
import { proofFindings, proofWorkspace } from '../../src/proof/proof.ts';
import type { AnyRule, Example } from '../../src/proof/rule.ts';
import { rules as byId } from '../../src/proof/rules/index.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { blamed, findingsOf, workspaceOf } from './workspace.ts';

const rules: readonly AnyRule[] = Object.values(byId);
/** What is wrong with the program no sheet can show. */
const shown = rules.flatMap(({ id, fails, passes }) => (fails && passes ? [{ id, fails, passes }] : []));

const folder = fileURLToPath(new URL('../../src/proof/rules/', import.meta.url));
const files = readdirSync(folder).filter((name) => name.endsWith('.ts') && name !== 'index.ts');

/** Only a disk can hold a file that cannot be opened, that is no text, or a picture that is looked at when it is made. */
const ON_DISK = new Set(['not-text', 'unreadable-file', 'unreadable-picture']);

/** Found when labels are looked up. */
const OF_LABELS = new Set(['unknown-language', 'missing-label']);

/** A program with two languages, the second of which lacks a word. */
const LABELS = new Map([
  ['en', { language: 'en', texts: new Map(Object.entries({ time: 'Time', level: 'Level' })) }],
  ['de', { language: 'de', texts: new Map(Object.entries({ time: 'Dauer' })) }],
]);

/** Words of programmers, which mean nothing to a demonstrator. */
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
      expect(module[exported]).toMatchObject({ id });
    }
    expect(rules.map(({ id }) => `${id}.ts`)).toEqual(files.sort());
  });

  it('has an example to show of every rule but of the one for its own mistakes', () => {
    const without = rules.filter(({ fails, passes }) => !fails || !passes);
    expect(without.map(({ id }) => id)).toEqual(['internal']);
  });

  it('has a rule for every id that a problem of shape names', () => {
    const shape = fileURLToPath(new URL('../../src/shape/', import.meta.url));
    const ids = namedIn(shape);
    expect(ids.length).toBeGreaterThan(4);
    expect(ids.filter((id) => !rules.some((rule) => rule.id === id))).toEqual([]);
  });
});

describe.each(shown)('$id', (rule) => {
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
      { numRuns: 25, seed: 20_261_210 },
    );
  });
});

async function proofOf(id: string, { sheet, files: others = {} }: Example): Promise<Finding[]> {
  if (OF_LABELS.has(id)) {
    return [
      ...findingsOf(sheet, others),
      ...proofFindings(languageFindings(workspaceOf(sheet, others), LABELS)),
    ];
  }
  if (!ON_DISK.has(id)) return findingsOf(sheet, others);
  const root = mkdtempSync(join(tmpdir(), 'sheetwright-rule-'));
  const isFolder = Object.keys(others).some((path) => path.startsWith(`${EXAMPLE_SHEET}/`));
  for (const [path, text] of Object.entries(isFolder ? others : { ...others, [EXAMPLE_SHEET]: sheet })) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  const workspace = await loadWorkspace(root, { namedFrom: root });
  const looked = await Promise.all(
    workspace.projects.map((project) =>
      readPictures(join(root, project.folder), project, join(root, '.cache')),
    ),
  );
  const ofPictures = looked.flatMap(({ findings }) => findings);
  const findings = [...proofWorkspace(workspace, buildShapes), ...proofFindings(ofPictures)];
  rmSync(root, { recursive: true });
  return findings;
}

/** Rule ids as the source of a folder names them in its problems. */
function namedIn(path: string): string[] {
  const sources = readdirSync(path, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );
  const ids = sources.flatMap((name) =>
    [...readFileSync(join(path, name), 'utf8').matchAll(/\brule: '([\w-]+)'/gu)].map(([, id = '']) => id),
  );
  return [...new Set(ids)];
}
