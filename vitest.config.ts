import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/web/**', 'node_modules/**'],
    setupFiles: ['test/settings.ts'],
    globalSetup: ['test/packShelf.ts'],
    // A guard against a test that hangs, not a limit on its time: a loaded machine is many times slower.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: 2,
    // Pure functions leave nothing behind: modules are loaded once a worker, which halves the run.
    isolate: false,
  },
});
