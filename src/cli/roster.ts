import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Person, readRoster } from '../kit/roster.ts';
import { Refusal } from './terminal.ts';

/** Reads the people of a session. @throws Refusal for a file that is not there, or what is no roster. */
export function rosterIn(path: string, cwd: string): readonly Person[] {
  const reading = readRoster(textIn(path, cwd));
  if ('people' in reading) return reading.people;
  const faults = reading.faults.map(({ line, problem }) => `line ${line}: ${problem}`);
  throw new Refusal(`${path} is no roster that can be used\n${faults.join('\n')}`);
}

function textIn(path: string, cwd: string): string {
  try {
    return readFileSync(resolve(cwd, path), 'utf8');
  } catch {
    throw new Refusal(`--roster takes a file with a table, such as people.csv; ${path} cannot be read`);
  }
}
