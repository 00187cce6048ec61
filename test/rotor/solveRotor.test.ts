import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { bladeFromNameplate, bladeFromTable } from '../../src/rotor/blade.ts';
import { solveElements } from '../../src/rotor/elements.ts';
import { elementWork, setCondition } from '../../src/rotor/elementWork.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { Blade, RotorState } from '../../src/rotor/types.ts';
import { anyBlade, sections } from './arbitrary.ts';

const air = standardAtmosphere({ height: 0 });
const fiveInch = bladeFromNameplate({ diameter: 0.127, pitch: 0.0762, bladeCount: 3 });

function at(blade: Blade, angularSpeed: number, axialSpeed = 0): RotorState {
  const state = solveRotor(blade, sections, { angularSpeed, axialSpeed, air });
  if (!state.ok) throw new Error(state.reason);
  return state.value;
}

describe('solveRotor', () => {
  it('is finite or says why not, for any blade anywhere', () => {
    fc.assert(
      fc.property(
        anyBlade,
        fc.double({ min: 0.1, max: 330, noNaN: true }),
        fc.double({ min: -60, max: 120, noNaN: true }),
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        (plain, tipSpeed, axialSpeed, pitchOffset, dragScale) => {
          const blade = { ...plain, pitchOffset, dragScale };
          const angularSpeed = Math.min(tipSpeed / (blade.diameter / 2), 20_000);
          const state = solveRotor(blade, sections, { angularSpeed, axialSpeed, air });
          if (!state.ok) {
            expect(state.reason.length).toBeGreaterThan(20);
            return;
          }
          const { stations, regime, ...numbers } = state.value;
          expect(typeof regime).toBe('string');
          for (const value of Object.values(numbers)) expect(Number.isFinite(value)).toBe(true);
          for (const column of Object.values(stations)) {
            expect(column.every((value: number) => Number.isFinite(value))).toBe(true);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('always has an answer in hover and climb, for blades that pull', () => {
    fc.assert(
      fc.property(
        anyBlade.filter((blade) => blade.twist.every((angle) => angle > 0.02)),
        // Together within tip Mach 0.9.
        fc.double({ min: 1, max: 285, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (blade, tipSpeed, axialSpeed) => {
          const angularSpeed = tipSpeed / (blade.diameter / 2);
          expect(solveRotor(blade, sections, { angularSpeed, axialSpeed, air }).ok).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('thrust falls with forward speed, through zero, into windmilling', () => {
    let before = Number.POSITIVE_INFINITY;
    for (let V = 0; V <= 30; V += 0.5) {
      const { thrust } = at(fiveInch, 1500, V);
      expect(thrust).toBeLessThan(before);
      before = thrust;
    }
    expect(at(fiveInch, 1500, 30).regime).toBe('windmill');
  });

  it('thrust and torque rise with rpm', () => {
    for (let omega = 200; omega < 4000; omega += 100) {
      const slow = at(fiveInch, omega);
      const fast = at(fiveInch, omega + 100);
      expect(fast.thrust).toBeGreaterThan(slow.thrust);
      expect(fast.torque).toBeGreaterThan(slow.torque);
    }
  });

  it('is continuous from hover into climb and slow descent', () => {
    const still = at(fiveInch, 1500).thrust;
    expect(at(fiveInch, 1500, 1e-6).thrust).toBeCloseTo(still, 5);
    expect(at(fiveInch, 1500, -1e-6).thrust).toBeCloseTo(still, 5);
  });

  it('names the vortex ring instead of answering in it, and answers again in fast descent', () => {
    const condition = { angularSpeed: 1500, axialSpeed: -8, air };
    const ring = solveRotor(fiveInch, sections, condition);
    expect(ring.ok).toBe(false);
    if (!ring.ok) expect(ring.reason).toContain('vortex ring');
    const fall = at(fiveInch, 700, -30);
    expect(fall.thrust).toBeGreaterThan(0);
    expect(fall.regime).toBe('descent');
  });

  it('twenty stations lie within 0.5 % of a blade cut far finer', () => {
    const loads = [20, 400].map((count) => {
      const work = elementWork(fiveInch, sections, count);
      setCondition(work, 1500, 0, air);
      expect(solveElements(work, 1500, 0, air.density, false)).toBe(true);
      return [work.last[0]!, work.last[1]!] as const;
    });
    expect(Math.abs(loads[0]![0] / loads[1]![0] - 1)).toBeLessThan(0.005);
    expect(Math.abs(loads[0]![1] / loads[1]![1] - 1)).toBeLessThan(0.005);
  });

  it('power is torque times speed and coefficients are what they say', () => {
    const state = at(fiveInch, 1500, 5);
    const n = 1500 / (2 * Math.PI);
    expect(state.power).toBeCloseTo(state.torque * 1500, 9);
    expect(state.thrustCoefficient).toBeCloseTo(state.thrust / (air.density * n ** 2 * 0.127 ** 4), 9);
    expect(state.advanceRatio).toBeCloseTo(5 / (n * 0.127), 9);
  });

  it('refuses conditions and blades out of range by name', () => {
    expect(() => at(fiveInch, 0)).toThrow(/angularSpeed/);
    expect(() => at(fiveInch, 100, 500)).toThrow(/axialSpeed/);
    expect(() => bladeFromNameplate({ diameter: -1, pitch: 0.1, bladeCount: 2 })).toThrow(/diameter/);
    expect(() => bladeFromNameplate({ diameter: 0.127, pitch: 0.1, bladeCount: 2.5 })).toThrow(/bladeCount/);
    expect(() => bladeFromNameplate({ diameter: 0.127, pitch: Number.NaN, bladeCount: 2 })).toThrow(/pitch/);
    expect(() =>
      bladeFromTable({
        diameter: 0.1,
        bladeCount: 2,
        radiusRatio: [0.2, 0.2, 1],
        chordRatio: [1, 1, 1],
        twist: [0, 0, 0],
      }),
    ).toThrow(/radiusRatio/);
  });
});
