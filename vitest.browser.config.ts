import { defineConfig } from 'vitest/config';
import { shippedFiles } from './scripts/shippedFiles.ts';

/** The page in Debian's Chromium, over the built files. One worker: one browser at a time. */
export default defineConfig({
  plugins: [shippedFiles()],
  test: {
    include: ['test/web/**/*.spec.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 1,
    fileParallelism: false,
  },
});
