// Closed forms of blade-element theory.
// Prandtl's tip loss F = 2/pi acos exp(-B (R - r) / (2 r sin phi)): Glauert 1935, ch. VII, eq. 5.5.
// Uniform-theory inflow of a hovering annulus without loss or swirl, small angles:
// lambda = sigma a / 16 (sqrt(1 + 32 theta r / (sigma a)) - 1): Leishman, Principles of Helicopter
// Aerodynamics, 2006, eq. 3.61. Tolerance 1 %: swirl and cosines, at inflow angles below 3 degrees.
import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { sectionTables } from '../../src/rotor/sections.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { Blade } from '../../src/rotor/types.ts';
import { sections } from '../rotor/arbitrary.ts';

const air = standardAtmosphere({ height: 0 });
const angles = Array.from({ length: 33 }, (_, i) => -8 + i);
const thinPlate = sectionTables({
  angleFirst: -8,
  angleStep: 1,
  reynoldsFirst: 20000,
  rowsPerOctave: 2,
  lift: [0, 1].map(() => angles.map((a) => 2 * Math.PI * ((a * Math.PI) / 180))),
  drag: [0, 1].map(() => angles.map(() => 1e-6)),
});

/** Very many very narrow blades: no loss between them. */
const comb = (twist: number): Blade => ({
  diameter: 0.2,
  bladeCount: 4000,
  radiusRatio: Float64Array.of(0.1, 1),
  chordRatio: Float64Array.of(2e-5, 2e-5),
  twist: Float64Array.of(twist, twist),
  knownBy: 'blade table',
  anchored: false,
  pitchOffset: 0,
  dragScale: 1,
});

const solve = (blade: Blade, tables = sections, tip = 60) => {
  const state = solveRotor(blade, tables, { angularSpeed: tip / (blade.diameter / 2), axialSpeed: 0, air });
  if (!state.ok) throw new Error(state.reason);
  return state.value;
};

describe('blade elements', () => {
  it('match the hovering annulus of momentum theory', () => {
    const theta = 0.09;
    const { stations } = solve(comb(theta), thinPlate, 20);
    const sigma = (4000 * 2e-5) / Math.PI;
    const slope = 2 * Math.PI;
    stations.radiusRatio.forEach((r, i) => {
      if (r < 0.3 || r > 0.97) return;
      const lambda = ((sigma * slope) / 16) * (Math.sqrt(1 + (32 * theta * r) / (sigma * slope)) - 1);
      const found = Math.tan(stations.inflowAngle[i]!) * r;
      expect(Math.abs(found / lambda - 1)).toBeLessThan(0.01);
    });
  });

  it('lose lift at tip and root as Prandtl says', () => {
    const blade: Blade = { ...comb(0.2), bladeCount: 3, chordRatio: Float64Array.of(0.2, 0.1) };
    const { stations } = solve(blade);
    stations.radiusRatio.forEach((r, i) => {
      const s = Math.abs(Math.sin(stations.inflowAngle[i]!));
      const tip = (2 / Math.PI) * Math.acos(Math.exp((-3 * (1 - r)) / (2 * r * s)));
      const root = (2 / Math.PI) * Math.acos(Math.exp((-3 * (r - 0.1)) / (2 * 0.1 * s)));
      expect(stations.lossFactor[i]!).toBeCloseTo(tip * root, 5);
    });
  });

  it('give nothing at zero pitch and mirror at negative pitch with a symmetric section', () => {
    const flat = solve({ ...comb(0), bladeCount: 2, chordRatio: Float64Array.of(0.2, 0.2) }, thinPlate);
    const up = solve({ ...comb(0.1), bladeCount: 2, chordRatio: Float64Array.of(0.2, 0.2) }, thinPlate);
    const down = solve({ ...comb(-0.1), bladeCount: 2, chordRatio: Float64Array.of(0.2, 0.2) }, thinPlate);
    expect(Math.abs(flat.thrustCoefficient)).toBeLessThan(1e-9);
    // The stall delay acts above zero lift only, so mirrored lift differs by what it adds: none here.
    expect(down.thrustCoefficient / up.thrustCoefficient).toBeCloseTo(-1, 2);
  });
});
