import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, it } from 'vitest';

/** Open data that may lie beside the project: see each file for its source and licence. */
const FOLDER = new URL('../../../shared/data/', import.meta.url);

/** The parsed file, or undefined where this copy of the project has no such neighbour. */
export function published(name: string): unknown {
  const path = fileURLToPath(new URL(name, FOLDER));
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined;
}

/** Runs tests on an open data file where it is there, and shows in the report where it is not. */
export function describeWith<T>(name: string, title: string, tests: (data: T) => void): void {
  const data = published(name) as T | undefined;
  if (data === undefined) describe(title, () => it.skip(`${name} is not beside this copy`, () => {}));
  else describe(title, () => tests(data));
}
