// The whole gate: `npm test`. Every stage runs even after one fails, so one run tells everything. The checks use one core
// and the build another, side by side; what each says is printed whole when it ends. The tests then have both cores.
import { readFileSync, rmSync } from 'node:fs';
import { ensureChromium, installPackages, run, runAside } from './setUp.mjs';

installPackages();
ensureChromium();

const npx = (...args) => ['npx', ['--no-install', ...args]];
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
const checks = [
  ['types', npx('tsc', '-p', 'tsconfig.json'), npx('tsc', '-p', 'tsconfig.web.json')],
  ['lint and format', npx('biome', 'ci', '--error-on-warnings', '--colors=off', '.')],
  ['import rule', ['node', ['scripts/importRule.mjs']]],
  ['dead code', npx('knip')],
  ['schemas current', npx('tsx', 'scripts/writeSchemas.ts', '--check')],
];
const build = [['build', ['node', ['scripts/build.mjs']]]];
const tests = [
  ['library tests', vitest('library')],
  ['browser tests', vitest('browser', '--config', 'vitest.browser.config.ts')],
];

const failed = [];
function told(name, failing, started) {
  if (failing) failed.push(name);
  console.log(`   ${failing ? 'FAILED' : 'ok'}, ${((performance.now() - started) / 1000).toFixed(1)} s`);
}

async function aside(stages) {
  for (const [name, ...commands] of stages) {
    const started = performance.now();
    const done = [];
    for (const [command, args] of commands) done.push(await runAside(command, args));
    console.log(`\n== ${name}`);
    process.stdout.write(done.map(({ output }) => output).join(''));
    told(
      name,
      done.some(({ status }) => status !== 0),
      started,
    );
  }
}

await Promise.all([aside(checks), aside(build)]);
for (const [name, [command, args]] of tests) {
  console.log(`\n== ${name}`);
  const started = performance.now();
  told(name, run(command, args) !== 0, started);
}

let passedTests = checks.length + build.length + tests.length - failed.length;
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
