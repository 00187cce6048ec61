// `npm run bench`: every benchmark of bench/, built as the product is built, one after the other in one run.
// Names may be given: `npm run bench -- assess`.
import { existsSync, readdirSync } from 'node:fs';
import { build } from 'vite';
import { run } from './setUp.mjs';

const wanted = process.argv.slice(2);
/** Minutes each: run only when named. */
const LONG = ['fuzz', 'shortlist', 'page'];
const names = readdirSync('bench')
  .filter((name) => name.endsWith('.ts'))
  .map((name) => name.slice(0, -3))
  .filter((name) => (wanted.length === 0 ? !LONG.includes(name) : wanted.includes(name)));
const accuracy = wanted.length === 0 || wanted.includes('accuracy');
if (names.length === 0 && !accuracy) {
  console.error(`No such benchmark. There are: ${readdirSync('bench').join(', ')}`);
  process.exit(2);
}
if (!existsSync('dist/cli/shelf.json') && run('node', ['scripts/build.mjs']) !== 0) process.exit(1);
let worst = 0;
for (const name of names) {
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: `bench/${name}.ts`,
      outDir: `dist/bench/${name}`,
      target: 'node20',
      minify: false,
      rollupOptions: { output: { entryFileNames: 'bench.mjs' } },
    },
    ssr: { noExternal: true, external: ['playwright-core'] },
  });
  console.log(`\n== ${name}`);
  worst = Math.max(worst, run('node', [`dist/bench/${name}/bench.mjs`]));
}
if (accuracy) {
  console.log('\n== accuracy against the UIUC data, where the folder is present');
  worst = Math.max(worst, run('npx', ['--no-install', 'tsx', 'scripts/rotorAccuracy.ts']));
}
process.exit(worst);
