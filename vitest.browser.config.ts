import { defineConfig } from 'vitest/config';

/** The page in Debian's Chromium, over the built files. One worker: one browser at a time. */
export default defineConfig({
  test: {
    include: ['test/web/**/*.spec.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 1,
    fileParallelism: false,
  },
});
