import { dragOf } from '../src/assess/parts/dragOf.ts';
import { wiringHeat } from '../src/assess/parts/heat.ts';
import { levelFlight } from '../src/assess/parts/levelFlight.ts';
import { usualMission } from '../src/assess/parts/mission.ts';
import { controlInReserve } from '../src/assess/parts/reserve.ts';
import { forwardOf } from '../src/assess/parts/speedStates.ts';
import { windHolding } from '../src/assess/parts/wind.ts';
import { forwardTrim } from '../src/flight/forward/forwardTrim.ts';
import { powerCurve, topSpeed } from '../src/flight/forward/speeds.ts';
import { neutralLevers } from '../src/flight/types.ts';
import { buildEdgewiseMap } from '../src/rotor/edgewiseMap.ts';
import { kittiwake } from './shared/kittiwake.ts';
import { row } from './shared/timed.ts';

/** The flight's parts of the full tier with their bands (aim 90 ms together), and what issue 3 asks of level flight. */
const context = kittiwake();
const { craft, flight, sections } = context;

const parts = [levelFlight, windHolding, controlInReserve, wiringHeat, usualMission];
const taken = parts.map((part) => row(`part: ${part.label}`, 15, '', () => part.run(context)));
const sum = taken.reduce((total, { clock }) => total + clock, 0);
console.log(`${'all of these'.padEnd(46)}${`${sum.toFixed(2)} ms`.padStart(11)}   aim 90 ms`);

const made = forwardOf(flight, dragOf(craft), { levers: neutralLevers, balanceShift: 0 });
const top = made.ok ? topSpeed(made.value, 0.9) : made;
if (!made.ok || !top.ok) throw new Error('it does not fly along');
const fastest = top.value.at.speed;
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
const map = [...flight.rotors.values()][0]?.map;
if (map !== undefined) {
  row('edgewise map of a propeller', 15, 'once a propeller', () => buildEdgewiseMap(map, sections));
}
