import type { NamedLink } from '../project/model.ts';
import type { Fact } from '../words/fact.ts';

/** What a page tells of its session: when, where, with whom. */
export type MeetingView = {
  /** `YYYY-MM-DD`. */
  readonly session: string | undefined;
  /** Its calendar file, relative to the page. */
  readonly calendar: string | undefined;
  readonly facts: readonly Fact[];
  readonly terms: string | undefined;
  readonly links: readonly NamedLink[];
};
