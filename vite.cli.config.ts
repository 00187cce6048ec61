import { defineConfig } from 'vite';

/** One self-contained file: a process that starts in tens of milliseconds resolves no packages. */
export default defineConfig({
  build: {
    ssr: 'src/cli/main.ts',
    outDir: 'dist/cli',
    target: 'node20',
    minify: false,
    rollupOptions: { output: { entryFileNames: 'quadwright.mjs', format: 'es' } },
  },
  // The pool starts its workers from files of its own package.
  ssr: { noExternal: true, external: ['tinypool'] },
});
