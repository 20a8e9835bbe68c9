import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A folder that all tests of a run share, and that is gone after it. */
    readonly temporary: string;
  }
}

export default function setup({ provide }: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'sheetwright-test-'));
  provide('temporary', folder);
  keepCacheIn(join(folder, 'cache'));
  return () => rmSync(folder, { recursive: true, force: true });
}

/** What a run remembers is forgotten with it; what was unpacked once serves every run. */
function keepCacheIn(folder: string): void {
  const usual = join(process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache'), 'sheetwright');
  mkdirSync(join(folder, 'sheetwright'), { recursive: true });
  for (const name of existsSync(usual) ? readdirSync(usual) : []) {
    if (name !== 'work' && name !== 'code') symlinkSync(join(usual, name), join(folder, 'sheetwright', name));
  }
  process.env.XDG_CACHE_HOME = folder;
}
