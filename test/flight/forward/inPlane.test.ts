// The closed-form rotor against blade elements averaged over a turn (`solveEdgewise`), which itself stands on
// Glauert (1926), Drees (1949) and section polars. State tolerance: 35 % of the in-plane force and 25 % of the torque anywhere
// to an advance ratio of 0.2, 6 % on the mean; beyond, the closed form is a rough guide only (docs/method/flight.md).
// A reviewer once found the force of leaning lift left out: 2.5 to 8 times too little.
import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../../src/air/standardAtmosphere.ts';
import { glauertRotor } from '../../../src/flight/forward/edgewise.ts';
import type { RotorRead } from '../../../src/flight/types.ts';
import { bladeFromNameplate } from '../../../src/rotor/blade.ts';
import { solveEdgewise } from '../../../src/rotor/solveEdgewise.ts';
import { solveRotor } from '../../../src/rotor/solveRotor.ts';
import { sections } from '../../rotor/arbitrary.ts';

const air = standardAtmosphere({ height: 0 });

/** Diameter and pitch [m], blades: three-inch to ten-inch, pitch over diameter 0.45 to 1. */
const propellers = [
  [0.0762, 0.05, 3],
  [0.127, 0.0762, 3],
  [0.127, 0.127, 2],
  [0.1295, 0.109, 3],
  [0.178, 0.09, 2],
  [0.254, 0.114, 2],
  [0.254, 0.2, 2],
] as const;

function ratios([diameter, pitch, bladeCount]: (typeof propellers)[number]) {
  const blade = bladeFromNameplate({ diameter, pitch, bladeCount });
  const read: RotorRead = (angularSpeed, axialSpeed, out) => {
    const condition = { angularSpeed, axialSpeed, air };
    const real = solveRotor(blade, sections, condition);
    // The search starts from bounds where tips are supersonic; there it needs a number, not a true one.
    const soft = { ...condition, air: { ...air, speedOfSound: 1e9 } };
    const state = real.ok ? real : solveRotor(blade, sections, soft);
    out.thrust = state.ok ? state.value.thrust : Number.NaN;
    out.torque = state.ok ? state.value.torque : Number.NaN;
  };
  const found: { force: number; torque: number }[] = [];
  for (const tip of [110, 170]) {
    const angularSpeed = (2 * tip) / diameter;
    const still = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
    for (const ratio of [0.03, 0.1, 0.2]) {
      for (const tilt of [0.1, 0.4, 0.7, 1.1]) {
        const edgewiseSpeed = ratio * tip;
        const axialSpeed = edgewiseSpeed * Math.tan(tilt);
        const condition = { angularSpeed, axialSpeed, edgewiseSpeed, air };
        const exact = solveEdgewise(blade, sections, condition);
        // Nearly windmilling, no craft holds level flight.
        if (!exact.ok || !still.ok || exact.value.thrust < 0.2 * still.value.thrust) continue;
        const closed = glauertRotor(read, {
          thrust: exact.value.thrust,
          axialSpeed,
          edgewiseSpeed,
          airDensity: air.density,
          diameter,
          thrustScale: 1,
          torqueScale: 1,
          start: angularSpeed,
        });
        if (!closed.ok) throw new Error(closed.reason);
        found.push({
          force: closed.value.inPlaneForce / exact.value.inPlaneForce,
          torque: closed.value.torque / exact.value.torque,
        });
      }
    }
  }
  return found;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('in-plane force of the closed form', () => {
  const all = propellers.map(ratios);

  it('is that of blade elements within 35 %, the torque within 25 %', () => {
    for (const rotor of all) {
      expect(rotor.length).toBeGreaterThan(12);
      for (const { force, torque } of rotor) {
        expect(Math.abs(force - 1)).toBeLessThan(0.35);
        expect(Math.abs(torque - 1)).toBeLessThan(0.25);
      }
    }
  });

  it('is right within 6 % on the mean', () => {
    const flat = all.flat();
    expect(Math.abs(mean(flat.map(({ force }) => force)) - 1)).toBeLessThan(0.06);
    expect(Math.abs(mean(flat.map(({ torque }) => torque)) - 1)).toBeLessThan(0.06);
  });
});
