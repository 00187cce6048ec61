import { defineConfig } from 'vitest/config';
import { shippedFiles } from './scripts/shippedFiles.ts';
import { PATIENCE } from './test/web/patience.ts';

/**
 * The page in Debian's Chromium, over the built files: two browsers at a time, since one waits for answers and frames half
 * its time. Nothing asserted is a matter of time, so the files may take each other's.
 */
export default defineConfig({
  plugins: [shippedFiles()],
  test: {
    include: ['test/web/**/*.spec.ts'],
    setupFiles: ['test/settings.ts'],
    testTimeout: 4 * PATIENCE,
    hookTimeout: 2 * PATIENCE,
    // What a page shows comes when it comes: `expect.poll` asks until then.
    expect: { poll: { timeout: PATIENCE, interval: 50 } },
    maxWorkers: 2,
  },
});
