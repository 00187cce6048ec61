import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grounds, windAtHeight, windByPowerLaw } from '../../src/air/windProfile.ts';

describe('wind with height', () => {
  it('is the measured wind at the measuring height, and grows with height', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 25, noNaN: true }),
        fc.constantFrom(...grounds),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (speed, { roughnessLength }, height) => {
          const wind = { speed, height: 10, roughnessLength };
          expect(windAtHeight(wind, 10)).toBeCloseTo(speed, 10);
          expect(windAtHeight(wind, height * 1.3)).toBeGreaterThanOrEqual(windAtHeight(wind, height));
        },
      ),
    );
  });

  it('agrees with the logarithmic law worked by hand', () => {
    // Short grass, z0 = 0.03 m: ln(2/0.03)/ln(10/0.03) = 4.199705/5.809143 = 0.722947.
    const wind = { speed: 10, height: 10, roughnessLength: 0.03 };
    expect(windAtHeight(wind, 2)).toBeCloseTo(7.22947, 5);
  });

  it('agrees with MIL-F-8785C 3.7.3.4, u/u20 = ln(h/z0)/ln(20/z0), h and z0 in ft', () => {
    // z0 = 0.15 ft: ln(100/0.15)/ln(20/0.15) = 6.502290/4.892852 = 1.328937.
    const wind = { speed: 1, height: 20 * 0.3048, roughnessLength: 0.15 * 0.3048 };
    expect(windAtHeight(wind, 100 * 0.3048)).toBeCloseTo(1.328937, 5);
  });

  it('keeps the wind aloft over rough ground, where the station stands below 20 z0', () => {
    // The floor at 20 z0 once lifted the 10 m of the station too: 12.3 m/s at 100 m over a suburb. By hand 8 ln 100 / ln 10.
    expect(windAtHeight({ speed: 8, height: 10, roughnessLength: 1 }, 100)).toBeCloseTo(16, 10);
    expect(windAtHeight({ speed: 8, height: 10, roughnessLength: 2 }, 30)).toBeCloseTo(13.461, 3);
    // Between the houses: the wind of the station, on the safe side.
    expect(windAtHeight({ speed: 8, height: 10, roughnessLength: 1 }, 5)).toBeCloseTo(8, 10);
  });

  it('stays finite down at the ground', () => {
    const wind = { speed: 10, height: 10, roughnessLength: 0.03 };
    expect(windAtHeight(wind, 0.01)).toBe(windAtHeight(wind, 0.6));
  });

  it('follows the power law', () => {
    // (2/10)^(1/7) = 0.794597
    expect(windByPowerLaw(10, 10, 2, 1 / 7)).toBeCloseTo(7.94597, 4);
    expect(windByPowerLaw(10, 10, 2, 0)).toBe(10);
  });

  it('names the argument that is out of range', () => {
    const wind = { speed: 10, height: 10, roughnessLength: 0.03 };
    expect(() => windAtHeight({ ...wind, speed: -1 }, 2)).toThrow(/speed/);
    expect(() => windAtHeight({ ...wind, roughnessLength: 3 }, 2)).toThrow(/roughnessLength/);
    expect(() => windAtHeight(wind, 0)).toThrow(/height/);
    expect(() => windAtHeight({ ...wind, height: 1, roughnessLength: 1 }, 2)).toThrow(/wind.height/);
    expect(() => windByPowerLaw(10, 10, 2, 0.9)).toThrow(/exponent/);
  });
});
