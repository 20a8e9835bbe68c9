import { describe, expect, it } from 'vitest';
import { IS_LONG } from '../runs.ts';
import { Ground } from './ground.ts';
import { PRINTING_ROUNDS, ROUNDS, type Round, randomOf } from './rounds.ts';

/** `npm run ordeal` goes through more than what every run of the tests has time for. */
const COUNT = Number(process.env.ORDEAL_ROUNDS ?? (IS_LONG ? 75 : 3));
const SEED = Number(process.env.ORDEAL_SEED ?? 1);

/** Rounds side by side: most of one is waiting. */
const AT_A_TIME = 3;

async function lossesOf(
  rounds: Readonly<Record<string, Round>>,
  count: number,
  isPrinted: boolean,
): Promise<string[]> {
  const ground = await Ground.open(isPrinted);
  if (IS_LONG && !isPrinted) await ground.notePreview();
  const named = Object.entries(rounds);
  const losses: string[] = [];
  let next = 0;
  const work = async (): Promise<void> => {
    while (next < count) {
      const number = next++;
      const [name = '', round] = named[number % named.length] ?? [];
      const lost = await round?.(ground, randomOf(SEED * 10_000 + number));
      losses.push(...(lost ?? []).map((loss) => `round ${number}, ${name}: ${loss}`));
    }
  };
  await Promise.all(Array.from({ length: AT_A_TIME }, work));
  return losses;
}

describe.runIf(process.platform !== 'win32')('whatever happens to a run', () => {
  it('nothing is lost, half or left lying about', async () => {
    expect(await lossesOf(ROUNDS, COUNT, false)).toEqual([]);
  }, 3_600_000);

  if (IS_LONG) {
    it('nor while pages are printed', async () => {
      expect(await lossesOf(PRINTING_ROUNDS, Math.ceil(COUNT / 3), true)).toEqual([]);
    }, 3_600_000);
  }
});
