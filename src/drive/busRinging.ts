import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import type { Bus } from './busCircuit.ts';

/** Whether leads and capacitors swing against each other. */
export interface Ringing {
  /** At which they do [Hz]; absent where the leads' inductance never wins over the capacitors. */
  readonly frequency?: number;
  /** Of the bus at the pulses' frequency over that of leads or capacitors alone, whichever is less: 1 and more is ringing. */
  readonly gain: number;
}

/** Between which a bus of leads and capacitors could ring [Hz]. */
const LOWEST = 100;
const HIGHEST = 100e6;

/**
 * Impedance of leads and capacitors side by side, Z1 Z2/(Z1 + Z2), against the lesser of the two: without resonance it is less,
 * at resonance it is as much more as the quality of the circuit.
 *
 * @param frequency of the pulses [Hz], > 0
 */
export function busRinging(bus: Bus, frequency: number): Ringing {
  const at = (hertz: number) => {
    const omega = 2 * Math.PI * hertz;
    const leads: Complex = [bus.sourceResistance, omega * bus.inductance];
    let [g, b] = [0, 0];
    for (const { capacitance, resistance } of bus.capacitors) {
      const reactance = 1 / (omega * capacitance);
      const square = resistance ** 2 + reactance ** 2;
      g += resistance / square;
      b += reactance / square;
    }
    const square = g * g + b * b;
    const capacitors: Complex = [g / square, -b / square];
    const sum: Complex = [leads[0] + capacitors[0], leads[1] + capacitors[1]];
    return { leads, capacitors, sum };
  };
  const { leads, capacitors, sum } = at(frequency);
  const gain = Math.max(Math.hypot(...leads), Math.hypot(...capacitors)) / Math.hypot(...sum);
  const found = bracketedRoot(
    (decade) => at(10 ** decade).sum[1],
    Math.log10(LOWEST),
    Math.log10(HIGHEST),
    1e-4,
  );
  return found.ok ? { frequency: 10 ** found.value, gain } : { gain };
}

type Complex = readonly [real: number, imaginary: number];
