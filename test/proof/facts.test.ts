import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import type { RuleFacts } from '../../src/project/finding.ts';
import { isWholeFile } from '../../src/project/source.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { tellFinding } from '../../src/proof/tell.ts';
import { foundIn } from './examples.ts';
import { RULES, SHOWN } from './written-example.ts';

/** Every id that has facts has a rule: one without does not compile. */
const WORDED: Readonly<Record<keyof RuleFacts, { readonly say: unknown }>> = rules;

/** What of a value is no plain data, by its path. */
function oddities(value: unknown, path = 'facts'): string[] {
  if (value instanceof Length || value === null) return [];
  if (['string', 'number', 'boolean'].includes(typeof value)) return [];
  if (typeof value !== 'object') return [`${path} is a ${typeof value}`];
  const isPlain = Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype;
  if (!isPlain) return [`${path} is a ${value.constructor.name}`];
  return Object.entries(value).flatMap(([key, each]) => oddities(each, `${path}.${key}`));
}

function freeze(value: unknown): void {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return;
  Object.freeze(value);
  Object.values(value).forEach(freeze);
}

describe('the rules', () => {
  it('all have words', () => {
    expect(Object.values(WORDED).filter(({ say }) => typeof say !== 'function')).toEqual([]);
    expect(RULES.length).toBeGreaterThan(50);
  });

  it('see what is not plain', () => {
    expect(oddities({ a: new Map(), b: [() => 1], c: { d: undefined }, e: [Length.zero, 'x', 1] })).toEqual([
      'facts.a is a Map',
      'facts.b.0 is a function',
      'facts.c.d is a undefined',
    ]);
  });
});

describe.each(SHOWN)('$id', ({ id, fails }) => {
  it('tells plain facts, in words that depend on nothing else', async () => {
    const found = (await foundIn(id, fails)).filter(({ rule }) => rule === id);
    expect(found.length).toBeGreaterThan(0);
    for (const finding of found) {
      expect(oddities(finding.facts)).toEqual([]);
      freeze(finding);
      const told = tellFinding(finding);
      expect(told.rule).toBe(id);
      expect(tellFinding(structured(finding))).toEqual(told);
      expect(told.at).toBe(finding.at);
      expect(isWholeFile(told.at)).toBe(fails.blames === undefined);
    }
  });
});

/** The same facts in other objects. */
function structured<T>(value: T): T {
  if (value instanceof Length || typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(structured) as T;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, structured(each)])) as T;
}
