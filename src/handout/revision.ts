import type { Shown } from '../edition/editions.ts';
import type { Ledger, Revision } from '../project/ledger.ts';
import { revisionWords } from '../words/changes.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import type { Voice } from '../words/voice.ts';

/** What a sheet says of its revisions, the latest first; undefined before the first. `all` is for a page. */
export function revisionsView(
  { revisions }: Ledger,
  voice: Voice,
  shown: Shown,
  all: boolean,
): object | undefined {
  const [latest, ...earlier] = revisions.toReversed().map((revision) => viewOf(revision, voice, shown));
  return latest && { ...latest, earlier: all ? earlier : [] };
}

export function revisionTitle({ number, date }: Revision, voice: Voice): string {
  return voice.say('revision', { number, date: voice.date(date) });
}

function viewOf(revision: Revision, voice: Voice, shown: Shown): object {
  const { changes, recut } = revisionWords(revision, voice.say, shown);
  return {
    title: revisionTitle(revision, voice),
    changes: revision.changes.length > 0 ? changes : [voice.say('first-published')],
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
