import { join } from 'node:path';
import type { Study } from '../examine/examine.ts';
import { putFiles } from '../make/files.ts';
import { labelsOf } from '../make/languages.ts';
import { type MakeOptions, type MakeResult, make } from '../make/make.ts';
import { readLabels } from '../make/package-files.ts';
import { LEDGER_FILE, type Ledger, type Revision } from '../project/ledger.ts';
import type { Project, Site } from '../project/model.ts';
import { ledgerText } from '../project/read-ledger.ts';
import { type RevisionWords, revisionWords } from '../words/changes.ts';
import { speaker } from '../words/labels.ts';
import { changesBetween } from './changes.ts';
import { stateOf } from './state.ts';

/** A revision that was recorded, or would be. */
export type Published = { readonly project: Project; readonly revision: Revision };

export type PublishResult = MakeResult & { readonly published: readonly Published[] };

/**
 * Makes the workspace with a new revision for each project whose measurements or steps changed since the last one,
 * and when everything is made records the revisions in each project's ledger. A project that is held because of an
 * error is not published. Publishing again without a change records nothing.
 * @throws As `make` does; nothing is recorded then.
 */
export async function publish(options: MakeOptions): Promise<PublishResult> {
  const ledgers = new Map<Project, Ledger>();
  const result = await make({
    ...options,
    ledgerOf: (study) => {
      const ledger = nextLedger(study, options.today);
      if (ledger) ledgers.set(study.project, ledger);
      return ledger ?? study.project.ledger;
    },
  });
  const published = [...ledgers].filter(([{ slug }]) => result.made.includes(slug));
  for (const [{ folder }, ledger] of published) {
    const file = { path: LEDGER_FILE, bytes: new TextEncoder().encode(ledgerText(ledger)) };
    await putFiles(join(options.root, folder), [file]);
  }
  return { ...result, published: published.flatMap(([project, ledger]) => lastOf(project, ledger)) };
}

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
function nextLedger({ project, editions }: Study, today: string): Ledger | undefined {
  const state = stateOf(editions);
  const { revisions, state: before } = project.ledger;
  const last = revisions.at(-1);
  const changes = before ? changesBetween(before, state) : [];
  if (last && before && changes.length === 0) return undefined;
  const revision = { number: (last?.number ?? 0) + 1, date: today, own: editions.own, changes };
  return { revisions: [...revisions, revision], state };
}

function lastOf(project: Project, { revisions }: Ledger): Published[] {
  const revision = revisions.at(-1);
  return revision ? [{ project, revision }] : [];
}
