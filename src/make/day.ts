import { type Editions, ownEdition } from '../edition/editions.ts';
import type { Ledger } from '../project/ledger.ts';
import type { Project } from '../project/model.ts';

/** The day a project without a session is dated: any fixed one, so that the same sources give the same bytes. */
const UNDATED = '2000-01-01';

/** The day that stands in a project's PDFs as the day they were made: its last revision's or its session's, never the clock's. */
export function dayOf(editions: Editions, { revisions }: Ledger): string {
  return revisions.at(-1)?.date ?? dayOfProject(ownEdition(editions).project);
}

/** As `dayOf`, for what revisions do not concern: the kit of one session. */
export function dayOfProject({ session }: Project): string {
  return session?.value ?? UNDATED;
}
