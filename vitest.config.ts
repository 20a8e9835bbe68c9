import { defineConfig } from 'vitest/config';
import { flagsOf } from './src/recall/engine.ts';
import { LongestFirst } from './test/order.ts';

const flags = flagsOf();

export default defineConfig(({ mode }) => ({
  test: {
    include: ['test/**/*.test.ts'],
    testTimeout: mode === 'long' ? 3_600_000 : 180_000,
    hookTimeout: 180_000,
    globalSetup: ['test/temporary.ts'],
    setupFiles: ['test/equality.ts'],
    // Files share what a worker has loaded and studied: they change nothing outside themselves.
    isolate: false,
    // Megabytes for what is soon forgotten: with the usual 16 some files spend a sixth of their time collecting it.
    execArgv: ['--max-semi-space-size=64', ...(flags ? [flags.patient] : [])],
    sequence: { sequencer: LongestFirst },
    // On two cores vitest would keep one for itself.
    maxWorkers: 2,
  },
}));
