import type { Chemistry } from './types.ts';

/** What a cell of one chemistry is like. Typical curves, from memory; cells of one kind differ by +-20 mV. */
export interface ChemistryFacts {
  /** Open-circuit voltage at even steps of charge from 0 to 1 [V]. */
  readonly openCircuit: readonly number[];
  /** Charged full [V]. */
  readonly fullVoltage: number;
  /** Loaded voltage at which to land [V]. */
  readonly cutOffVoltage: number;
  /** Loaded voltage under which the model of a cell ends, cells are harmed and electronics reset (common practice, no source) [V]. */
  readonly lowestVoltage: number;
  /** For energy and storage figures [V]. */
  readonly nominalVoltage: number;
  /** Of a whole pack with wires [J/kg]. */
  readonly specificEnergy: number;
}

export const chemistries: Readonly<Record<Chemistry, ChemistryFacts>> = {
  LiPo: {
    openCircuit: [
      3.27, 3.61, 3.69, 3.71, 3.73, 3.75, 3.77, 3.79, 3.8, 3.82, 3.84, 3.85, 3.87, 3.91, 3.95, 3.98, 4.02,
      4.08, 4.11, 4.15, 4.2,
    ],
    fullVoltage: 4.2,
    cutOffVoltage: 3.3,
    lowestVoltage: 2.5,
    nominalVoltage: 3.7,
    specificEnergy: 150 * 3600,
  },
  LiHV: {
    openCircuit: [
      3.27, 3.6, 3.69, 3.72, 3.74, 3.76, 3.78, 3.795, 3.81, 3.835, 3.86, 3.89, 3.92, 3.96, 4.0, 4.045, 4.09,
      4.145, 4.2, 4.265, 4.35,
    ],
    fullVoltage: 4.35,
    cutOffVoltage: 3.3,
    lowestVoltage: 2.5,
    nominalVoltage: 3.8,
    specificEnergy: 160 * 3600,
  },
  'Li-ion': {
    openCircuit: [
      2.7, 3.14, 3.3, 3.38, 3.45, 3.51, 3.56, 3.59, 3.62, 3.65, 3.69, 3.73, 3.78, 3.83, 3.88, 3.93, 3.98,
      4.03, 4.07, 4.12, 4.2,
    ],
    fullVoltage: 4.2,
    cutOffVoltage: 2.8,
    lowestVoltage: 2,
    nominalVoltage: 3.6,
    specificEnergy: 215 * 3600,
  },
};

/** Open-circuit voltage of one cell [V] at a charge, 0 to 1 (held at the ends), by linear interpolation. */
export function openCircuitVoltage(chemistry: Chemistry, charge: number): number {
  const table = chemistries[chemistry].openCircuit;
  const steps = table.length - 1;
  const place = Math.min(Math.max(charge, 0), 1) * steps;
  const index = Math.min(Math.floor(place), steps - 1);
  const below = table[index] ?? 0;
  const above = table[index + 1] ?? below;
  return below + (place - index) * (above - below);
}
