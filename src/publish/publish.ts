import { join } from 'node:path';
import type { Study } from '../edition/study.ts';
import { putFiles } from '../make/files.ts';
import { labelsOf } from '../make/languages.ts';
import { type MakeOptions, type MakeResult, make } from '../make/make.ts';
import { readLabels } from '../make/package-files.ts';
import { LEDGER_FILE, type Ledger, ledgerText, type Revision } from '../project/ledger.ts';
import type { Site } from '../project/model.ts';
import { type Labels, speaker } from '../words/labels.ts';
import { changesBetween } from './changes.ts';
import { stateOf } from './state.ts';

/** A revision that was recorded, or would be. */
export type Published = { readonly slug: string; readonly title: string; readonly revision: Revision };

export type PublishResult = MakeResult & { readonly published: readonly Published[] };

/**
 * Makes the workspace with a new revision for each project whose measurements or steps changed since the last one,
 * and when everything is made records the revisions in each project's ledger. A project that is held because of an
 * error is not published. Publishing again without a change records nothing.
 * @throws As `make` does; nothing is recorded then.
 */
export async function publish(options: MakeOptions): Promise<PublishResult> {
  const ledgers = new Map<string, { readonly study: Study; readonly ledger: Ledger }>();
  const result = await make({
    ...options,
    ledgerOf: (study, labels) => {
      const ledger = nextLedger(study, options.today, labels);
      if (!ledger) return study.project.ledger;
      ledgers.set(study.project.slug, { study, ledger });
      return ledger;
    },
  });
  const published = [...ledgers].filter(([slug]) => result.made.includes(slug));
  for (const [, { study, ledger }] of published) {
    const folder = join(options.root, study.project.folder);
    await putFiles(folder, [{ path: LEDGER_FILE, bytes: new TextEncoder().encode(ledgerText(ledger)) }]);
  }
  return { ...result, published: published.flatMap(([, each]) => publishedOf(each.study, each.ledger)) };
}

/** The revisions that publishing now would record, without making anything. */
export function unpublished(site: Site, studies: readonly Study[], today: string): readonly Published[] {
  const all = readLabels();
  return studies.flatMap((study) => {
    const ledger = nextLedger(study, today, labelsOf(study.project, site, all));
    return ledger ? publishedOf(study, ledger) : [];
  });
}

/** The ledger with one revision more; undefined when nothing that counts has changed. */
export function nextLedger({ project, shapes }: Study, today: string, labels: Labels): Ledger | undefined {
  const state = stateOf(project, shapes);
  const { revisions, state: before } = project.ledger;
  const last = revisions.at(-1);
  const { changes, recut } = before
    ? changesBetween(before, state, speaker(labels))
    : { changes: [], recut: [] };
  if (last && before && changes.length === 0) return undefined;
  const revision = { number: (last?.number ?? 0) + 1, date: today, changes, recut };
  return { revisions: [...revisions, revision], state };
}

function publishedOf({ project }: Study, { revisions }: Ledger): Published[] {
  const revision = revisions.at(-1);
  return revision ? [{ slug: project.slug, title: project.title.value, revision }] : [];
}
