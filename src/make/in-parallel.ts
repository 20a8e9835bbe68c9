import { setImmediate } from 'node:timers/promises';

/**
 * Does the same work with each of a list, several at a time, begun in their order and one by one: what the first asks of
 * others is under way while the next begins. After a failure none is begun, and those under way are waited for. @throws What the first failure threw.
 */
export async function inParallel<T>(
  items: readonly T[],
  atATime: number,
  work: (item: T) => Promise<void>,
): Promise<void> {
  const rest = items.values();
  const failures: unknown[] = [];
  const worker = async (_: unknown, place: number): Promise<void> => {
    for (let turn = 0; turn < place; turn += 1) await setImmediate();
    for (const item of rest) {
      if (failures.length > 0) return;
      await work(item).catch((error: unknown) => failures.push(error));
    }
  };
  await Promise.all(Array.from({ length: atATime }, worker));
  if (failures.length > 0) throw failures[0];
}
