import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import type { Finding, RuleFacts, RuleId } from '../../src/project/finding.ts';
import { type At, type Place, sourceFile } from '../../src/project/source.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { tellFinding } from '../../src/proof/tell.ts';
import type { Severity } from '../../src/proof/told.ts';

const at: Place = { file: sourceFile('card/sheet.md', 'cut: 3 x 4'), start: 5, end: 10 };

export function inches(numerator: number, denominator = 1): Length {
  return Length.of(numerator, denominator, 'in');
}

/** A value somewhere in the sheet. */
export function placed<T>(value: T): At<T> {
  return { value, at };
}

/** Facts of one rule, and the message, the remedy and the severity (else the rule's own) they are told in. */
type Case<K extends RuleId> = readonly [facts: RuleFacts[K], message: string, remedy: string, Severity?];

export type Cases = { readonly [K in RuleId]?: readonly Case<K>[] };

/** What a rule says needs facts alone: no sheet has to be found that leads to each case. */
export function expectWords(cases: Cases): void {
  const table = Object.entries(cases).flatMap(([rule, ofRule]) =>
    ofRule.map(([facts, message, remedy, severity]) => ({ rule, facts, message, remedy, severity })),
  );
  describe('the words of', () => {
    it.each(table)('$rule: $message', ({ rule, facts, message, remedy, severity }) => {
      // Each case was held against the facts of its own rule where it is written.
      const told = tellFinding({ rule, at, facts } as Finding);
      expect(told).toMatchObject({ rule, message, remedy, at });
      expect(told.severity).toBe(severity ?? rules[told.rule].severity);
    });
  });
}
