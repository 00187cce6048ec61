// What both doors need on a fresh machine: the packages of the lock file, and nothing else by hand.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, readFileSync, writeFileSync } from 'node:fs';

export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { stdio: 'inherit', ...options });
  return result.status ?? 1;
}

/** As `run`, beside others: what it says is kept until it has ended. */
export function runAside(command, args) {
  const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text) => {
      output += text;
    });
  return new Promise((done) => {
    child.on('error', (error) => done({ status: 1, output: `${output}${error.message}\n` }));
    child.on('close', (status) => done({ status: status ?? 1, output }));
  });
}

/** Installs the lock file's packages when they are missing or older than the lock. */
export function installPackages() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Quadwright needs Node 20.19 or newer; this is ${process.versions.node}.`);
    process.exit(2);
  }
  const wanted = createHash('sha256').update(readFileSync('package-lock.json')).digest('hex');
  const stamp = 'node_modules/.quadwright-lock';
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  // npm ci would empty the folder the link points to, which is somebody else's.
  if (lstatSync('node_modules', { throwIfNoEntry: false })?.isSymbolicLink()) {
    console.error(
      'node_modules is a link; packages are not installed through it. Remove the link, and run again.',
    );
    process.exit(2);
  }
  console.log('Installing packages (first run, or the lock file changed) ...');
  if (run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']) !== 0) {
    console.error('npm ci failed; its own message stands above.');
    process.exit(3);
  }
  writeFileSync(stamp, wanted);
}

/** Debian's Chromium for the browser tests; installed by apt when missing. */
export function ensureChromium() {
  const path = '/usr/bin/chromium';
  if (existsSync(path)) return;
  console.log('Installing Chromium from the Debian packages for the browser tests ...');
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const prefix = process.getuid?.() === 0 ? [] : ['sudo'];
  const apt = (...args) => {
    const [command, ...rest] = [...prefix, 'apt-get', ...args];
    return run(command, rest, { env: environment, stdio: ['ignore', 'ignore', 'inherit'] });
  };
  apt('update');
  apt('install', '-y', '--no-install-recommends', 'chromium');
  if (!existsSync(path)) {
    console.error(
      'Chromium could not be installed. Install it by hand (apt-get install chromium) and run again.',
    );
    process.exit(3);
  }
}
