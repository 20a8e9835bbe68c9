import { shownEditions } from '../edition/editions.ts';
import type { Study } from '../examine/study.ts';
import { labelsOf } from '../make/languages.ts';
import { readLabels } from '../make/package-files.ts';
import type { Ledger, Revision } from '../project/ledger/ledger.ts';
import type { Project, Site } from '../project/model.ts';
import type { Work } from '../recall/recall.ts';
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

/** What changed in a project since it was published, in words; nothing where it stands as it was. */
export const workDraft: Work<readonly string[] | null> = async (study, { site }) => {
  const [published] = unpublished([study], UNDATED);
  const told = published && tellPublished(published, site).changes;
  const data = told && (told.length > 0 ? told : ['never published yet']);
  return { data: data ?? null, uses: ['templates', 'site.language'] };
};

/** The day does not show in what has changed. */
const UNDATED = '2000-01-01';

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
