import { join } from 'node:path';
import { putFiles } from '../make/files.ts';
import { type MakeResult, make } from '../make/make.ts';
import type { MakeOptions } from '../make/make-options.ts';
import { LEDGER_FILE, type Ledger } from '../project/ledger/ledger.ts';
import { ledgerText } from '../project/ledger/ledger-format.ts';
import type { Project } from '../project/model.ts';
import { lastOf, nextLedger, type Published } from './revisions.ts';

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
      return ledger;
    },
  });
  const published = [...ledgers].filter(([{ slug }]) => result.made.includes(slug));
  for (const [{ folder }, ledger] of published) {
    await putFiles(join(options.root, folder), [{ path: LEDGER_FILE, bytes: ledgerText(ledger) }]);
  }
  return { ...result, published: published.flatMap(([project, ledger]) => lastOf(project, ledger)) };
}
