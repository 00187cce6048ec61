import fc from 'fast-check';
import { expect, it } from 'vitest';
import { airOfDay, standardAtmosphere } from '../../src/air/standardAtmosphere.ts';

it('thins with height, heat and damp', () => {
  fc.assert(
    fc.property(fc.double({ min: -500, max: 5000, noNaN: true }), (height) => {
      const here = standardAtmosphere({ height });
      expect(standardAtmosphere({ height: height + 100 }).density).toBeLessThan(here.density);
      expect(standardAtmosphere({ height, temperatureOffset: 5 }).density).toBeLessThan(here.density);
      expect(standardAtmosphere({ height, relativeHumidity: 0.8 }).density).toBeLessThan(here.density);
    }),
  );
});

it('takes a thermometer reading', () => {
  expect(airOfDay(300, 282.15).temperature).toBeCloseTo(282.15, 9);
});

it('names the argument and its range when asked for the impossible', () => {
  expect(() => standardAtmosphere({ height: 50000 })).toThrow(/height must be between/);
  expect(() => standardAtmosphere({ height: 0, relativeHumidity: 3 })).toThrow(/relativeHumidity/);
});
