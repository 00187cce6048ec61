import { openCircuitVoltage } from './chemistry.ts';
import type { PackModel, PackSource, PackState } from './types.ts';

/**
 * A pack as an open-circuit voltage behind a resistance and one RC pair (the form of Chen and
 * Rincon-Mora, 'Accurate electrical battery model capable of predicting runtime and I-V performance',
 * IEEE Trans. Energy Conversion 21(2), 2006, with their two pairs merged).
 */

/** Resistance rises as exp(B/T): activation temperature [K], 21 kJ/mol over the gas constant (from memory). */
const ACTIVATION = 2500;
const WARM = 298.15; // [K]

/** Chen and Rincon-Mora 2006 eq. (3), series resistance over its value at high charge: 1 + a exp(-b charge). */
const EMPTY_RISE = 0.1562 / 0.07446;
const EMPTY_RATE = 24.37;

/** Per cycle (common practice, no source): a fifth of the capacity gone and resistance half as much again at 250. */
const RESISTANCE_PER_CYCLE = 0.002;
const CAPACITY_PER_CYCLE = 0.0008;

/** Share of the charge that cold takes away per kelvin under 25 degC (common practice, no source). */
const CAPACITY_PER_KELVIN = 0.004;

/**
 * Sustained resistance of the pack [ohm]: over charge, temperature and age.
 *
 * @param charge 0 to 1
 * @param temperature of the cells [K], 243 to 343 (held at the ends)
 */
export function packResistance(pack: PackModel, charge: number, temperature: number): number {
  const kelvin = Math.min(Math.max(temperature, 243.15), 343.15);
  const overCharge =
    (1 + EMPTY_RISE * Math.exp(-EMPTY_RATE * Math.min(Math.max(charge, 0), 1))) /
    (1 + EMPTY_RISE * Math.exp(-EMPTY_RATE * 0.5));
  const overTemperature = Math.exp(ACTIVATION * (1 / kelvin - 1 / WARM));
  return pack.resistance * overCharge * overTemperature * (1 + RESISTANCE_PER_CYCLE * pack.cycles);
}

/** Charge that can be drawn from full to empty at low current [C], for age and cold. */
export function usableCapacity(pack: PackModel, temperature: number): number {
  const cold = 1 - CAPACITY_PER_KELVIN * Math.min(Math.max(WARM - temperature, 0), 55);
  const age = Math.max(1 - CAPACITY_PER_CYCLE * pack.cycles, 0.3);
  return pack.capacity * cold * age;
}

/**
 * The pack in one state as a source. With a `settledCurrent` its slow polarisation is taken as built up
 * at that current and only the fast part answers to new current (a punch out of a hover); without one
 * everything answers (minutes of steady flight).
 */
export function packSource(pack: PackModel, state: PackState): PackSource {
  const openCircuit = pack.series * openCircuitVoltage(pack.chemistry, state.charge);
  const sustained = packResistance(pack, state.charge, state.temperature);
  if (state.settledCurrent === undefined) return { openCircuit, emf: openCircuit, resistance: sustained };
  const slow = sustained * pack.slowShare;
  return {
    openCircuit,
    emf: openCircuit - slow * state.settledCurrent,
    resistance: sustained - slow,
  };
}

/** Slow polarisation voltage [V] after `duration` [s] at a steady current, from `start` [V]: the RC pair, exactly. */
export function polarisationAfter(
  pack: PackModel,
  state: PackState,
  start: number,
  current: number,
  duration: number,
): number {
  const settled = current * packResistance(pack, state.charge, state.temperature) * pack.slowShare;
  return settled + (start - settled) * Math.exp(-duration / pack.polarisationTime);
}

/** Energy between full and a charge at no load [J], by the trapezium rule on the curve. */
export function packEnergy(pack: PackModel, downTo = 0): number {
  const steps = 40;
  let sum = 0;
  for (let step = 0; step < steps; step++) {
    const a = downTo + ((1 - downTo) * step) / steps;
    const b = downTo + ((1 - downTo) * (step + 1)) / steps;
    sum += 0.5 * (openCircuitVoltage(pack.chemistry, a) + openCircuitVoltage(pack.chemistry, b)) * (b - a);
  }
  return sum * pack.series * pack.capacity;
}
