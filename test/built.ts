import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(inject('temporary'), 'package');
const done = join(folder, 'done');

/**
 * The folder of the program as the package will hold it, compiled once in a run: a process of its own cannot run
 * TypeScript on every Node that is supported.
 */
export async function builtPackage(): Promise<string> {
  if (mkdirSync(folder, { recursive: true }) !== undefined) build();
  while (!existsSync(done)) await new Promise((wait) => setTimeout(wait, 50));
  return folder;
}

function build(): void {
  const compiler = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  try {
    const args = ['-p', 'tsconfig.build.json', '--outDir', join(folder, 'dist', 'lib')];
    execFileSync(process.execPath, [compiler, ...args], { cwd: root, stdio: 'pipe' });
  } catch {
    // Errors of type are for the check to find; the files are written all the same.
  }
  cpSync(join(root, 'package.json'), join(folder, 'package.json'));
  cpSync(join(root, 'templates'), join(folder, 'templates'), { recursive: true });
  rmSync(join(folder, 'node_modules'), { force: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'junction');
  writeFileSync(done, '');
}
