import { describe, expect, it } from 'vitest';
import { type ArmBeam, assembleArm, rootFixed, tipResponses } from '../../src/airframe/armBeam.ts';
import { PLAIN_END } from '../../src/airframe/endLength.ts';
import { warpingConstant } from '../../src/airframe/heldEnd.ts';
import { torsionCoefficient, torsionStiffness } from '../../src/airframe/section.ts';
import { lowestModes } from '../../src/numerics/lowestModes.ts';

/**
 * Slender beams against Euler-Bernoulli closed forms. Cantilever and free-free roots: Blevins, Formulas
 * for Natural Frequency and Mode Shape (1979), table 8-1; tip mass equal to the beam's: root of the
 * tip-mass equation there; torsion constants: Timoshenko and Goodier, table of art. 109. Values from
 * memory, re-evaluated from their equations. Tolerance 1e-4 where the beam's slenderness (t/L 1/1000)
 * leaves shear and rotary inertia below 1e-5.
 */
const slender: ArmBeam = {
  length: 1,
  outline: [{ at: 0, width: 0.002 }],
  thickness: 0.001,
  moduli: { E1: 70e9, E2: 70e9, nu12: 0, G12: 35e9, G13: 35e9, G23: 35e9 },
  density: 2700,
  rootEnd: PLAIN_END,
  tipEnd: PLAIN_END,
};
const area = 2e-6;
const scale = Math.sqrt((70e9 * (0.002 * 0.001 ** 3)) / 12 / (2700 * area));

/** beta L of the out-of-plane modes. */
function roots(arm: ArmBeam, count: number): number[] {
  const matrices = assembleArm(arm);
  const stiffness = rootFixed(matrices.stiffness);
  const pairs = lowestModes(stiffness, rootFixed(matrices.mass), 8);
  if (!pairs.ok) throw new Error(pairs.reason);
  const size = stiffness.size;
  const found: number[] = [];
  for (const [k, value] of pairs.value.values.entries()) {
    const tip = pairs.value.vectors.subarray(k * size + size - 6, (k + 1) * size);
    if (Math.abs(tip[2]!) > Math.abs(tip[1]!)) found.push(Math.sqrt(Math.sqrt(value) / scale));
  }
  return found.slice(0, count);
}

describe('beams against closed forms', () => {
  it('cantilever 1.875104, 4.694091, 7.854757', () => {
    for (const [i, value] of [1.875104, 4.694091, 7.854757].entries()) {
      expect(roots(slender, 3)[i]! / value).toBeCloseTo(1, 4);
    }
  });

  it('free-free 4.730041, 7.853205, 10.995608 after six rigid modes', () => {
    const { stiffness, mass } = assembleArm(slender);
    const shift = (2 * Math.PI) ** 2;
    const pairs = lowestModes(stiffness, mass, 12, shift);
    if (!pairs.ok) throw new Error(pairs.reason);
    const values = pairs.value.values;
    expect(Math.abs(values[5]!)).toBeLessThan(1e-6 * values[6]!);
    // Out of plane (1 mm thick) and in plane (2 mm wide) interleave: 4.73, 4.73 sqrt 2, 7.85, 10.9956 ...
    const betas = Array.from(values.slice(6), (value) => Math.sqrt(Math.sqrt(value) / scale));
    for (const value of [4.730041, 7.853205, 10.995608]) {
      expect(Math.min(...betas.map((beta) => Math.abs(beta / value - 1)))).toBeLessThan(1e-4);
    }
  });

  it('cantilever with a tip mass of its own mass 1.247917', () => {
    const tipBody = { mass: 2700 * area, height: 0, inertia: [1e-15, 1e-15, 1e-15] as const };
    expect(roots({ ...slender, tipBody }, 1)[0]! / 1.247917).toBeCloseTo(1, 4);
  });

  it('tip deflection F L3/3EI and of a linear wedge (integral by hand)', () => {
    const even = tipResponses(slender, [[0, 0, 1, 0, 0, 0]]);
    expect(even.ok && even.value[0]![2]! / (1 / ((3 * 70e9 * (0.002 * 0.001 ** 3)) / 12))).toBeCloseTo(1, 4);
    const wedge = tipResponses(
      {
        ...slender,
        outline: [
          { at: 0, width: 0.002 },
          { at: 1, width: 0.001 },
        ],
      },
      [[0, 0, 1, 0, 0, 0]],
    );
    // u = F / (E t3/12) times the integral of s2 / (b1 + b1 s) ds from 0 to 1, s from the tip, which is (1/2 - 1 + ln 2)/b1.
    const expected = (Math.log(2) - 0.5) / 0.001 / ((70e9 * 0.001 ** 3) / 12);
    expect(wedge.ok && wedge.value[0]![2]! / expected).toBeCloseTo(1, 4);
  });

  it('torsion of rectangles, width over thickness 1, 2, 3, 5, 10', () => {
    for (const [ratio, value] of [
      [1, 0.140577],
      [2, 0.228682],
      [3, 0.263317],
      [5, 0.291317],
      [10, 0.312325],
    ] as const) {
      expect(torsionCoefficient(ratio)).toBeCloseTo(value, 6);
    }
  });

  it('an orthotropic bar twists alike with its two shear moduli and sides exchanged', () => {
    const moduli = (G12: number, G13: number) => ({ ...slender.moduli, G12, G13 });
    for (const width of [0.006, 0.012, 0.03]) {
      const flat = torsionStiffness(width, 0.005, moduli(8e9, 3.5e9));
      expect(torsionStiffness(0.005, width, moduli(3.5e9, 8e9)) / flat).toBeCloseTo(1, 9);
    }
  });

  it('warping of a thin rectangle tends to b3 t3/144 (Timoshenko and Gere), and of a square is small', () => {
    expect(warpingConstant(1, 0.01) / (0.01 ** 3 / 144)).toBeCloseTo(1, 1);
    expect(warpingConstant(1, 0.001) / (0.001 ** 3 / 144)).toBeCloseTo(1, 2);
    // 0.000134 a6: known for a square from finite-element section tables; from memory, so only its order.
    expect(warpingConstant(1, 1)).toBeLessThan(0.0003);
    expect(warpingConstant(1, 1)).toBeGreaterThan(0.00005);
  });
});
