import type { Place } from './source.ts';

/** What the findings of each rule tell, by the rule's id. A rule adds its own facts in its own file. */
export interface Facts {
  /** A mistake of ours: what broke, and where no person can put it right. */
  readonly internal: { readonly reason: string };
}

export type RuleId = keyof Facts;

/**
 * One thing that was found, as plain data: its words are in its rule alone. `at` are the very characters, or the
 * whole file (`startOf`) for what has no characters of its own.
 */
export type Finding<K extends RuleId = RuleId> = {
  [P in K]: { readonly rule: P; readonly at: Place; readonly facts: Facts[P] };
}[K];
