import { expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { rotorFacts, staticPoints } from '../../src/build/infer/rotorFacts.ts';
import type { PartOf } from '../../src/build/schema/part.ts';
import { interpolateLinear } from '../../src/numerics/interpolate.ts';
import { rotorBand } from '../../src/rotor/band.ts';
import { bladeFromNameplate, bladeFromTable } from '../../src/rotor/blade.ts';
import { fitBlade } from '../../src/rotor/fitBlade.ts';
import { type Measurement, nextMeasurement } from '../../src/rotor/nextMeasurement.ts';
import { sectionTables } from '../../src/rotor/sections.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { Blade, RotorCondition } from '../../src/rotor/types.ts';
import { shipped } from './shippedFiles.ts';

/*
 * What the next measurement promises is kept when somebody makes it and finds just what was forecast.
 */

const air = standardAtmosphere({ height: 0 });
const sections = sectionTables();

function widths(blade: Blade, condition: RotorCondition) {
  const state = solveRotor(blade, sections, condition);
  if (!state.ok) throw new Error(state.reason);
  const band = rotorBand(blade, sections, condition, state.value);
  if (!band.ok) throw new Error(band.reason);
  const { thrustCoefficient: thrust, powerCoefficient: power } = band.value;
  return { thrust: thrust[1] - thrust[0], power: power[1] - power[0] };
}

/** The blade after the measurement, by the road that a user's file goes. */
function measuredBlade(
  part: PartOf<'propeller'>,
  blade: Blade,
  what: Measurement,
  angularSpeed: number,
): Blade {
  const { radiusRatio, chordRatio, twist } = blade;
  switch (what) {
    case 'chord at 0.75 R': {
      const chordAt75 = (interpolateLinear(0.75, radiusRatio, chordRatio) * blade.diameter) / 2;
      return bladeFromNameplate({ ...part.size, chordAt75 });
    }
    case 'chord and twist along the blade':
      return bladeFromTable({ ...part.size, radiusRatio, chordRatio, twist });
    case 'static thrust and power at the rpm asked': {
      const state = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
      if (!state.ok) throw new Error(state.reason);
      const { thrust, power } = state.value;
      const bare = rotorFacts({ ...part, measured: [] }).blade;
      const fitted = fitBlade(bare, sections, [...staticPoints(part), { angularSpeed, thrust, power, air }]);
      if (!fitted.ok) throw new Error(fitted.reason);
      return fitted.value;
    }
  }
}

const ids = [
  'lop-2518-4',
  'lop-2020-3',
  'spume-4935-3',
  'spume-5136-3',
  'riffle-5148-3',
  'neap-7040-2',
  'neap-7142-3',
];
const propellers = ids.map((id) => [id, shipped('propeller').find((part) => part.id === id)!] as const);

it.each(propellers)('%s: every measurement narrows the bands about as promised', (_, part) => {
  const { blade } = rotorFacts(part);
  let kept = 0;
  for (const tip of [90, 220]) {
    const angularSpeed = tip / (blade.diameter / 2);
    for (const axialSpeed of [0, 0.08 * tip]) {
      const condition = { angularSpeed, axialSpeed, air };
      const next = nextMeasurement(blade, sections, condition);
      if (!next.ok) throw new Error(next.reason);
      const before = widths(blade, condition);
      for (const { measurement, thrustBand, powerBand } of next.value) {
        const after = widths(measuredBlade(part, blade, measurement, angularSpeed), condition);
        expect(Math.abs(after.thrust / before.thrust / thrustBand - 1)).toBeLessThan(0.05);
        expect(Math.abs(after.power / before.power / powerBand - 1)).toBeLessThan(0.05);
        kept++;
      }
    }
  }
  // None of the shelf is known so well that a stand would tell nothing more of a tip at 220 m/s.
  expect(kept).toBeGreaterThan(0);
});
