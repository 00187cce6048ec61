// `npm start`: install if needed, build, run the main job on the demo, serve the page.
import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { installPackages, run } from './setUp.mjs';

installPackages();
if (run('node', ['scripts/build.mjs']) !== 0) process.exit(1);

const candidates = readdirSync('demo/first-freestyle')
  .filter((name) => name.endsWith('.yaml') && name !== 'brief.yaml')
  .map((name) => `demo/first-freestyle/${name}`);
console.log('\nThe demo: six first builds for a newcomer at Gannet Point\n');
// Findings of `stop` give exit code 1: that is the demo's lesson, not a failure of this script.
run('node', ['bin/quadwright', 'compare', ...candidates, '--brief', 'demo/first-freestyle/brief.yaml']);

const port = process.env.PORT ?? '4173';
console.log('\nServing the workbench; stop with Ctrl-C.');
const server = spawn('npx', ['--no-install', 'vite', 'preview', '--port', port, '--host', '127.0.0.1'], {
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
server.on('exit', (code) => process.exit(code ?? 0));
