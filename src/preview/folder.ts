import { Busy, takeLock } from '../make/lock.ts';

/** Lies in the output folder of a preview as long as it runs. */
const LOCK = '.previewing';
const MOST_PREVIEWS = 20;

/** A folder of its own for each preview: the one that was named, or one beside it with a number behind. */
export async function takeFolder(
  wanted: string,
  number = 1,
): Promise<{ readonly out: string; readonly release: () => Promise<void> }> {
  const out = number === 1 ? wanted : `${wanted}-${number}`;
  try {
    return { out, release: await takeLock(out, LOCK) };
  } catch (error) {
    if (error instanceof Busy && number < MOST_PREVIEWS) return takeFolder(wanted, number + 1);
    throw error;
  }
}
