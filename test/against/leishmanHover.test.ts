// J. G. Leishman, Principles of Helicopter Aerodynamics, 2nd ed. 2006, from memory:
// - the ideally twisted rotor (theta = theta_tip / r) hovers with even inflow,
//   lambda = sigma a/16 (sqrt(1 + 32 theta_tip / (sigma a)) - 1), C_T = sigma a/4 (theta_tip - lambda) = 2 lambda^2,
//   C_P = lambda C_T + sigma C_d0/8, figure of merit C_T^1.5/(sqrt 2 C_P) (sections 2.8 and 3.3). The helicopter's coefficients are
//   4/pi^3 and 4/pi^4 of the propeller's. Tolerance 2.5 % for swirl and cosines (1.5 phi^2, 14 degrees at the root of the steepest) and
//   half a per cent of tip loss.
// - the worked tilt-rotor: 45 000 lb on two rotors of 38 ft at 0.002378 slug/ft3, figure of merit 0.75, 5 % lost on the way:
//   64.6 ft/s of induced speed, 7400 hp. Tolerance: the digits given.
import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { inducedSpeed } from '../../src/flight/wake.ts';
import { sectionTables } from '../../src/rotor/sections.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { Blade } from '../../src/rotor/types.ts';

/** With the 0.006 of a blunt edge that our sections carry (docs/method/rotor.md). */
const SECTION_DRAG = 0.01;
const ROOT = 0.2;
const angles = Array.from({ length: 33 }, (_, i) => -8 + i);
/** Thin aerofoil theory with one drag: lift slope 2 pi. */
const section = sectionTables({
  angleFirst: -8,
  angleStep: 1,
  reynoldsFirst: 20000,
  rowsPerOctave: 2,
  lift: [0, 1].map(() => angles.map((a) => 2 * Math.PI * ((a * Math.PI) / 180))),
  drag: [0, 1].map(() => angles.map(() => SECTION_DRAG - 0.006)),
});

/** Many narrow blades, so that tips lose next to nothing, as large as a helicopter's: above all Reynolds numbers of the section. */
function ideallyTwisted(tipTwist: number, solidity: number): Blade {
  const bladeCount = 50;
  const radiusRatio = Float64Array.from({ length: 161 }, (_, i) => ROOT + ((1 - ROOT) * i) / 160);
  return {
    diameter: 30,
    bladeCount,
    radiusRatio,
    chordRatio: radiusRatio.map(() => (Math.PI * solidity) / bladeCount),
    twist: radiusRatio.map((r) => tipTwist / r),
    knownBy: 'blade table',
    anchored: false,
    pitchOffset: 0,
    dragScale: 1,
  };
}

describe('Leishman: hover', () => {
  it.each([
    [0.08, 0.1],
    [0.06, 0.06],
    [0.1, 0.15],
  ])('figure of merit of the ideally twisted rotor, tip twist %f, solidity %f', (tipTwist, solidity) => {
    const slope = 2 * Math.PI;
    const lambda = ((solidity * slope) / 16) * (Math.sqrt(1 + (32 * tipTwist) / (solidity * slope)) - 1);
    // Of the parts of r dr and r3 dr that lie outside the root.
    const [disc, profile] = [1 - ROOT ** 2, 1 - ROOT ** 4];
    const thrust = ((solidity * slope) / 4) * (tipTwist - lambda) * disc;
    const power = lambda * thrust + ((solidity * SECTION_DRAG) / 8) * profile;
    expect(((solidity * slope) / 4) * (tipTwist - lambda)).toBeCloseTo(2 * lambda ** 2, 12);
    const state = solveRotor(ideallyTwisted(tipTwist, solidity), section, {
      angularSpeed: 40 / 15,
      axialSpeed: 0,
      air: standardAtmosphere({ height: 0 }),
    });
    if (!state.ok) throw new Error(state.reason);
    // Even along the blade, as the closed form has it.
    for (const drag of state.value.stations.dragCoefficient) expect(drag).toBeCloseTo(SECTION_DRAG, 5);
    const foundThrust = (4 / Math.PI ** 3) * state.value.thrustCoefficient;
    const foundPower = (4 / Math.PI ** 4) * state.value.powerCoefficient;
    const merit = (ct: number, cp: number) => ct ** 1.5 / (Math.SQRT2 * cp);
    expect(Math.abs(foundThrust / thrust - 1)).toBeLessThan(0.025);
    expect(Math.abs(foundPower / power - 1)).toBeLessThan(0.025);
    expect(Math.abs(merit(foundThrust, foundPower) / merit(thrust, power) - 1)).toBeLessThan(0.025);
    expect(merit(foundThrust, foundPower)).toBeGreaterThan(0.5);
    expect(merit(foundThrust, foundPower)).toBeLessThan(0.8);
  });

  it('power of the worked tilt-rotor', () => {
    const POUND = 4.4482216;
    const FOOT = 0.3048;
    const HORSEPOWER = 745.69987;
    const thrust = (45000 / 2) * POUND;
    const density = (0.002378 * 14.593903) / FOOT ** 3;
    const v = inducedSpeed(thrust, 0, density, (Math.PI / 4) * (38 * FOOT) ** 2);
    expect(v / FOOT).toBeCloseTo(64.6, 1);
    const asked = (2 * thrust * v * 1.05) / 0.75 / HORSEPOWER;
    expect(Math.abs(asked - 7400)).toBeLessThan(10);
  });
});
