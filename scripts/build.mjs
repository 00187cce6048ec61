// Builds the command line (dist/cli) and the page (dist/web). Names of stages to build may be given: cli, web.
import { run } from './setUp.mjs';

const wanted = process.argv.slice(2);
const stages = [
  ['cli', ['build', '--config', 'vite.cli.config.ts', '--logLevel', 'warn']],
  ['web', ['build', '--logLevel', 'warn']],
];
for (const [name, args] of stages) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`Building ${name} ...`);
  if (run('npx', ['--no-install', 'vite', ...args]) !== 0) {
    console.error(`Building ${name} failed; its own message stands above.`);
    process.exit(1);
  }
}
