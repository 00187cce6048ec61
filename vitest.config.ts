import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/web/**', 'node_modules/**'],
    setupFiles: ['test/settings.ts'],
    testTimeout: 60_000,
    maxWorkers: 2,
  },
});
