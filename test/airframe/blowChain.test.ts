import fc from 'fast-check';
import { expect, it } from 'vitest';
import { armForce, type BlowChain } from '../../src/airframe/blowChain.ts';

const bare: BlowChain = {
  contact: 3e5,
  restitution: 0.99,
  tip: 1e-4,
  arm: 5e4,
  craft: 0.15,
  loose: 0,
  strap: 0,
};

it('without a mass at the tip is the spring and mass of the handbooks: F = v sqrt(k m) (Abrate 1998, ch. 3)', () => {
  const k = 1 / (1 / bare.contact + 1 / bare.arm);
  expect(armForce(bare) / Math.sqrt(k * bare.craft)).toBeCloseTo(1, 2);
});

it('on ground that never gives, the tip stops at once and the arm stops the rest: F = v sqrt(k m) again', () => {
  const wall = { ...bare, contact: 1e9, restitution: 0.01, tip: 0.04 };
  expect(armForce(wall) / Math.sqrt(wall.arm * wall.craft)).toBeCloseTo(1, 1);
});

it('on ground far softer than the arm both stop as one, and the arm bears its share by mass', () => {
  const soft = { ...bare, contact: 50, arm: 1e6, tip: 0.05 };
  const whole = Math.sqrt(soft.contact * (soft.craft + soft.tip));
  // The dashpot, made for the tip alone, slows the whole by a little.
  const share = soft.craft / (soft.craft + soft.tip);
  expect(armForce(soft) / (whole * share)).toBeGreaterThan(0.97);
  expect(armForce(soft) / (whole * share)).toBeLessThan(1.1);
});

it('a loose pack loads the arm by less than a fixed one, by more than none', () => {
  const packed = { ...bare, tip: 0.03, loose: 0.1 };
  fc.assert(
    fc.property(fc.double({ min: 3, max: 7, noNaN: true }), (power) => {
      const strap = 10 ** power;
      const force = armForce({ ...packed, strap });
      expect(force).toBeGreaterThan(0.99 * armForce({ ...packed, loose: 0, strap: 0 }));
      // Struck by turns, springs in a row may pass a little over the rigid one.
      expect(force).toBeLessThan(1.25 * armForce({ ...packed, craft: bare.craft + 0.1, loose: 0 }));
    }),
    { numRuns: 40 },
  );
});

it('a shorter step would not tell another force: all stiffnesses and masses scaled alike, it scales too', () => {
  const chain = { ...bare, tip: 0.04, restitution: 0.3, loose: 0.1, strap: 6e3 };
  const scaled = { ...chain, contact: 4 * 3e5, arm: 2e5, strap: 2.4e4 };
  expect(armForce(scaled) / armForce(chain)).toBeCloseTo(2, 9);
});
