import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { SearchState } from '../../src/choose/shortlist/state.ts';

const program = process.env.QUADWRIGHT_PROGRAM ?? 'dist/cli/quadwright.mjs';
const built = existsSync(program);
const folder = mkdtempSync(join(tmpdir(), 'quadwright-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number | null;
  readonly error: string;
}

/** The built program with its workers, as a person runs it; `watch` may end it. */
function search(
  keep: string,
  workers: number,
  watch?: (kept: SearchState, kill: (signal: NodeJS.Signals) => void) => void,
): Promise<Ended> {
  const words = ['shortlist', '--from', 'demo/micro/wheatear.yaml', '--brief', 'demo/micro/brief.yaml'];
  const more = ['--choose', 'motors,propellers,pack', '--front', 'first-flight-cost,flown-time'];
  const child = spawn(
    process.execPath,
    [program, ...words, ...more, '--top', '1', '--workers', String(workers), '--keep', keep],
    { stdio: ['ignore', 'ignore', 'pipe'] },
  );
  let error = '';
  child.stderr.on('data', (text) => {
    error += text;
  });
  const timer = setInterval(() => {
    if (watch && existsSync(keep)) watch(kept(keep), (signal) => child.kill(signal));
  }, 20);
  return new Promise((done) =>
    child.on('close', (code) => {
      clearInterval(timer);
      done({ code, error });
    }),
  );
}

const kept = (path: string): SearchState => JSON.parse(readFileSync(path, 'utf8')) as SearchState;
const found = ({ top, front, done }: SearchState) => ({ top, front, done });

describe.skipIf(!built)('the built search', () => {
  it('gives the same list and front with one, two and three workers, killed again and again or not', async () => {
    const whole = join(folder, 'one.json');
    expect((await search(whole, 1)).code).toBe(0);
    const wanted = found(kept(whole));
    expect(wanted.front.length).toBeGreaterThan(3);

    const killed = join(folder, 'killed.json');
    let kills = 0;
    for (const workers of [2, 3, 1]) {
      const before = existsSync(killed) ? kept(killed).done.length : 0;
      const { code } = await search(killed, workers, ({ done }, kill) => {
        if (kills < 2 && done.length > before) {
          kills++;
          kill('SIGKILL');
        }
      });
      if (code === 0) break;
    }
    expect(kills).toBeGreaterThan(0);
    expect(found(kept(killed))).toEqual(wanted);

    const three = join(folder, 'three.json');
    expect((await search(three, 3)).code).toBe(0);
    expect(found(kept(three))).toEqual(wanted);
  });

  it('stops at Ctrl-C with a checkpoint, says how to go on, and goes on to the same list', async () => {
    const path = join(folder, 'stopped.json');
    let once = false;
    const stopped = await search(path, 2, (_, kill) => {
      // A second one would end it at once.
      if (!once) kill('SIGINT');
      once = true;
    });
    expect(stopped.code).toBe(130);
    expect(stopped.error).toContain(`--keep ${path}`);
    expect((await search(path, 2)).code).toBe(0);
    expect(found(kept(path))).toEqual(found(kept(join(folder, 'one.json'))));
  });
});
