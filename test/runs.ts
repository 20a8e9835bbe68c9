/** Whether many cases are to be tried, and others each time, as `npm run fuzz` and `npm run ordeal` ask. */
export const IS_LONG: boolean = process.env.MODE === 'long';

/** How many cases fast-check tries, from where: the same few in each run of the tests; `FUZZ_SEED` repeats a long run. */
export function runs(seed: number, few: number, many: number = 20 * few): { seed: number; numRuns: number } {
  if (!IS_LONG) return { seed, numRuns: few };
  return { seed: Number(process.env.FUZZ_SEED ?? Date.now() % 1_000_000), numRuns: many };
}
