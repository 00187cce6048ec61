import { describe, expect, it } from 'vitest';
import type { LayoutParameters } from '../../../src/airframe/types.ts';
import { failureRate } from '../../../src/flight/reserve/failureRate.ts';
import { motorOut, withMotorLimited } from '../../../src/flight/reserve/motorOut.ts';
import { craft } from './crafts.ts';

/** Of the rotors of a 5 inch craft, over thrust and edgewise speed [s/m]. */
const IN_PLANE = 0.015;

const held = (layout: LayoutParameters, options = {}) =>
  new Set(motorOut(craft(layout, options), IN_PLANE).map((one) => one.held));

describe('what is held after one motor has stopped', () => {
  it('three motors hold nothing, four only a fast spin', () => {
    expect(held({ kind: 'tri', frontWidth: 0.25, length: 0.22 }, { servoTilt: 0.5 })).toEqual(
      new Set(['nothing']),
    );
    expect(held({ kind: 'true X', diagonal: 0.22 })).toEqual(new Set(['only spinning fast']));
    expect(held({ kind: 'plus', diagonal: 0.22 })).toEqual(new Set(['only spinning fast']));
  });

  it('a true X settles where the drag of two rotors takes up their torque: k / (c l2), by hand', () => {
    // The opposite one idles at 0.2 N with the dead one's weight on nobody: two carry the rest, each at l = 0.11 m.
    const [one] = motorOut(craft({ kind: 'true X', diagonal: 0.22 }, { minimumThrust: 0 }), IN_PLANE);
    expect(one!.turning).toBeCloseTo(0.014 / (IN_PLANE * 0.11 ** 2), 6);
    expect(one!.liftToWeight).toBeGreaterThan(24 / (0.7 * 9.80665));
  });

  it('a four that two of its motors cannot carry with a tenth to spare falls', () => {
    const mass = (share: number) => (share * 24) / 9.80665;
    const options = (share: number) => ({ mass: mass(share), minimumThrust: 0 });
    // Leaning its axis, the one between them helps a little: three carry more than two.
    expect(held({ kind: 'true X', diagonal: 0.22 }, options(0.9))).toEqual(new Set(['only spinning fast']));
    expect(held({ kind: 'true X', diagonal: 0.22 }, options(1.4))).toEqual(new Set(['nothing']));
  });

  it('a four whose pack lies off-centre does not stand on three: one that balances there turns fast', () => {
    // Once called a hover without yaw, with 14 % of the moments left, at eleven turns a second.
    const model = craft({ kind: 'dead cat', frontWidth: 0.208, rearWidth: 0.172, length: 0.158 });
    const out = motorOut({ ...model, centreOfGravity: [0.012, 0, 0] }, IN_PLANE);
    expect(out[1]!.motor).toBe('rear right');
    expect(out[1]!.held).toBe('only spinning fast');
    expect(out[1]!.turning).toBeGreaterThan(5 * 2 * Math.PI);
    // Without a drag to hold against, no rate is made up.
    const [unknown] = motorOut(model);
    expect(unknown!.held).toBe('only spinning fast');
    expect(unknown!.turning).toBeUndefined();
  });

  it('a flat six with alternating spin hovers, but not without turning', () => {
    expect(held({ kind: 'hexa X', diagonal: 0.3 })).toEqual(new Set(['hover without yaw']));
    expect(held({ kind: 'hexa plus', diagonal: 0.3 })).toEqual(new Set(['hover without yaw']));
  });

  it('wherever its pack lies, within reason: once two of six came out as nothing, their yaw held by a hair', () => {
    const six = craft({ kind: 'hexa X', diagonal: 0.3 }, { minimumThrust: 0.05 });
    for (const centreOfGravity of [
      [0.012, 0, 0],
      [-0.006, 0.003, 0.01],
      [0, -0.01, 0],
    ] as const) {
      const out = motorOut({ ...six, centreOfGravity }, IN_PLANE);
      expect(new Set(out.map((one) => one.held))).toEqual(new Set(['hover without yaw']));
      for (const one of out) expect(one.share).toBeGreaterThan(0.3);
    }
  });

  it('a flat eight and coaxial six and eight hold everything', () => {
    expect(held({ kind: 'octo', diagonal: 0.4 })).toEqual(new Set(['full hover control']));
    expect(held({ kind: 'octo plus', diagonal: 0.4 })).toEqual(new Set(['full hover control']));
    expect(held({ kind: 'X8 coaxial', width: 0.2, length: 0.2, discSpacing: 0.05 })).toEqual(
      new Set(['full hover control']),
    );
    expect(held({ kind: 'Y6 coaxial', frontWidth: 0.25, length: 0.22, discSpacing: 0.05 })).toEqual(
      new Set(['full hover control']),
    );
  });

  it('a six that is heavy for four of its motors is on the edge, one too heavy for them holds nothing', () => {
    // With one lost, roll and pitch balance only while the opposite one idles: four motors carry it.
    const limit = (4 * 12) / 9.80665;
    const at = (share: number) =>
      held({ kind: 'hexa X', diagonal: 0.3 }, { mass: share * limit, minimumThrust: 0 });
    expect(at(0.85)).toEqual(new Set(['hover without yaw']));
    // Under a tenth of lift is left.
    expect(at(0.95)).toEqual(new Set(['on the edge']));
    expect(at(1.02)).toEqual(new Set(['nothing']));
  });

  it('leaves less control than the whole craft had', () => {
    for (const one of motorOut(craft({ kind: 'octo', diagonal: 0.4 }))) {
      expect(one.share).toBeGreaterThan(0.1);
      expect(one.share).toBeLessThan(1);
      expect(one.liftToWeight).toBeLessThan(96 / (0.7 * 9.80665));
    }
  });
});

describe('one motor that runs hot', () => {
  it('takes reserve away step by step', () => {
    const model = craft({ kind: 'true X', diagonal: 0.22 });
    const shares = [12, 3, 2, 1.9].map((limit) => withMotorLimited(model, 0, limit).share);
    expect(shares[0]).toBeCloseTo(1, 9);
    for (let i = 1; i < shares.length; i++) expect(shares[i]).toBeLessThan(shares[i - 1]!);
    // A twentieth of the moments is no use.
    expect(withMotorLimited(model, 0, 1.8, IN_PLANE).held).toBe('hover without yaw');
    // Under its hover share, 1.716 N, its opposite must follow it down and the craft turns.
    expect(withMotorLimited(model, 0, 1.7, IN_PLANE).held).toBe('hover without yaw');
    expect(withMotorLimited(model, 0, 0.2, IN_PLANE).held).toBe('only spinning fast');
    expect(() => withMotorLimited(model, 9, 1)).toThrow(/index/);
    expect(() => withMotorLimited(model, 0, -1)).toThrow(/maximumThrust/);
  });
});

describe('failure rate', () => {
  it('adds up over motors and sorts by what is left', () => {
    const rate = failureRate(motorOut(craft({ kind: 'hexa X', diagonal: 0.3 }), IN_PLANE), 0.01);
    expect(rate.failuresPerHour).toBeCloseTo(0.06, 12);
    expect(rate.byHeld).toEqual({
      'full hover control': 0,
      'hover without yaw': expect.closeTo(0.06, 12),
      'on the edge': 0,
      'only spinning fast': 0,
      nothing: 0,
    });
    expect(() => failureRate([], -1)).toThrow(/failuresPerMotorHour/);
  });
});
