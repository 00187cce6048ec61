import { describe, expect, it } from 'vitest';
import type { LayoutParameters } from '../../../src/airframe/types.ts';
import { failureRate } from '../../../src/flight/reserve/failureRate.ts';
import { motorOut } from '../../../src/flight/reserve/motorOut.ts';
import { craft, ring } from '../reserve/crafts.ts';

/**
 * 'More motors, more single-motor failures per flight hour; no credit for six or eight where it is not there'
 * (common practice, no source). Each craft is balanced at a thrust to weight of 5, whatever its motors.
 */
const layouts: readonly { readonly layout: LayoutParameters; readonly motors: number }[] = [
  { layout: { kind: 'true X', diagonal: 0.22 }, motors: 4 },
  { layout: { kind: 'hexa X', diagonal: 0.3 }, motors: 6 },
  { layout: { kind: 'Y6 coaxial', frontWidth: 0.25, length: 0.22, discSpacing: 0.05 }, motors: 6 },
  { layout: { kind: 'octo', diagonal: 0.4 }, motors: 8 },
  { layout: { kind: 'X8 coaxial', width: 0.2, length: 0.2, discSpacing: 0.05 }, motors: 8 },
];
const PER_MOTOR_HOUR = 0.002;

/** Of the rotors, over thrust and edgewise speed [s/m]. */
const IN_PLANE = 0.015;

const rateOf = (layout: LayoutParameters, motors: number) =>
  failureRate(
    motorOut(craft(layout, { maximumThrust: (5 * 0.7 * 9.80665) / motors, minimumThrust: 0.05 }), IN_PLANE),
    PER_MOTOR_HOUR,
  );

describe('motors that fail', () => {
  it('more motors fail more often, in proportion', () => {
    for (const { layout, motors } of layouts) {
      expect(rateOf(layout, motors).failuresPerHour).toBeCloseTo(motors * PER_MOTOR_HOUR, 12);
    }
  });

  it('the flat six loses full control more often than the four, the coaxial and the eight hardly ever', () => {
    const lost = ({ layout, motors }: (typeof layouts)[number]): number => {
      const { failuresPerHour, byHeld } = rateOf(layout, motors);
      return failuresPerHour - byHeld['full hover control'];
    };
    const [four, six, y6, octo, x8] = layouts.map(lost);
    expect(six!).toBeGreaterThan(four!);
    for (const kept of [y6, octo, x8]) expect(kept!).toBe(0);
  });

  it('the flat six leaves a slow turn, though, and the four a fast spin that common controllers fall out of', () => {
    expect(rateOf(layouts[0]!.layout, 4).byHeld['only spinning fast']).toBeCloseTo(4 * PER_MOTOR_HOUR, 12);
    expect(rateOf(layouts[1]!.layout, 6).byHeld['hover without yaw']).toBeCloseTo(6 * PER_MOTOR_HOUR, 12);
  });

  it('a flat six spun in pairs keeps control for four motors out of six', () => {
    const model = { ...craft(layouts[1]!.layout), effectors: ring([1, 1, -1, -1, 1, -1], 0.15) };
    const { byHeld } = failureRate(motorOut(model, IN_PLANE), PER_MOTOR_HOUR);
    expect(byHeld['full hover control']).toBeCloseTo(4 * PER_MOTOR_HOUR, 12);
    expect(byHeld['hover without yaw']).toBeCloseTo(2 * PER_MOTOR_HOUR, 12);
  });

  it('credit ends where the thrust does: a heavy eight drops on seven', () => {
    const heavy = craft(layouts[3]!.layout, { maximumThrust: (1.1 * 0.7 * 9.80665) / 8, minimumThrust: 0 });
    expect(new Set(motorOut(heavy).map((one) => one.held))).toEqual(new Set(['nothing']));
  });
});
