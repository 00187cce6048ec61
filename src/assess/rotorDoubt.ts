import type { Air } from '../air/standardAtmosphere.ts';
import type { Craft } from '../build/craft.ts';
import { rotorBand } from '../rotor/band.ts';
import type { SectionTables } from '../rotor/sections.ts';
import { solveRotor } from '../rotor/solveRotor.ts';
import type { Blade } from '../rotor/types.ts';
import type { RotorDoubt } from './levers.ts';
import type { PreparedRotor } from './prepareRotors.ts';

/** Half the distance from the 10th to the 90th percentile of a normal is this many standard deviations. */
const BAND_TO_DEVIATION = 2 * 1.2815515655446004;

/** Where the band itself has no answer: as wide as the least known propeller (common practice, no source). */
const UNSOLVED = { thrust: 0.3, torque: 0.3, correlation: 0.5 };

/** Reynolds numbers this many times away from the measured ones are reckoned on, no longer measured (ours, no source). */
const STILL_MEASURED = 1.25;

function beyondAnchor(blade: Blade, reynolds: number): boolean {
  if (blade.anchorReynolds === undefined) return false;
  const [lowest, highest] = blade.anchorReynolds;
  return reynolds > STILL_MEASURED * highest || reynolds * STILL_MEASURED < lowest;
}

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
  const condition = { angularSpeed, axialSpeed: 0, air };
  const state = solveRotor(blade, sections, condition);
  const far = state.ok && beyondAnchor(blade, state.value.reynolds75);
  const trust =
    blade.anchored && !far
      ? (rotor.facts.pointTrust ?? 'measured')
      : !blade.anchored && blade.knownBy === 'blade table'
        ? (part?.trust ?? 'maker')
        : 'inferred';
  const knownBy = !blade.anchored
    ? blade.knownBy
    : far
      ? `${blade.knownBy}, reckoned on from a point measured slower or faster`
      : `${blade.knownBy} and a measured point`;
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
