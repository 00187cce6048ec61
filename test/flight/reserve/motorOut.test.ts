import { describe, expect, it } from 'vitest';
import type { LayoutParameters } from '../../../src/airframe/types.ts';
import { failureRate } from '../../../src/flight/reserve/failureRate.ts';
import { motorOut, withMotorLimited } from '../../../src/flight/reserve/motorOut.ts';
import { craft } from './crafts.ts';

const held = (layout: LayoutParameters, options = {}) =>
  new Set(motorOut(craft(layout, options)).map((one) => one.held));

describe('what is held after one motor has stopped', () => {
  it('three and four motors hold nothing', () => {
    expect(held({ kind: 'tri', frontWidth: 0.25, length: 0.22 }, { servoTilt: 0.5 })).toEqual(
      new Set(['nothing']),
    );
    expect(held({ kind: 'true X', diagonal: 0.22 })).toEqual(new Set(['nothing']));
    expect(held({ kind: 'plus', diagonal: 0.22 })).toEqual(new Set(['nothing']));
  });

  it('a flat six with alternating spin hovers, but not without turning', () => {
    expect(held({ kind: 'hexa X', diagonal: 0.3 })).toEqual(new Set(['hover without yaw']));
    expect(held({ kind: 'hexa plus', diagonal: 0.3 })).toEqual(new Set(['hover without yaw']));
  });

  it('a flat eight and coaxial six and eight hold everything', () => {
    expect(held({ kind: 'octo', diagonal: 0.4 })).toEqual(new Set(['full hover control']));
    expect(held({ kind: 'X8 coaxial', width: 0.2, length: 0.2, discSpacing: 0.05 })).toEqual(
      new Set(['full hover control']),
    );
    expect(held({ kind: 'Y6 coaxial', frontWidth: 0.25, length: 0.22, discSpacing: 0.05 })).toEqual(
      new Set(['full hover control']),
    );
  });

  it('a six that is too heavy for four of its motors holds nothing', () => {
    // With one lost, roll and pitch balance only while the opposite one idles: four motors carry it.
    const limit = (4 * 12) / 9.80665;
    expect(held({ kind: 'hexa X', diagonal: 0.3 }, { mass: 0.98 * limit, minimumThrust: 0 })).toEqual(
      new Set(['hover without yaw']),
    );
    expect(held({ kind: 'hexa X', diagonal: 0.3 }, { mass: 1.02 * limit, minimumThrust: 0 })).toEqual(
      new Set(['nothing']),
    );
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
    const shares = [12, 3, 2, 1.8].map((limit) => withMotorLimited(model, 0, limit).share);
    expect(shares[0]).toBeCloseTo(1, 9);
    for (let i = 1; i < shares.length; i++) expect(shares[i]).toBeLessThan(shares[i - 1]!);
    // Under its hover share, 1.716 N, its opposite must follow it down and the craft turns.
    expect(withMotorLimited(model, 0, 1.7).held).toBe('hover without yaw');
    expect(withMotorLimited(model, 0, 0.2).held).toBe('nothing');
    expect(() => withMotorLimited(model, 9, 1)).toThrow(/index/);
    expect(() => withMotorLimited(model, 0, -1)).toThrow(/maximumThrust/);
  });
});

describe('failure rate', () => {
  it('adds up over motors and sorts by what is left', () => {
    const rate = failureRate(motorOut(craft({ kind: 'hexa X', diagonal: 0.3 })), 0.01);
    expect(rate.failuresPerHour).toBeCloseTo(0.06, 12);
    expect(rate.byHeld).toEqual({
      'full hover control': 0,
      'hover without yaw': expect.closeTo(0.06, 12),
      nothing: 0,
    });
    expect(() => failureRate([], -1)).toThrow(/failuresPerMotorHour/);
  });
});
