import { cpSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';
import { make } from '../src/make/make.ts';

/** The day the site is made in tests: one session has been, others are to come. */
export const TODAY = '2026-11-25';

const folder = join(inject('temporary'), 'demo');
const [done, failed] = [join(folder, 'done'), join(folder, 'failed')];

/**
 * The folder of the demo workspace, `projects/`, with all that is made of it, `dist/`: made once in a run, by the test
 * file that asks first, while others wait. Nobody may change anything in it.
 */
export async function madeDemo(): Promise<string> {
  if (isFirst()) await makeDemo();
  while (!existsSync(done)) {
    if (existsSync(failed)) throw new Error('the demo could not be made, as another test file says');
    await new Promise((wait) => setTimeout(wait, 200));
  }
  return folder;
}

function isFirst(): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

async function makeDemo(): Promise<void> {
  try {
    const [root, out] = [join(folder, 'projects'), join(folder, 'dist')];
    cpSync(fileURLToPath(new URL('../projects', import.meta.url)), root, { recursive: true });
    const { held, made } = await make({ root, out, namedFrom: folder, pdf: true, today: TODAY });
    if (held.length > 0 || made.length === 0) throw new Error(`held back: ${held.join(', ')}`);
    writeFileSync(done, '');
  } catch (error) {
    writeFileSync(failed, '');
    throw error;
  }
}
