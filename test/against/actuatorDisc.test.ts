// Rankine and Froude's ideal disc: no rotor gives thrust for less power. Static P = T sqrt(T / 2 rho A),
// climbing P = T (V + v) with v (V + v) = T / 2 rho A (Glauert 1935, ch. III). Closed form, no tolerance
// but the quadrature's 0.5 %. CHECKS.md: 5 in, 5 N, 1.225 kg/m3 is 12.6927 m/s and 63.463 W.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { bladeFromNameplate } from '../../src/rotor/blade.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import { anyBlade, sections } from '../rotor/arbitrary.ts';

const air = standardAtmosphere({ height: 0 });

function idealPower(thrust: number, axialSpeed: number, diameter: number): number {
  const disc = (Math.PI * diameter ** 2) / 4;
  const half = axialSpeed / 2;
  return thrust * (half + Math.sqrt(half * half + thrust / (2 * air.density * disc)));
}

describe('actuator disc', () => {
  it('gives the check value of a 5 inch disc at 5 N', () => {
    expect(idealPower(5, 0, 0.127)).toBeCloseTo(63.463, 2);
  });

  it('is never beaten, whatever the blade', () => {
    fc.assert(
      fc.property(
        anyBlade,
        fc.double({ min: 5, max: 280, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (blade, tipSpeed, flow) => {
          const angularSpeed = tipSpeed / (blade.diameter / 2);
          const axialSpeed = flow * tipSpeed;
          const state = solveRotor(blade, sections, { angularSpeed, axialSpeed, air });
          if (!state.ok || state.value.thrust <= 0) return;
          const ideal = idealPower(state.value.thrust, axialSpeed, blade.diameter);
          expect(state.value.power).toBeGreaterThan(0.995 * ideal);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('keeps the figure of merit of propellers of the trade between a third and 0.8', () => {
    for (const pitch of [0.3, 0.5, 0.7, 0.9]) {
      const blade = { diameter: 0.127, pitch: pitch * 0.127, bladeCount: 3 };
      const state = solveRotor(bladeFromNameplate(blade), sections, {
        angularSpeed: 2000,
        axialSpeed: 0,
        air,
      });
      if (!state.ok) throw new Error(state.reason);
      const { thrustCoefficient, powerCoefficient } = state.value;
      const merit = (0.797885 * thrustCoefficient ** 1.5) / powerCoefficient; // CHECKS.md, from memory
      expect(merit).toBeGreaterThan(0.33);
      expect(merit).toBeLessThan(0.8);
    }
  });
});
