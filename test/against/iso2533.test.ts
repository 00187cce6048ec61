import { describe, expect, it } from 'vitest';
import { geopotentialHeight, standardAtmosphere } from '../../src/air/standardAtmosphere.ts';

/**
 * ISO 2533:1975 Standard atmosphere, tables 1 and 5. Values as handed down in the project's check list,
 * from memory of the tables and re-evaluated from the standard's formulas.
 * Tolerance: half a unit in the last printed digit, relative 1e-5.
 */
const rows = [
  { height: 0, temperature: 288.15, pressure: 101325, density: 1.225 },
  { height: 1000, temperature: 281.65, pressure: 89874.6, density: 1.11164 },
  { height: 5000, temperature: 255.65, pressure: 54019.9, density: 0.736116 },
  { height: 11000, temperature: 216.65, pressure: 22632.0, density: 0.363918 },
];

describe('ISO 2533 standard atmosphere', () => {
  for (const row of rows) {
    it(`agrees with the table at ${row.height} m`, () => {
      const air = standardAtmosphere({ height: row.height });
      expect(Math.abs(air.temperature - row.temperature)).toBeLessThan(1e-9);
      expect(Math.abs(air.pressure / row.pressure - 1)).toBeLessThan(1e-5);
      expect(Math.abs(air.density / row.density - 1)).toBeLessThan(1e-5);
    });
  }

  it('agrees with the sea-level viscosity and speed of sound', () => {
    const air = standardAtmosphere({ height: 0 });
    expect(Math.abs(air.dynamicViscosity / 1.7894e-5 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(air.speedOfSound / 340.294 - 1)).toBeLessThan(1e-5);
  });

  // Tables 1 and 5 at 11 000 m, from memory: 1.4216e-5 Pa s, 295.069 m/s.
  it('agrees with viscosity and speed of sound at the tropopause', () => {
    const air = standardAtmosphere({ height: 11000 });
    expect(Math.abs(air.dynamicViscosity / 1.4216e-5 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(air.speedOfSound / 295.069 - 1)).toBeLessThan(1e-5);
  });

  it('relates geometric and geopotential height', () => {
    // ISO 2533 table 5: 10 000 m geometric is 9984 m geopotential, rounded to 1 m.
    expect(Math.abs(geopotentialHeight(10000) - 9984)).toBeLessThan(0.7);
  });
});
