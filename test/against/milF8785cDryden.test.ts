import { describe, expect, it } from 'vitest';
import { drydenLowAltitude, drydenSpectrum, gustComponents } from '../../src/air/dryden.ts';

/**
 * MIL-F-8785C, Flying qualities of piloted airplanes (5 November 1980), 3.7.1.2 and 3.7.3.4.
 * Values at 100 ft from the project's check list (re-evaluated from the standard's formulas, from
 * memory): L_w 100 ft, L_u = L_v 505.17 ft, sigma_w 0.1 W20, sigma_u/sigma_w 1.71585. Tolerance: half
 * a unit of the last digit given. At 1000 ft the two formulas meet: (0.177 + 0.823) = 1 by design.
 */
const FOOT = 0.3048;
const KNOT = 1852 / 3600;

describe('Dryden turbulence of MIL-F-8785C', () => {
  it('has the scale lengths and intensities of the standard at 100 ft', () => {
    const windAt20Feet = 30 * KNOT;
    const { intensity, scale } = drydenLowAltitude(100 * FOOT, windAt20Feet);
    expect(scale.vertical / FOOT).toBeCloseTo(100, 10);
    expect(Math.abs(scale.longitudinal / FOOT - 505.17)).toBeLessThan(0.005);
    expect(scale.lateral).toBe(scale.longitudinal);
    expect(intensity.vertical).toBeCloseTo(3 * KNOT, 12);
    expect(Math.abs(intensity.longitudinal / intensity.vertical - 1.71585)).toBeLessThan(5e-6);
    expect(intensity.lateral).toBe(intensity.longitudinal);
  });

  it('is isotropic with 1000 ft scales at 1000 ft', () => {
    const { intensity, scale } = drydenLowAltitude(1000 * FOOT, 10);
    for (const component of gustComponents) {
      expect(scale[component] / FOOT).toBeCloseTo(1000, 6);
      expect(intensity[component]).toBeCloseTo(1, 9);
    }
  });

  it('starts at the intensity squared times 2L/(pi V) and L/(pi V)', () => {
    // The standard's spectra at zero frequency, divided by V for angular frequency in time.
    const turbulence = drydenLowAltitude(100 * FOOT, 10);
    const { intensity, scale } = turbulence;
    const start = (component: 'longitudinal' | 'vertical') => drydenSpectrum(turbulence, component, 0, 8);
    expect(start('longitudinal')).toBeCloseTo(
      (intensity.longitudinal ** 2 * 2 * scale.longitudinal) / (Math.PI * 8),
      9,
    );
    expect(start('vertical')).toBeCloseTo((intensity.vertical ** 2 * scale.vertical) / (Math.PI * 8), 9);
  });
});
