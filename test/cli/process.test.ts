import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ARM_FILE, FRAME_FILE } from '../../src/cli/print/questionExamples.ts';
import { demo } from './fakeIo.ts';

const built = existsSync('dist/cli/quadwright.mjs') && existsSync('dist/cli/shelf.json');

/** The built program as a person runs it; `npm test` builds it before. */
describe.skipIf(!built)('the built command line', () => {
  const run = (...words: string[]) => spawnSync('./bin/quadwright', words, { encoding: 'utf8' });

  it('assesses a demo build, without colours in a pipe', () => {
    const { status, stdout } = run('assess', `${demo}/turnstone.yaml`, '--brief', `${demo}/brief.yaml`);
    expect(status).toBe(0);
    expect(stdout).toContain('thrust to weight');
    expect(stdout).not.toContain('\u001b[');
  });

  it('has the documented exit codes', () => {
    expect(run('assess', `${demo}/bonxie.yaml`, '--brief', `${demo}/brief.yaml`).status).toBe(1);
    expect(run('assess', 'no-such-file.yaml').status).toBe(2);
    expect(run('--help').status).toBe(0);
  });

  it('reads a file from the pipe, and no more of it than a file may have', () => {
    const input = readFileSync(`${demo}/turnstone.yaml`, 'utf8');
    const { status, stdout } = spawnSync('./bin/quadwright', ['assess', '-'], { encoding: 'utf8', input });
    expect(status).toBe(0);
    expect(stdout).toContain('thrust to weight');
    // A verb may read it twice: `compare` looks for a brief among its files first.
    const words = ['compare', '-', `${demo}/tystie.yaml`];
    const beside = spawnSync('./bin/quadwright', words, { encoding: 'utf8', input });
    expect(beside.stderr).toBe('');
    expect(beside.stdout).toContain('Turnstone');
    const endless = run('check', '/dev/zero');
    expect(endless.status).toBe(2);
    expect(endless.stderr).toContain('/dev/zero: at most 5000000 bytes are read');
  });

  it('says so where the output cannot be written', () => {
    const { status, stderr } = spawnSync('bash', ['-c', './bin/quadwright shelf > /dev/full'], {
      encoding: 'utf8',
    });
    expect(status).toBe(2);
    expect(stderr).toContain('cannot be written (ENOSPC)');
  });

  it('bears a reader that leaves early', () => {
    const out = execFileSync(
      'bash',
      ['-c', `./bin/quadwright shelf --find a | head -1; echo "\${PIPESTATUS[0]}"`],
      {
        encoding: 'utf8',
      },
    );
    expect(out.trim().split('\n').at(-1)).toBe('0');
  });
});

describe('the how-to of ask arm and ask frame', () => {
  it('shows the files that the help shows and the tests read', () => {
    const page = readFileSync('docs/how-to/ask-arm-and-frame.md', 'utf8');
    expect(page).toContain(ARM_FILE);
    expect(page).toContain(FRAME_FILE);
  });
});
