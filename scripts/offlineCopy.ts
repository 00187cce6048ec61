// A plugin of the page's build: writes the service worker with the list of everything the page is made of.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const SOURCE = fileURLToPath(new URL('../src/web/offline/offline.js', import.meta.url));

export function offlineCopy(): Plugin {
  return {
    name: 'offline-copy',
    apply: 'build',
    enforce: 'post',
    generateBundle(_options, bundle) {
      const files = Object.keys(bundle).sort();
      const hash = createHash('sha256');
      for (const file of files) {
        const made = bundle[file];
        hash.update(file).update(made?.type === 'chunk' ? made.code : (made?.source ?? ''));
      }
      const source = readFileSync(SOURCE, 'utf8')
        .replace('__FILES__', JSON.stringify(['./', ...files.map((file) => `./${file}`)]))
        .replace('__VERSION__', JSON.stringify(hash.digest('hex').slice(0, 12)));
      this.emitFile({ type: 'asset', fileName: 'offline.js', source });
    },
  };
}
