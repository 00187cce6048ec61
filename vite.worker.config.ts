import { defineConfig } from 'vite';

/** The command line's search worker: one self-contained file beside the program. */
export default defineConfig({
  build: {
    ssr: 'src/cli/searchWorker.ts',
    outDir: 'dist/cli',
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rollupOptions: { output: { entryFileNames: 'searchWorker.mjs', format: 'es' } },
  },
  ssr: { noExternal: true },
});
