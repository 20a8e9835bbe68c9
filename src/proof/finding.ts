import type { Place } from '../project/source.ts';

export type Severity = 'error' | 'warning' | 'note';

/** A second place that belongs to a finding: the base a layer was measured against, the first of two equal names. */
export type Note = { readonly message: string; readonly at: Place };

/** One thing a proof found, as plain data; printing it is somebody else's work. */
export type Finding = {
  /** The rule's id, also the name of its file. */
  readonly rule: string;
  readonly severity: Severity;
  /** What is wrong, with both numbers: `front is 3 3/4 in wide, 1/4 in more than box.front (3 1/2 in)`. */
  readonly message: string;
  /** What would put it right, as an imperative: `cut it at 3 1/4 in for a 1/8 in reveal`. */
  readonly remedy?: string;
  /** The very characters; absent where there is no place, and then none is printed. */
  readonly at?: Place;
  /** The file, for a finding without a place. */
  readonly file?: string;
  readonly notes: readonly Note[];
};

/** Whether findings stop what they are about: errors do; warnings too under `--strict`. */
export function isFailure(findings: readonly Finding[], strict: boolean): boolean {
  return findings.some(({ severity }) => severity === 'error' || (strict && severity === 'warning'));
}
