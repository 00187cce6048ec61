import type { Circuit } from '../circuit.ts';
import { describe } from '../describe.ts';
import { emptySupply, feed } from '../feed.ts';
import { rehang } from '../load.ts';
import { sourceAt } from '../operatingPoint.ts';
import type { OperatingPoint } from '../types.ts';
import type { ForwardTrim } from './forwardTrim.ts';

/** The electrical side of level flight. */
export interface Fed {
  readonly point: OperatingPoint;
  /** Largest duty of any motor; above 1 where the voltage is short. */
  readonly largestDuty: number;
}

/**
 * A trim already found, hung on a circuit that may differ in everything electrical: motors, controllers, wires, pack,
 * electronics. The air asks the same speeds and torques of it, so nothing is trimmed anew. Where the voltage is
 * short the point is told all the same, with its duty above 1.
 *
 * @param circuit of the same rotors, mass and drag
 * @param charge of the pack, 0 to 1
 * @returns undefined when the pack cannot carry the power at any voltage
 */
export function refeed(trim: ForwardTrim, circuit: Circuit, charge: number): Fed | undefined {
  const hung = rehang(circuit, trim.load);
  const supply = emptySupply(circuit.branches.length);
  const source = sourceAt(circuit, charge);
  if (feed(circuit, source, hung, supply) === 'pack gives out') return undefined;
  const point = describe(circuit, source, hung, supply);
  return { point, largestDuty: point.stations.reduce((most, { duty }) => Math.max(most, duty), 0) };
}
