import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // On two cores vitest would keep one for itself.
    maxWorkers: 2,
  },
});
