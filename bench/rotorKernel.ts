/**
 * One static solve of 20 stations here against the same lines in C at -O3, best of many laps each, and
 * the time of a rotor map:
 *   npx tsx bench/rotorKernel.ts
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { standardAtmosphere } from '../src/air/standardAtmosphere.ts';
import { bladeFromNameplate } from '../src/rotor/blade.ts';
import { solveElements } from '../src/rotor/elements.ts';
import { elementWork, setCondition } from '../src/rotor/elementWork.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../src/rotor/rotorMap.ts';
import { sectionTables } from '../src/rotor/sections.ts';
import type { MapDetail } from '../src/rotor/types.ts';

/** Many short laps: one of them finds the machine quiet. */
const LAPS = 150;
const SOLVES = 100;
const ROUNDS = 6;
const omega = 2000;
const air = standardAtmosphere({ height: 0 });
const sections = sectionTables();
const blade = bladeFromNameplate({ diameter: 0.127, pitch: 0.0889, bladeCount: 3 });

const work = elementWork(blade, sections);
setCondition(work, omega, 0, air);
const input = [
  [work.count, sections.angleCount, sections.rows, work.B, work.dragScale, omega, air.density, SOLVES],
  ...[
    work.r, work.dr, work.c, work.theta, work.sigma4, work.rowShare, work.dragMore, work.compress,
    work.alpha0, work.delayLift, work.delayDrag, work.mach, work.tipGap, work.rootGap, work.row, sections.values,
  ].map((column) => Array.from(column)),
]; // biome-ignore format: columns in the order C reads them

function lapHere(): number {
  let best = Number.POSITIVE_INFINITY;
  for (let lap = 0; lap < LAPS; lap++) {
    const from = performance.now();
    for (let k = 0; k < SOLVES; k++) {
      work.theta[0] = (work.theta[0] as number) + 1e-12;
      solveElements(work, omega, 0, air.density, false);
    }
    best = Math.min(best, (performance.now() - from) / 1000 / SOLVES);
  }
  return best;
}

let here = lapHere();
if (spawnSync('cc', ['--version']).status === 0) {
  const folder = mkdtempSync(join(tmpdir(), 'kernel-'));
  const program = join(folder, 'kernel');
  execFileSync('cc', ['-O3', '-o', program, 'bench/rotorKernel.c', '-lm']);
  const text = input.map((line) => line.join(' ')).join('\n');
  let there = Number.POSITIVE_INFINITY;
  let agree = 0;
  // Turn about, so that whatever else the machine does falls on both.
  for (let round = 0; round < ROUNDS; round++) {
    const answer = execFileSync(program, { input: text, encoding: 'utf8' });
    const [thrust = 0, torque = 0, seconds = 0] = answer.split(' ').map(Number);
    there = Math.min(there, seconds);
    agree = Math.abs((work.last[0] as number) / thrust - 1) + Math.abs((work.last[1] as number) / torque - 1);
    here = Math.min(here, lapHere());
  }
  rmSync(folder, { recursive: true });
  console.log(`rotor kernel, 20 stations, static: ${(1e6 * here).toFixed(2)} us here`);
  console.log(
    `  the same in C at -O3: ${(1e6 * there).toFixed(2)} us; ratio ${(here / there).toFixed(2)} (aim 1.5)`,
  );
  console.log(`  thrust and torque agree within ${agree.toExponential(1)}`);
} else {
  console.log(
    `rotor kernel, 20 stations, static: ${(1e6 * here).toFixed(2)} us here; no C compiler: ratio not measured`,
  );
}

for (const detail of ['coarse', 'full'] as const satisfies MapDetail[]) {
  let best = Number.POSITIVE_INFINITY;
  for (let lap = 0; lap < 5; lap++) {
    const from = performance.now();
    buildRotorMap(blade, sections, air, detail);
    best = Math.min(best, performance.now() - from);
  }
  console.log(`rotor map, ${detail}: ${best.toFixed(1)} ms (aim ${detail === 'full' ? 150 : 30})`);
}
const map = buildRotorMap(blade, sections, air, 'full');
if (!map.ok) throw new Error(map.reason);
const out = emptyReading();
const from = performance.now();
let sum = 0;
for (let k = 0; k < 1e6; k++) sum += readRotorMap(map.value, 800 + (k & 1023), 5, air, out).thrust;
console.log(
  `map reading with slopes: ${((performance.now() - from) / 1e3).toFixed(3)} us (sum ${sum.toExponential(2)})`,
);
