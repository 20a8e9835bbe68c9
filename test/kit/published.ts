import { readFileSync } from 'node:fs';
import { describe } from 'vitest';

/** Runs tests on an open data file in `data/`: see each for its source and license. */
export function describeWith<T>(name: string, title: string, tests: (data: T) => void): void {
  const data: T = JSON.parse(readFileSync(new URL(`data/${name}`, import.meta.url), 'utf8'));
  describe(title, () => tests(data));
}
