import type { Ledger, Revision } from '../project/ledger.ts';
import { revisionWords } from '../words/changes.ts';
import type { Leading } from '../words/measures.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import type { Voice } from '../words/voice.ts';

/** One revision as a sheet shows it. */
type RevisionView = {
  readonly title: string;
  readonly changes: readonly string[];
  /** Which pieces whoever printed an earlier one cuts again. */
  readonly recut: SafeHtml | undefined;
};

/** The revisions of a sheet: the latest, and on a page all before it. */
export type RevisionsView = RevisionView & { readonly earlier: readonly RevisionView[] };

/** What a sheet says of its revisions, the latest first; undefined before the first. `all` is for a page. */
export function revisionsView(
  { revisions }: Ledger,
  voice: Voice,
  leading: Leading,
  all: boolean,
): RevisionsView | undefined {
  const [latest, ...earlier] = revisions.toReversed().map((revision) => viewOf(revision, voice, leading));
  return latest && { ...latest, earlier: all ? earlier : [] };
}

export function revisionTitle({ number, date }: Revision, voice: Voice): string {
  return voice.say('revision', { number, date: voice.date(date) });
}

function viewOf(revision: Revision, voice: Voice, leading: Leading): RevisionView {
  const { changes, recut } = revisionWords(revision, voice.say, leading);
  return {
    title: revisionTitle(revision, voice),
    changes: changes.length > 0 ? changes : [voice.say('first-published')],
    recut: recutWords(revision, recut, voice),
  };
}

/** Which pieces whoever printed the revision before cuts again; undefined where there are none. */
export function recutWords(
  { number }: Revision,
  recut: readonly string[],
  voice: Voice,
): SafeHtml | undefined {
  const pieces = voice.list(recut);
  return recut.length > 0 ? voice.phrase('cut-again', { before: number - 1, pieces }) : undefined;
}
