import { readFileSync } from 'node:fs';
import { dragOf } from '../src/assess/parts/dragOf.ts';
import { wiringHeat } from '../src/assess/parts/heat.ts';
import { levelFlight } from '../src/assess/parts/levelFlight.ts';
import { usualMission } from '../src/assess/parts/mission.ts';
import { controlInReserve } from '../src/assess/parts/reserve.ts';
import { forwardOf } from '../src/assess/parts/speedStates.ts';
import { windHolding } from '../src/assess/parts/wind.ts';
import { prepareFlight } from '../src/assess/prepareFlight.ts';
import { unpackShelf } from '../src/build/read/packedShelf.ts';
import { readBrief, readBuild } from '../src/build/read/readBuild.ts';
import { resolveBuild } from '../src/build/resolve/resolveBuild.ts';
import { forwardTrim } from '../src/flight/forward/forwardTrim.ts';
import { powerCurve, topSpeed } from '../src/flight/forward/speeds.ts';
import { neutralLevers } from '../src/flight/types.ts';
import { buildEdgewiseMap } from '../src/rotor/edgewiseMap.ts';
import { sectionTables } from '../src/rotor/sections.ts';

/** The flight's parts of the full tier with their bands, on the dead cat of the demo; aim 90 ms together. */
const demo = 'demo/first-freestyle';
const shelf = unpackShelf(readFileSync('dist/cli/shelf.json', 'utf8'));
const read = readBuild(readFileSync(`${demo}/kittiwake.yaml`, 'utf8'), 'kittiwake');
const told = readBrief(readFileSync(`${demo}/brief.yaml`, 'utf8'), 'brief');
if (!read.ok || !told.ok) throw new Error('the demo does not read');
const resolved = resolveBuild(read.value.build, shelf);
if (!resolved.ok) throw new Error('the demo does not resolve');
const [craft, brief, sections] = [resolved.value, told.value, sectionTables()];
const flight = prepareFlight(craft, { brief, sections }, true);
if (!flight.ok) throw new Error(flight.reason);
const context = { craft, brief, shelf, sections, flight: flight.value };

let [medians, leasts] = [0, 0];
for (const part of [levelFlight, windHolding, controlInReserve, wiringHeat, usualMission]) {
  for (let i = 0; i < 5; i++) part.run(context);
  const taken: number[] = [];
  for (let i = 0; i < 15; i++) {
    const start = performance.now();
    part.run(context);
    taken.push(performance.now() - start);
  }
  taken.sort((a, b) => a - b);
  const [median, least] = [taken[7] ?? Number.NaN, taken[0] ?? Number.NaN];
  medians += median;
  leasts += least;
  console.log(`${part.label.padEnd(30)} ${median.toFixed(1).padStart(7)} ms   least ${least.toFixed(1)} ms`);
}
console.log(
  `all${' '.repeat(28)}${medians.toFixed(1).padStart(7)} ms   least ${leasts.toFixed(1)} ms   aim 90 ms`,
);

/** What issue 3 asks to be reached, on the same craft. */
const made = forwardOf(flight.value, dragOf(craft), { levers: neutralLevers, balanceShift: 0 });
const top = made.ok ? topSpeed(made.value, 0.9) : made;
if (!made.ok || !top.ok) throw new Error('it does not fly along');
const fastest = top.value.at.speed;
function row(what: string, times: number, aim: string, work: () => void, each = 1): void {
  const taken: number[] = [];
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    work();
    taken.push((performance.now() - start) / each);
  }
  taken.sort((a, b) => a - b);
  const [median, least] = [taken[taken.length >> 1] ?? Number.NaN, taken[0] ?? Number.NaN];
  console.log(
    `${what.padEnd(30)} ${median.toFixed(3).padStart(7)} ms   least ${least.toFixed(3)} ms   ${aim}`,
  );
}
const speeds = Array.from({ length: 20 }, (_, k) => (fastest * (k + 1)) / 20);
row(
  'trim at one speed, mean of 20',
  60,
  'aim 0.3 ms',
  () => {
    for (const speed of speeds) forwardTrim(made.value, speed);
  },
  speeds.length,
);
row('power curve of 60 speeds', 40, 'aim 20 ms', () => powerCurve(made.value, 0.5, fastest, 0, 59));
const map = [...flight.value.rotors.values()][0]?.map;
if (map !== undefined) {
  row('edgewise map of a propeller', 15, 'once a propeller', () => buildEdgewiseMap(map, sections));
}
