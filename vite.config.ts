import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The page: static files under dist/web that run from any folder of any server. */
export default defineConfig({
  root: here('src/web'),
  base: './',
  publicDir: false,
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: here('dist/web'),
    emptyOutDir: true,
    target: 'es2023',
    // Inlined data: URLs would need a wider content-security policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
