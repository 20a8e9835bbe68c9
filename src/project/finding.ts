import type { Place } from './source.ts';

/** What the findings of each rule tell, by the rule's id, as plain data. A rule adds its own in its own file. */
export interface Facts {
  /** A mistake of ours, which no person can put right. */
  readonly internal: { readonly reason: string };
}

export type RuleId = keyof Facts;

/** One thing that was found, as plain data; its words are in its rule alone. */
export type Finding<K extends RuleId = RuleId> = {
  [P in K]: {
    readonly rule: P;
    /** The very characters; the whole file (`startOf`) for what has none of its own. */
    readonly at: Place;
    readonly facts: Facts[P];
    /** The other edition of a project, where only that one has it. */
    readonly edition?: 'inch' | 'metric';
  };
}[K];

/** What broke of ours, and on what. */
export function findMistake(what: string, error: unknown, at: Place): Finding<'internal'> {
  const reason = error instanceof Error ? error.message : String(error);
  return { rule: 'internal', at, facts: { reason: `${what} broke: ${reason}` } };
}
