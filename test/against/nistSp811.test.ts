import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/units/parseQuantity.ts';

/**
 * NIST Special Publication 811 (2008), appendix B.8, factors as printed (seven digits, bold ones
 * exact). Tolerance: half a unit of the last printed digit, 5e-7 relative.
 */
describe('conversion factors against NIST SP 811', () => {
  test.each([
    ['1 in', 'length', 2.54e-2],
    ['1 ft', 'length', 3.048e-1],
    ['1 oz', 'mass', 2.834952e-2],
    ['1 lb', 'mass', 4.535924e-1],
    ['1 mph', 'speed', 4.4704e-1],
    ['1 km/h', 'speed', 2.777778e-1],
    ['1 kn', 'speed', 5.144444e-1],
    ['1 rpm', 'angularSpeed', 1.047198e-1],
    ['1 deg', 'angle', 1.745329e-2],
    ['1 Wh', 'energy', 3.6e3],
    ['1 Ah', 'charge', 3.6e3],
    ['1 gf', 'force', 9.80665e-3],
  ] as const)('%s', (text, dimension, factor) => {
    const read = parseQuantity(text, dimension);
    expect(read.ok && read.value / factor - 1).toBeCloseTo(0, 6);
  });

  test.each([
    ['0 degC', 273.15],
    ['100 degC', 373.15],
    ['32 degF', 273.15],
    ['212 degF', 373.15],
    ['-40 degF', 233.15],
  ])('temperature %s', (text, kelvin) => {
    const read = parseQuantity(text, 'temperature');
    expect(read.ok && read.value).toBeCloseTo(kelvin, 9);
  });
});
