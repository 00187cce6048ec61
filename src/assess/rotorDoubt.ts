import type { Air } from '../air/standardAtmosphere.ts';
import type { Craft } from '../build/craft.ts';
import { rotorBand } from '../rotor/band.ts';
import type { SectionTables } from '../rotor/sections.ts';
import { solveRotor } from '../rotor/solveRotor.ts';
import type { RotorDoubt } from './levers.ts';
import type { PreparedRotor } from './prepareRotors.ts';

/** Half the distance from the 10th to the 90th percentile of a normal is this many standard deviations. */
const BAND_TO_DEVIATION = 2 * 1.2815515655446004;

/** Where the band itself has no answer: as wide as the least known propeller (common practice, no source). */
const UNSOLVED = { thrust: 0.3, torque: 0.3, correlation: 0.5 };

/** How far thrust and torque of a propeller may be off at a speed in static work [rad/s]. */
export function rotorDoubt(
  craft: Craft,
  rotor: PreparedRotor,
  sections: SectionTables,
  air: Air,
  angularSpeed: number,
): RotorDoubt {
  const { blade } = rotor.facts;
  const part = craft.parts.propellers[0];
  const trust = blade.anchored
    ? 'measured'
    : blade.knownBy === 'blade table'
      ? (part?.trust ?? 'maker')
      : 'inferred';
  const condition = { angularSpeed, axialSpeed: 0, air };
  const state = solveRotor(blade, sections, condition);
  const knownBy = blade.anchored ? `${blade.knownBy} and a measured point` : blade.knownBy;
  const found = state.ok ? rotorBand(blade, sections, condition, state.value) : state;
  if (!state.ok || !found.ok) return { ...UNSOLVED, trust, knownBy };
  const band = found.value;
  const spread = ([low, high]: readonly [number, number], value: number) =>
    (high - low) / (BAND_TO_DEVIATION * value);
  return {
    thrust: spread(band.thrustCoefficient, state.value.thrustCoefficient),
    torque: spread(band.powerCoefficient, state.value.powerCoefficient),
    correlation: band.correlation,
    trust,
    knownBy,
  };
}
