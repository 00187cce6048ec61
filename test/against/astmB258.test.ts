import { describe, expect, it } from 'vitest';
import { gaugeArea, gaugeDiameter, wireResistance } from '../../src/drive/wire.ts';

/**
 * ASTM B258 diameters of solid round wire (table 1: 4/0 0.4600 in, 36 0.0050 in; here 10 0.1019, 12 0.0808,
 * 20 0.0320, 24 0.0201 in, from memory of the table) and resistance with IEC 60028 copper, 1.7241e-8 ohm m at
 * 20 degC, as in the project's check list. Tolerance: half a unit of the last printed digit.
 */
describe('ASTM B258 wire gauges', () => {
  it.each([
    [10, 0.1019],
    [12, 0.0808],
    [20, 0.032],
    [24, 0.0201],
    [36, 0.005],
  ])('gauge %i is %f in across', (gauge, inches) => {
    expect(Math.abs(gaugeDiameter(gauge) / 0.0254 - inches)).toBeLessThan(5.1e-5);
  });

  it.each([
    [10, 3.277],
    [12, 5.211],
    [14, 8.285],
    [16, 13.174],
    [20, 33.308],
  ])('gauge %i has %f mohm/m at 20 degC', (gauge, milliohm) => {
    const found = wireResistance({ area: gaugeArea(gauge), length: 1, temperature: 293.15 });
    expect(Math.abs(found * 1000 - milliohm)).toBeLessThan(6e-4);
  });

  it('rises 0.393 % a kelvin (IEC 60028)', () => {
    const wire = { area: gaugeArea(12), length: 1, temperature: 293.15 };
    expect(wireResistance({ ...wire, temperature: 343.15 }) / wireResistance(wire)).toBeCloseTo(1.1965, 10);
  });
});
