import { describe, expect, it } from 'vitest';
import { hoverThrottleWindowOf, thrustToWeightWindow } from '../../src/assess/windows.ts';
import { contextOf, demoBrief } from './parts/crafts.ts';

const PURPOSES = ['race', 'freestyle', 'micro', 'cruising', 'guarded filming'] as const;

describe('windows of the trade', () => {
  // They once contradicted each other: 2.5 to 5 times its weight asks 36 to 51 % throttle, and 20 to 35 % was the window.
  it.each(PURPOSES)('%s: a craft inside its thrust to weight can be inside its hover throttle', (purpose) => {
    const lift = thrustToWeightWindow(purpose);
    const throttle = hoverThrottleWindowOf(purpose);
    // Thrust goes with the square of rpm (rotor theory); 0.8 for sag and losses at full throttle (common practice, no source).
    const middle = 0.8 / Math.sqrt((lift.low + lift.high) / 2);
    expect(middle).toBeGreaterThan(throttle.low);
    expect(middle).toBeLessThan(throttle.high);
    expect(0.8 / Math.sqrt(lift.high)).toBeGreaterThan(throttle.low);
    expect(0.8 / Math.sqrt(lift.low)).toBeLessThan(1.05 * throttle.high);
  });

  it('the guarded demo is in both', () => {
    const { told } = contextOf('guarded/dotterel').flight!;
    const { purpose } = demoBrief('guarded/dotterel');
    for (const [value, { low, high }] of [
      [told.story.thrustToWeight, thrustToWeightWindow(purpose)],
      [told.story.hoverThrottle, hoverThrottleWindowOf(purpose)],
    ] as const) {
      expect(value).toBeGreaterThan(low);
      expect(value).toBeLessThan(high);
    }
  });
});
