import { describe, expect, it } from 'vitest';
import { airOfDay } from '../../src/air/standardAtmosphere.ts';

/**
 * A. Picard, R. S. Davis, M. Glaeser, K. Fujii, 'Revised formula for the density of moist air (CIPM-2007)', Metrologia 45, 2008,
 * 149-155: eqs (1), (A1.1) to (A1.4), coefficients from memory, 400 ppm of carbon dioxide. It is good to 22 parts in a million
 * between 600 and 1100 hPa, 15 and 27 degC; a little beyond that here. Tolerance 0.06 %: real gas and enhancement are left out of
 * ours (0.04 % together), Magnus lies within 0.1 % of the vapour pressure, a hundredth of the whole.
 */
function cipm2007(pressure: number, temperature: number, humidity: number): number {
  const T = temperature;
  const t = T - 273.15;
  const saturation = Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
  const enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * t * t;
  const x = (humidity * enhancement * saturation) / pressure;
  const Z =
    1 -
    (pressure / T) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t * t +
        (5.707e-6 - 2.051e-8 * t) * x +
        (1.9898e-4 - 2.376e-6 * t) * x * x) +
    (pressure / T) ** 2 * (1.83e-11 - 0.765e-8 * x * x);
  return ((3.48374e-3 * pressure) / (Z * T)) * (1 - 0.378 * x);
}

describe('density of moist air, CIPM-2007', () => {
  it.each([
    [0, 15, 0],
    [0, 20, 0.5],
    [0, 27, 0.9],
    [0, 30, 1],
    [300, 5, 0.8],
    [1500, 25, 0.6],
    [3000, 15, 0.4],
  ])('%i m, %i degC, humidity %f', (height, celsius, humidity) => {
    const { density, pressure, temperature } = airOfDay(height, celsius + 273.15, humidity);
    expect(Math.abs(density / cipm2007(pressure, temperature, humidity) - 1)).toBeLessThan(6e-4);
  });

  it('weighs at 30 degC a good per cent less wet than dry', () => {
    const [wet, dry] = [1, 0].map((humidity) => airOfDay(0, 303.15, humidity).density);
    const theirs = cipm2007(101325, 303.15, 1) / cipm2007(101325, 303.15, 0);
    expect(wet! / dry!).toBeCloseTo(theirs, 3);
    expect(theirs).toBeLessThan(0.985);
  });
});
