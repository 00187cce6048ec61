import { execFile, execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One converged point of an XFOIL polar: angle [deg], c_l, c_d. */
export type PolarPoint = readonly [angle: number, lift: number, drag: number];

/**
 * Debian's XFOIL stops at the first floating-point exception, and the low-Reynolds polars raise some
 * on the way to convergence. Replacing the run-time's trap setter keeps the IEEE default (carry on).
 */
export function buildTrapShim(folder: string): string {
  const source = join(folder, 'noTraps.c');
  const library = join(folder, 'noTraps.so');
  writeFileSync(source, 'void _gfortran_set_fpe(int mask) { (void)mask; }\n');
  execFileSync('cc', ['-shared', '-fPIC', '-o', library, source]);
  return library;
}

/** Runs one sweep of angles [deg] for a NACA four-digit section; unconverged angles are missing. */
export async function sweep(
  library: string,
  section: string,
  reynolds: number,
  criticalN: number,
  [first, last, step]: readonly [number, number, number],
  panels: number,
): Promise<PolarPoint[]> {
  const folder = mkdtempSync(join(tmpdir(), 'xfoil-'));
  const script = [
    'PLOP',
    'G F',
    '',
    `NACA ${section}`,
    'PPAR',
    `N ${panels}`,
    '',
    '',
    'OPER',
    `VISC ${reynolds}`,
    'VPAR',
    `N ${criticalN}`,
    '',
    'ITER 120',
    'PACC',
    'polar.txt',
    '',
    `ASEQ ${first} ${last} ${step}`,
    'PACC',
    '',
    'QUIT',
    '',
  ].join('\n');
  await new Promise<void>((done) => {
    const child = execFile(
      'xfoil',
      { cwd: folder, timeout: 120_000, maxBuffer: 1 << 28, env: { ...process.env, LD_PRELOAD: library } },
      () => done(),
    );
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(script);
  });
  let text = '';
  try {
    text = readFileSync(join(folder, 'polar.txt'), 'utf8');
  } catch {
    text = '';
  }
  rmSync(folder, { recursive: true, force: true });
  const points: PolarPoint[] = [];
  for (const line of text.split('\n')) {
    const fields = line.trim().split(/\s+/).map(Number);
    const [angle, lift, drag] = fields;
    if (fields.length < 7 || angle === undefined || lift === undefined || drag === undefined) continue;
    if (fields.every(Number.isFinite) && drag > 0 && Math.abs(lift) < 3) points.push([angle, lift, drag]);
  }
  return points;
}
