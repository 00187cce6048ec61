import { packSource } from '../drive/battery.ts';
import type { PackSource, PackState } from '../drive/types.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { type Circuit, circuitOf } from './circuit.ts';
import { describe } from './describe.ts';
import { emptySupply, type Fed, feed } from './feed.ts';
import { emptyLoad, loadForThrusts } from './load.ts';
import { loadForDuties } from './throttle.ts';
import type { FlightModel, Levers, OperatingPoint } from './types.ts';

/** How the pack stands and how the aircraft moves when an operating point is asked for. */
export interface Moment {
  /** 1 full, 0 empty. */
  readonly charge: number;
  /** See `PackState.settledCurrent` [A]. */
  readonly settledCurrent?: number;
  /** Axial speed of the aircraft [m/s], positive climbing; 0 when absent. */
  readonly climb?: number;
  /** At which resistances are taken [K]; 40 K over the air when absent. */
  readonly windingTemperature?: number;
}

/** The pack of a circuit at a moment, as a source. */
export function sourceAt(circuit: Circuit, charge: number, settledCurrent?: number): PackSource {
  const state: PackState =
    settledCurrent === undefined
      ? { charge, temperature: circuit.packTemperature }
      : { charge, temperature: circuit.packTemperature, settledCurrent };
  return packSource(circuit.pack, state);
}

/**
 * All motors at given throttles on one battery. `pointForThrusts` answers the inverse question.
 *
 * @param throttles one a station, 0 to 1
 */
export function pointForThrottles(
  model: FlightModel,
  levers: Levers,
  throttles: readonly number[],
  moment: Moment,
): Outcome<OperatingPoint> {
  checkCount('throttles', throttles.length, model.stations.length);
  const circuit = circuitOf(model, levers, moment.windingTemperature);
  const source = sourceAt(circuit, moment.charge, moment.settledCurrent);
  const duties = circuit.branches.map((branch, i) => {
    const throttle = throttles[i] ?? 0;
    if (!(throttle >= 0 && throttle <= 1)) {
      throw new RangeError(`throttle must be between 0 and 1; found ${throttle}`);
    }
    return branch.idleDuty + (1 - branch.idleDuty) * throttle;
  });
  const load = emptyLoad(duties.length);
  const supply = emptySupply(duties.length);
  const found = loadForDuties(circuit, source, duties, moment.climb ?? 0, load, supply);
  return found.ok ? solved(describe(circuit, source, load, supply)) : found;
}

/**
 * What it takes for the airframe to get `netThrusts` from its motors: speeds, duties, currents, pack voltage.
 * No solution when the propellers, the pack or its voltage cannot.
 *
 * @param netThrusts [N], one a station, >= 0
 */
export function pointForThrusts(
  model: FlightModel,
  levers: Levers,
  netThrusts: readonly number[],
  moment: Moment,
): Outcome<OperatingPoint> {
  checkCount('netThrusts', netThrusts.length, model.stations.length);
  const circuit = circuitOf(model, levers, moment.windingTemperature);
  const source = sourceAt(circuit, moment.charge, moment.settledCurrent);
  const load = emptyLoad(netThrusts.length);
  const turning = loadForThrusts(circuit, netThrusts, moment.climb ?? 0, load);
  if (!turning.ok) return turning;
  const supply = emptySupply(netThrusts.length);
  const fed = feed(circuit, source, load, supply);
  return fed === 'fed' ? solved(describe(circuit, source, load, supply)) : noSolution(inWords(fed));
}

/** Why a load could not be fed. */
export function inWords(fed: Exclude<Fed, 'fed'>): string {
  switch (fed) {
    case 'pack gives out':
      return 'the pack cannot deliver that power at any voltage: its resistance takes the rest';
    case 'short of voltage':
      return 'a motor would need more than full throttle at the loaded voltage';
  }
}

function checkCount(name: string, found: number, expected: number): void {
  if (found !== expected) {
    throw new RangeError(`${name} must hold one number a station (${expected}); found ${found}`);
  }
}
