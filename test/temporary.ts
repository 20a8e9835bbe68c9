import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
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
  return () => rmSync(folder, { recursive: true, force: true });
}
