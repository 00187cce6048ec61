// The whole gate: `npm test`. Every stage runs even after one fails, so one run tells everything.
import { readFileSync, rmSync } from 'node:fs';
import { ensureChromium, installPackages, run } from './setUp.mjs';

installPackages();
ensureChromium();

const npx = (...args) => run('npx', ['--no-install', ...args]);
const vitest = (name, ...args) =>
  npx(
    'vitest',
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=.cache/${name}.json`,
    ...args,
  );

rmSync('.cache', { recursive: true, force: true });
const stages = [
  ['types', () => npx('tsc', '-p', 'tsconfig.json') || npx('tsc', '-p', 'tsconfig.web.json')],
  ['lint and format', () => npx('biome', 'ci', '--error-on-warnings', '--colors=off', '.')],
  ['import rule', () => run('node', ['scripts/importRule.mjs'])],
  ['dead code', () => npx('knip')],
  ['schemas current', () => npx('tsx', 'scripts/writeSchemas.ts', '--check')],
  ['build', () => run('node', ['scripts/build.mjs'])],
  ['library tests', () => vitest('library')],
  ['browser tests', () => vitest('browser', '--config', 'vitest.browser.config.ts')],
];

const failed = [];
for (const [name, stage] of stages) {
  console.log(`\n== ${name}`);
  const started = performance.now();
  if (stage() !== 0) failed.push(name);
  console.log(
    `   ${failed.includes(name) ? 'FAILED' : 'ok'}, ${((performance.now() - started) / 1000).toFixed(1)} s`,
  );
}

let passedTests = stages.length - failed.length;
let failedTests = failed.length;
for (const name of ['library', 'browser']) {
  try {
    const report = JSON.parse(readFileSync(`.cache/${name}.json`, 'utf8'));
    passedTests += report.numPassedTests;
    failedTests += report.numFailedTests;
  } catch {
    failedTests += 1;
    failed.push(`${name} tests left no report`);
  }
}
if (failed.length > 0) console.log(`\nFailed stages: ${failed.join(', ')}`);
console.log(`\n${passedTests} passed, ${failedTests} failed`);
process.exit(failed.length > 0 || failedTests > 0 ? 1 : 0);
