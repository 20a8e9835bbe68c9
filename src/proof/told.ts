import { compare } from '../measure/numbers.ts';
import type { RuleId } from '../project/finding.ts';
import type { Place } from '../project/source.ts';

export type Severity = 'error' | 'warning' | 'note';

/** What a rule says of a finding, in English. */
export type Words = {
  /** What is wrong, with both numbers: `front is 3 3/4 in wide, 1/4 in more than box.front (3 1/2 in)`. */
  readonly message: string;
  /** What would put it right, as an imperative: `cut it at 3 1/4 in for a 1/8 in reveal`. */
  readonly remedy?: string;
  /** Further places that belong to it: the base a layer was measured against, the first of two equal names. */
  readonly notes?: readonly { readonly message: string; readonly at: Place }[];
  /** Where one rule has graver and lighter cases; else the rule's own. */
  readonly severity?: Severity;
};

/** A finding in the words of its rule, at the same place. */
export type Told = Words &
  Required<Pick<Words, 'severity' | 'notes'>> & { readonly rule: RuleId; readonly at: Place };

/** Whether findings stop what they are about: errors do; warnings too under `--strict`. */
export function isFailure(findings: readonly Told[], strict: boolean): boolean {
  return findings.some(({ severity }) => severity === 'error' || (strict && severity === 'warning'));
}

/**
 * Findings from everywhere as one list: the same rule with the same words at the same place once (what is wrong in a file
 * that several projects use, say), by file, then by place, then by rule.
 */
export function mergeTold(told: readonly Told[]): Told[] {
  const key = ({ rule, at, message }: Told): string =>
    [rule, at.file.path, at.start, at.end, message].join('\n');
  return [...new Map(told.map((each) => [key(each), each])).values()].sort(
    (a, b) =>
      compare(a.at.file.path, b.at.file.path) ||
      a.at.start - b.at.start ||
      a.at.end - b.at.end ||
      compare(a.rule, b.rule),
  );
}
