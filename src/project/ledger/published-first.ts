import { compare } from '../../measure/numbers.ts';
import { ledgersNaming, type WorkspaceTexts } from '../workspace-texts.ts';
import type { SettledNumbers } from './ledger.ts';
import { readLedger } from './read-ledger.ts';

type Files = Pick<WorkspaceTexts, 'files'>;

/** By the texts of a workspace, for every project that has not published a shared piece yet asks. */
const known = new WeakMap<Files['files'], Map<string, readonly SettledNumbers[]>>();

/**
 * The numbers of a shared piece in both editions as they were published, by the project that was published first of all
 * that use it. A new project takes them over: what is cut by one sheet then fits what is cut by another.
 */
export function publishedFirst(use: string, { files }: Files): readonly SettledNumbers[] {
  const all = known.get(files) ?? new Map<string, readonly SettledNumbers[]>();
  known.set(files, all);
  const found = all.get(use) ?? firstOf(use, { files });
  all.set(use, found);
  return found;
}

function firstOf(use: string, texts: Files): readonly SettledNumbers[] {
  const published = ledgersNaming(use, texts).flatMap((file) => {
    const { revisions, state } = readLedger(file, () => {});
    const numbers = (state?.settled ?? []).filter((each) => each.use === use);
    const [first] = revisions;
    return first && numbers.length > 0 ? [{ date: first.date, numbers }] : [];
  });
  const [first] = published.toSorted((a, b) => compare(a.date, b.date));
  return first?.numbers ?? [];
}
