import process from 'node:process';
import { run } from './cli.ts';

const { argv, env, stdin, stdout, stderr } = process;

run({ argv: argv.slice(2), cwd: folderHere(), env, stdin, stdout, stderr }).then((code) => {
  process.exitCode = code;
});

/** Ends where the folder that this was started in has been deleted: no path could be told from there. */
function folderHere(): string {
  try {
    return process.cwd();
  } catch {
    stderr.write('sheetwright: the folder you are in is no longer there: go to another one\n');
    process.exit(2);
  }
}
