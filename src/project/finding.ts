import type { Place } from './source.ts';

/** What the findings of each rule tell, by the rule's id, as plain data; the registry of rules fills it in. */
// biome-ignore lint/suspicious/noEmptyInterface: each rule adds its own facts
export interface RuleFacts {}

export type RuleId = keyof RuleFacts;

/** One thing that was found, as plain data; its words are in its rule alone. */
export type Finding<K extends RuleId = RuleId> = {
  [P in K]: {
    readonly rule: P;
    /** The very characters; the whole file (`startOf`) for what has none of its own. */
    readonly at: Place;
    readonly facts: RuleFacts[P];
    /** Where in `shared/` it is written, if it is right there and wrong only together with what uses it. */
    readonly shared?: Place;
    /** The other edition of a project, where only that one has it. */
    readonly edition?: 'inch' | 'metric';
    /** The variant of a project, where not all of them have it. */
    readonly variant?: string;
  };
}[K];

/** Which part of our own code broke, and on what. */
export function findMistake(what: string, error: unknown, at: Place): Finding<'internal'> {
  const reason = error instanceof Error ? error.message : String(error);
  return { rule: 'internal', at, facts: { reason: `${what} broke: ${reason}` } };
}
