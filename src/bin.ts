#!/usr/bin/env node
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { run } from './cli.ts';

const { argv, env, stdin, stdout, stderr, versions } = process;

/**
 * How long a function runs before machine code is made of it: several times longer than usual. Within seconds, what is
 * made earlier seldom pays for itself; it took a fifth of a make. By the engines of Node 20, 22 and 24; another may call
 * it something else.
 */
const PATIENT: Readonly<Partial<Record<string, string>>> = {
  '11.3': '--interrupt-budget=600000',
  '12.4': '--invocation-count-for-turbofan=12000',
  '13.6': '--invocation-count-for-turbofan=12000',
};
const patient = PATIENT[versions.v8.split('.', 2).join('.')];
if (patient !== undefined) setFlagsFromString(patient);

process.exitCode = await run({ argv: argv.slice(2), cwd: folderHere(), env, stdin, stdout, stderr });

/** Ends where the folder that this was started in has been deleted: no path could be told from there. */
function folderHere(): string {
  try {
    return process.cwd();
  } catch {
    stderr.write('sheetwright: the folder you are in is no longer there: go to another one\n');
    process.exit(2);
  }
}
