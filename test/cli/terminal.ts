import { cpSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';
import { run } from '../../src/cli.ts';

/** What a command line did. */
export type Outcome = { readonly code: number; readonly out: string; readonly err: string };

/** Runs a command line as a person at `cwd` would, and gives all it printed. */
export async function sheetwright(cwd: string, ...argv: string[]): Promise<Outcome> {
  const printed = { out: '', err: '' };
  const into = (key: 'out' | 'err'): Writable =>
    new Writable({
      write: (chunk, _, done) => {
        printed[key] += String(chunk);
        done();
      },
    });
  const { HOME, PATH, PUPPETEER_EXECUTABLE_PATH } = process.env;
  const env = { HOME, PATH, PUPPETEER_EXECUTABLE_PATH };
  const code = await run({
    argv,
    cwd,
    env,
    stdin: Readable.from([]),
    stdout: into('out'),
    stderr: into('err'),
  });
  return { code, ...printed };
}

/** An empty folder that is gone after the tests. */
export function emptyFolder(): string {
  return mkdtempSync(join(inject('temporary'), 'test-'));
}

/** A folder with these files, by their paths in it. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = emptyFolder();
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

/** A folder with a copy of the demo workspace in `projects/`. */
export function demoCopy(): string {
  const folder = emptyFolder();
  cpSync(fileURLToPath(new URL('../../projects', import.meta.url)), join(folder, 'projects'), {
    recursive: true,
  });
  return folder;
}
