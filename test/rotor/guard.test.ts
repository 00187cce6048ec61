// Shrouded-rotor momentum theory, expansion ratio 1 (McCormick 1967; CHECKS.md, from memory): power 0.707107 at
// equal thrust and area, thrust 1.259921 at equal power, the rotor carries half. Closed form.
import { describe, expect, it } from 'vitest';
import { guardEffect } from '../../src/rotor/guard.ts';

const ideal = { tipGap: 0, lipRadius: 0.02, expansionRatio: 1, depth: 0.02, blockedArea: 0 };

describe('guardEffect', () => {
  it('has the check values of an ideal ring', () => {
    const effect = guardEffect(ideal, 0.0635);
    expect(effect.powerAtEqualThrust).toBeCloseTo(Math.SQRT1_2, 6);
    expect(effect.thrustAtEqualPower).toBeCloseTo(1.259921, 6);
    expect(effect.rotorShare).toBeCloseTo(0.5, 12);
  });

  it('is nothing for a hoop without lip or with a wide gap, and a loss once it has struts', () => {
    for (const hoop of [
      { ...ideal, lipRadius: 0 },
      { ...ideal, tipGap: 0.01 },
    ]) {
      expect(guardEffect(hoop, 0.0635).powerAtEqualThrust).toBeCloseTo(1, 12);
      expect(guardEffect({ ...hoop, blockedArea: 0.001 }, 0.0635).thrustAtEqualPower).toBeLessThan(1);
    }
  });

  it('refuses what cannot be, by name', () => {
    expect(() => guardEffect({ ...ideal, tipGap: -1 }, 0.05)).toThrow(/tipGap/);
    expect(() => guardEffect({ ...ideal, expansionRatio: 3 }, 0.05)).toThrow(/expansionRatio/);
    expect(() => guardEffect(ideal, 0)).toThrow(/radius/);
  });
});
