import { shownEditions } from '../edition/editions.ts';
import type { Study } from '../examine/examine.ts';
import { labelsOf } from '../make/languages.ts';
import { readLabels } from '../make/package-files.ts';
import type { Ledger, Revision } from '../project/ledger/ledger.ts';
import type { Project, Site } from '../project/model.ts';
import { type RevisionWords, revisionWords } from '../words/changes.ts';
import { speaker } from '../words/labels.ts';
import { changesBetween } from './changes.ts';
import { stateOf } from './state.ts';

/** A revision that was recorded, or would be. */
export type Published = { readonly project: Project; readonly revision: Revision };

/** The revisions that publishing now would record, without making anything. */
export function unpublished(studies: readonly Study[], today: string): readonly Published[] {
  return studies.flatMap((study) => {
    const ledger = nextLedger(study, today);
    return ledger ? lastOf(study.project, ledger) : [];
  });
}

/** A revision in the language of its project. */
export function tellPublished({ project, revision }: Published, site: Site): RevisionWords {
  return revisionWords(revision, speaker(labelsOf(project, site, readLabels())));
}

/** The ledger with one revision more; undefined when nothing that counts has changed. */
export function nextLedger({ project, editions }: Study, today: string): Ledger | undefined {
  const state = stateOf(editions);
  const { revisions, state: before } = project.ledger;
  const last = revisions.at(-1);
  const changes = before ? changesBetween(before, state) : [];
  if (last && before && changes.length === 0) return undefined;
  const revision = { number: (last?.number ?? 0) + 1, date: today, own: shownEditions(editions)[0], changes };
  return { revisions: [...revisions, revision], state };
}

export function lastOf(project: Project, { revisions }: Ledger): Published[] {
  const revision = revisions.at(-1);
  return revision ? [{ project, revision }] : [];
}
