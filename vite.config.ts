import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { offlineCopy } from './scripts/offlineCopy.ts';
import { shippedFiles } from './scripts/shippedFiles.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Nothing from elsewhere, nothing sent: scripts and styles of our own files, no connections at all. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Only in the built page: the development server needs inline scripts and a socket. */
const contentPolicy: Plugin = {
  name: 'content-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

/** The page: static files under dist/web that run from any folder of any server. */
export default defineConfig({
  root: here('src/web'),
  base: './',
  publicDir: false,
  plugins: [react(), contentPolicy, shippedFiles(), offlineCopy()],
  worker: { format: 'es', plugins: () => [shippedFiles()] },
  build: {
    outDir: here('dist/web'),
    emptyOutDir: true,
    target: 'es2023',
    // Inlined data: URLs would need a wider policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The round's library, fetched when first seen; test/web/size.spec.ts holds what a first visit fetches.
    chunkSizeWarningLimit: 800,
  },
});
