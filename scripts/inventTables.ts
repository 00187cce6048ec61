/**
 * Invents the thrust tables of the shelf's motors anew, in place:
 *   npx tsx scripts/inventTables.ts
 * Each is what our own model gives for the motor and the shelf's propeller of that size on a stiff supply, with a motor, a
 * propeller and meters that are off by what makers' are. Always the same numbers: one seed a motor, from its id.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { standardAtmosphere } from '../src/air/standardAtmosphere.ts';
import { motorFacts } from '../src/build/infer/motorFacts.ts';
import { STAND_RESISTANCE, STAND_SWITCHING } from '../src/build/infer/motorTable.ts';
import { rotorFacts } from '../src/build/infer/rotorFacts.ts';
import { readShelf } from '../src/build/read/readShelf.ts';
import type { PartOf } from '../src/build/schema/part.ts';
import { EMPTY_SHELF, partsOf } from '../src/build/shelf.ts';
import { noLoadCurrentAt } from '../src/drive/motor.ts';
import { bracketedRoot } from '../src/numerics/bracketedRoot.ts';
import { standardNormal } from '../src/numerics/standardNormal.ts';
import { sectionTables } from '../src/rotor/sections.ts';
import { solveRotor } from '../src/rotor/solveRotor.ts';

/** How far a motor is off its listing, a propeller off the measured one, a reading off; one standard deviation. */
const OFF = {
  speedConstant: 0.012,
  resistance: 0.06,
  noLoadCurrent: 0.1,
  rise: 0.15,
  twin: 0.02,
  alone: 0.015,
  reading: 0.01,
};
/**
 * Blades untwist at speed, which our model leaves out: thrust and power lost for each unit of tip Mach beyond 0.3,
 * within what the bands hold open there (invented).
 */
const UNTWIST = { from: 0.3, thrust: 0.25, power: 0.2 };
/** A laboratory supply of 25.05 V behind its leads [V, ohm]. */
const SUPPLY = { open: 25.05, resistance: 0.0155 };
const THROTTLES = [0.4, 0.6, 0.8, 1];
const SEED = 3;
const FILE = 'shelf/motors.yaml';

const air = standardAtmosphere({ height: 0 });
const sections = sectionTables();
let shelf = EMPTY_SHELF;
for (const name of readdirSync('shelf').sort()) {
  if (!name.endsWith('.yaml')) continue;
  const reading = readShelf(readFileSync(`shelf/${name}`, 'utf8'), name, shelf);
  if (!reading.ok) throw new Error(`${name}: ${JSON.stringify(reading.errors)}`);
  shelf = reading.value;
}

let text = readFileSync(FILE, 'utf8');
for (const part of partsOf(shelf, 'motor')) {
  const [table] = part.thrustTables;
  if (table === undefined) continue;
  const start =
    text.indexOf('        points:\n', text.indexOf(`- id: ${part.id}\n`)) + '        points:\n'.length;
  const end = start + (/^(?: {10}- .*\n)+/.exec(text.slice(start))?.[0].length ?? 0);
  text = `${text.slice(0, start)}${linesOf(part, table.propeller)}${text.slice(end)}`;
}
writeFileSync(FILE, text);

function linesOf(part: PartOf<'motor'>, size: PartOf<'propeller'>['size']): string {
  const propeller = partsOf(shelf, 'propeller').find(
    (each) => JSON.stringify(each.size) === JSON.stringify(size),
  );
  if (propeller === undefined) throw new Error(`${part.id}: no propeller of its table on the shelf`);
  const { blade } = rotorFacts(propeller);
  const random = xoroshiro128plus(
    SEED + [...part.id].reduce((sum, letter) => (31 * sum + letter.charCodeAt(0)) % 1_000_003, 7),
  );
  const off = (spread: number) => Math.exp(spread * standardNormal(random));
  const { model } = motorFacts({ ...part, thrustTables: [] });
  const motor = {
    ...model,
    speedConstant: model.speedConstant * off(OFF.speedConstant),
    resistance: model.resistance * off(OFF.resistance),
    noLoadCurrent: model.noLoadCurrent * off(OFF.noLoadCurrent),
    resistanceRise: (model.resistanceRise ?? 0) * off(OFF.rise),
  };
  // A twin with more lift asks more of its shaft as well.
  const more = off(OFF.twin);
  const harder = more * off(OFF.alone);

  const at = (duty: number, angularSpeed: number) => {
    const state = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
    if (!state.ok) throw new Error(state.reason);
    const fast = Math.max(0, state.value.tipMach - UNTWIST.from);
    const torque = state.value.torque * harder * (1 - UNTWIST.power * fast);
    const lift = state.value.thrust * more * (1 - UNTWIST.thrust * fast);
    const back = angularSpeed / motor.speedConstant;
    const current = torque * motor.speedConstant + noLoadCurrentAt(motor, angularSpeed);
    const volts =
      back + current * (motor.resistance * (1 + motor.resistanceRise * angularSpeed) + STAND_RESISTANCE);
    // V I with V = open - R I.
    const supplied = (volts * current) / (1 - STAND_SWITCHING);
    const { open, resistance } = SUPPLY;
    const drawn = (open - Math.sqrt(open * open - 4 * resistance * supplied)) / (2 * resistance);
    const voltage = open - resistance * drawn;
    return { short: duty * voltage - volts, voltage, drawn, thrust: lift };
  };
  return THROTTLES.map((throttle) => {
    const speed = bracketedRoot(
      (omega) => at(throttle, omega).short,
      100,
      25 * motor.speedConstant * throttle,
      0.01,
    );
    if (!speed.ok) throw new Error(`${part.id}: ${speed.reason}`);
    const { voltage, drawn, thrust } = at(throttle, speed.value);
    const rpm = Math.round((speed.value * 30) / Math.PI / 50) * 50;
    const grams = (1000 * thrust * off(OFF.reading)) / 9.80665;
    return (
      `          - { throttle: ${Math.round(100 * throttle)} %, angularSpeed: ${rpm} rpm, voltage: ${voltage.toFixed(1)} V, ` +
      `current: ${(drawn * off(OFF.reading)).toFixed(1)} A, thrust: ${grams.toFixed(0)} gf }\n`
    );
  }).join('');
}
