// Glauert's edgewise momentum (ARC R&M 1111, 1926): v sqrt(V2 + v2) = vh2, whose closed form gives v / vh =
// 0.786151, 0.485868, 0.331319 at V / vh = 1, 2, 3 (CHECKS.md, from memory; re-evaluated here). The rotor's mean
// induced speed must obey it for its own thrust, to the root's tolerance.
import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { bladeFromNameplate } from '../../src/rotor/blade.ts';
import { dreesSlopes, solveEdgewise } from '../../src/rotor/solveEdgewise.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { EdgewiseState } from '../../src/rotor/types.ts';
import { sections } from '../rotor/arbitrary.ts';

const air = standardAtmosphere({ height: 0 });
const blade = bladeFromNameplate({ diameter: 0.127, pitch: 0.0762, bladeCount: 3 });

function at(edgewiseSpeed: number, axialSpeed = 0, angularSpeed = 1500): EdgewiseState {
  const state = solveEdgewise(blade, sections, { angularSpeed, axialSpeed, edgewiseSpeed, air });
  if (!state.ok) throw new Error(state.reason);
  return state.value;
}

const closedForm = (ratio: number) => Math.sqrt(-(ratio ** 2) / 2 + Math.sqrt(ratio ** 4 / 4 + 1));

describe('edgewise flight', () => {
  it('has the check values in its closed form', () => {
    expect(closedForm(1)).toBeCloseTo(0.786151, 6);
    expect(closedForm(2)).toBeCloseTo(0.485868, 6);
    expect(closedForm(3)).toBeCloseTo(0.331319, 6);
  });

  it('obeys Glauert for its own thrust', () => {
    for (const V of [2, 5, 10, 20, 35]) {
      const { thrust, inducedSpeed } = at(V);
      const hover = Math.sqrt(thrust / (2 * air.density * Math.PI * 0.0635 ** 2));
      expect(inducedSpeed / hover).toBeCloseTo(closedForm(V / hover), 4);
    }
  });

  it('is the axial rotor at zero edgewise speed, and runs into it without a step', () => {
    for (const V of [0, 3, 10, 25]) {
      const axial = solveRotor(blade, sections, { angularSpeed: 1500, axialSpeed: V, air });
      if (!axial.ok) throw new Error(axial.reason);
      expect(at(0, V).thrust).toBeCloseTo(axial.value.thrust, 6);
      expect(at(0, V).torque).toBeCloseTo(axial.value.torque, 8);
      expect(Math.abs(at(0.01, V).thrust - axial.value.thrust)).toBeLessThan(0.01);
    }
    const still = at(0);
    for (const zero of [still.inPlaneForce, still.sideForce, still.momentAdvancingUp, still.momentAftUp]) {
      expect(Math.abs(zero)).toBeLessThan(1e-9);
    }
  });

  it('lifts more edgewise than in hover, drags aft, rolls towards the retreating side, grows with speed', () => {
    let before = at(0);
    for (const V of [4, 8, 12, 16, 20]) {
      const now = at(V);
      expect(now.thrust).toBeGreaterThan(before.thrust);
      expect(now.inPlaneForce).toBeGreaterThan(before.inPlaneForce);
      expect(now.momentAdvancingUp).toBeGreaterThan(before.momentAdvancingUp);
      before = now;
    }
  });

  it('is finite or says why not over a wide field', () => {
    for (const omega of [300, 1000, 3000]) {
      for (const ratio of [0, 0.05, 0.2, 0.4, 0.6]) {
        for (const axial of [-0.3, -0.1, 0, 0.1, 0.4, 1]) {
          const tip = omega * 0.0635;
          const condition = { angularSpeed: omega, axialSpeed: axial * tip, edgewiseSpeed: ratio * tip, air };
          const state = solveEdgewise(blade, sections, condition);
          if (state.ok)
            for (const value of Object.values(state.value)) expect(Number.isFinite(value)).toBe(true);
          else expect(state.reason.length).toBeGreaterThan(20);
        }
      }
    }
    expect(() => at(500)).toThrow(/edgewiseSpeed/);
  });

  it('distributes inflow as Drees does: nothing in axial flow, 4/3 aft at the fastest skew', () => {
    expect(dreesSlopes(0, 0)).toEqual({ aft: 0, advancing: -0 });
    expect(dreesSlopes(Math.PI / 2, 0).aft).toBeCloseTo(4 / 3, 12);
  });
});
