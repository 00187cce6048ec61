import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/web/**', 'node_modules/**'],
    testTimeout: 60_000,
    maxWorkers: 2,
  },
});
