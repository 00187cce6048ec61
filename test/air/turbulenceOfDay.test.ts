import { describe, expect, it } from 'vitest';
import { drydenHeights, drydenLowAltitude } from '../../src/air/dryden.ts';
import { turbulenceOfDay } from '../../src/air/turbulenceOfDay.ts';

const measured = { speed: 8, height: 10, roughnessLength: 0.03 };

describe('wind and turbulence of the day', () => {
  it('takes the wind at 20 ft from the one measured at 10 m', () => {
    // ln(6.096/0.03)/ln(10/0.03) = 5.314191/5.809143 = 0.914798
    const { wind, turbulence } = turbulenceOfDay(measured, 10);
    expect(wind).toBeCloseTo(8, 12);
    expect(turbulence.intensity.vertical).toBeCloseTo(0.1 * 8 * 0.914798, 5);
    expect(turbulence).toEqual(drydenLowAltitude(10, turbulence.intensity.vertical * 10));
  });

  it('says at which height the turbulence is given when the craft flies lower', () => {
    const { wind, turbulenceHeight } = turbulenceOfDay(measured, 1.5);
    expect(turbulenceHeight).toBe(drydenHeights[0]);
    expect(wind).toBeLessThan(8);
  });
});
