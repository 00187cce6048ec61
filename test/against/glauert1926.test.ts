import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { glauertInducedSpeed } from '../../src/flight/forward/glauert.ts';
import { COAXIAL_WAKE, inducedSpeed } from '../../src/flight/wake.ts';

/**
 * H. Glauert, 'A general theory of the autogyro', ARC R&M 1111, 1926: v sqrt(Vx2 + (Vz + v)2) = vh2.
 * Edgewise (Vz = 0) it is a quadratic in v2: v2 = (sqrt(V4 + 4) - V2)/2 in units of vh. Values from the project's
 * check list, climb from axial momentum theory, v = sqrt(V2/4 + 1) - V/2. Tolerance: printed digits.
 */
describe('Glauert 1926 induced speed', () => {
  it.each([
    [1, 0.786151],
    [2, 0.485868],
    [3, 0.331319],
  ])('edgewise at %i vh is %f vh', (speed, expected) => {
    expect(glauertInducedSpeed(1, speed, 0)).toBeCloseTo(expected, 6);
  });

  it.each([
    [0, 1],
    [1, 0.618034],
    [2, 0.414214],
  ])('climbing at %i vh is %f vh', (speed, expected) => {
    expect(glauertInducedSpeed(1, 0, speed)).toBeCloseTo(expected, 6);
    expect(inducedSpeed(2, speed, 1, 1)).toBeCloseTo(expected, 6);
  });

  it('satisfies the momentum balance everywhere, and tends to vh2/V', () => {
    const to = (max: number) => fc.double({ min: 0, max, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 30, noNaN: true }), to(100), to(100), (vh, x, z) => {
        const v = glauertInducedSpeed(vh, x, z);
        expect(Math.abs((v * Math.hypot(x, z + v)) / vh ** 2 - 1)).toBeLessThan(1e-9);
      }),
    );
    expect(glauertInducedSpeed(1, 1000, 0) * 1000).toBeCloseTo(1, 5);
  });
});

/**
 * Actuator disc in hover, 5 in, 5 N, 1.225 kg/m3: 12.6927 m/s, 63.463 W (project's check list); coaxial pair of equal thrusts,
 * the lower rotor in the contracted wake: power factor (1 + sqrt 17)/4 = 1.280776 (Leishman and Syal 2008).
 */
describe('actuator disc', () => {
  const disc = (Math.PI / 4) * 0.127 ** 2;
  it('hovers', () => {
    expect(inducedSpeed(5, 0, 1.225, disc)).toBeCloseTo(12.6927, 3);
    expect(5 * inducedSpeed(5, 0, 1.225, disc)).toBeCloseTo(63.463, 2);
  });
  it('pays the coaxial price', () => {
    const v = inducedSpeed(5, 0, 1.225, disc);
    const climb = COAXIAL_WAKE * v;
    const lower = 5 * (climb + inducedSpeed(5, climb, 1.225, disc));
    expect((5 * v + lower) / (2 * 5 * v)).toBeCloseTo(1.280776, 6);
  });
});
