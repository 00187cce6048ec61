import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drydenHeights,
  drydenLowAltitude,
  drydenSpectrum,
  gustComponents,
  passingTime,
} from '../../src/air/dryden.ts';

describe('Dryden spectra', () => {
  it('integrate to the intensity squared', () => {
    fc.assert(
      fc.property(
        fc.double({ min: drydenHeights[0], max: drydenHeights[1], noNaN: true }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.constantFrom(...gustComponents),
        (height, wind, airspeed, component) => {
          const turbulence = drydenLowAltitude(height, wind);
          // omega = tan(theta) / T maps the half line on 0..pi/2, where the integrand is smooth.
          const time = passingTime(turbulence, component, airspeed);
          const count = 400;
          let sum = 0;
          for (let i = 0; i < count; i++) {
            const theta = ((i + 0.5) / count) * (Math.PI / 2);
            const omega = Math.tan(theta) / time;
            sum += drydenSpectrum(turbulence, component, omega, airspeed) / Math.cos(theta) ** 2 / time;
          }
          const variance = (sum * Math.PI) / 2 / count;
          expect(variance / turbulence.intensity[component] ** 2).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  it('refuse heights outside the model and winds that are none', () => {
    expect(() => drydenLowAltitude(2, 5)).toThrow(/height must be between/);
    expect(() => drydenLowAltitude(400, 5)).toThrow(/height must be between/);
    expect(() => drydenLowAltitude(10, -1)).toThrow(/windAt20Feet/);
    expect(() => passingTime(drydenLowAltitude(10, 5), 'vertical', 0)).toThrow(/airspeed/);
  });
});
