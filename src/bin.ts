#!/usr/bin/env node
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { run } from './cli.ts';
import { flagsOf } from './recall/engine.ts';

const { argv, env, stdin, stdout, stderr } = process;

const flags = flagsOf();
if (flags) setFlagsFromString(flags.patient);

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
