import { execFileSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(inject('temporary'), 'package');
const done = join(folder, 'done');

/** The folder of the program as the package will hold it, bundled once in a run. */
export async function builtPackage(): Promise<string> {
  if (mkdirSync(folder, { recursive: true }) !== undefined) writeWhole(done, faultOf(build));
  while (!existsSync(done)) await new Promise((wait) => setTimeout(wait, 50));
  const fault = readFileSync(done, 'utf8');
  if (fault !== '') throw new Error(fault);
  return folder;
}

function build(): void {
  const program = join(folder, 'dist', 'lib');
  execFileSync(process.execPath, [join(root, 'src', 'bundle.js'), program], { stdio: 'pipe' });
  cpSync(join(root, 'package.json'), join(folder, 'package.json'));
  cpSync(join(root, 'templates'), join(folder, 'templates'), { recursive: true });
  rmSync(join(folder, 'node_modules'), { force: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'junction');
}

/** What a build fails with, for all that wait for it; empty where it does not. */
function faultOf(work: () => void): string {
  try {
    work();
    return '';
  } catch (error) {
    return `the program could not be bundled: ${error}`;
  }
}

/** Whoever waits for the file finds all of it. */
function writeWhole(path: string, text: string): void {
  writeFileSync(`${path}.part`, text);
  renameSync(`${path}.part`, path);
}
