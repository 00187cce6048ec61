// Builds the command line (dist/cli) and the page (dist/web). Names of stages may be given: cli, worker, shelf, web.
import { run } from './setUp.mjs';

const wanted = process.argv.slice(2);
const stages = [
  ['cli', ['vite', 'build', '--config', 'vite.cli.config.ts', '--logLevel', 'warn']],
  ['worker', ['vite', 'build', '--config', 'vite.worker.config.ts', '--logLevel', 'warn']],
  ['shelf', ['tsx', 'scripts/packShelf.ts']],
  ['web', ['vite', 'build', '--logLevel', 'warn']],
];
for (const [name, args] of stages) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`Building ${name} ...`);
  if (run('npx', ['--no-install', ...args]) !== 0) {
    console.error(`Building ${name} failed; its own message stands above.`);
    process.exit(1);
  }
}
