import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matrixExponential, product } from '../../src/numerics/matrixExponential.ts';

describe('exponential of a matrix', () => {
  it('turns by an angle where the matrix is a quarter turn', () => {
    const turned = matrixExponential(Float64Array.of(0, -2, 2, 0), 2);
    [Math.cos(2), -Math.sin(2), Math.sin(2), Math.cos(2)].forEach((value, at) => {
      expect(turned[at]).toBeCloseTo(value, 13);
    });
  });

  // Nilpotent: the series ends, 1 + A + A^2/2.
  it('ends where the powers end', () => {
    const found = matrixExponential(Float64Array.of(0, 3, 0, 0, 0, 5, 0, 0, 0), 3);
    [1, 3, 7.5, 0, 1, 5, 0, 0, 1].forEach((value, at) => {
      expect(found[at]).toBeCloseTo(value, 12);
    });
  });

  // Moler and Van Loan, Nineteen dubious ways to compute the exponential of a matrix, SIAM Review 1978 and 2003, their example
  // where the plain series fails (from memory; checked by hand: eigenvalues -1 and -17, exp(A) = (18 e^-17 - 2 e^-1, ...)/16 by
  // Sylvester's formula exp(A) = [e^-1 (A + 17) - e^-17 (A + 1)]/16).
  it('keeps its digits where the series loses them', () => {
    const a = Float64Array.of(-49, 24, -64, 31);
    const [slow, fast] = [Math.exp(-1) / 16, Math.exp(-17) / 16];
    const by = (value: number, one: number) => slow * (value + 17 * one) - fast * (value + one);
    const found = matrixExponential(a, 2);
    [by(-49, 1), by(24, 0), by(-64, 0), by(31, 1)].forEach((value, at) => {
      expect(found[at]! / value).toBeCloseTo(1, 11);
    });
  });

  it('is undone by that of the other sign', () => {
    const entry = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.array(entry, { minLength: 9, maxLength: 9 }), (entries) => {
        const a = Float64Array.from(entries);
        const there = matrixExponential(a, 3);
        const back = matrixExponential(
          a.map((value) => -value),
          3,
        );
        const size = Math.max(...there.map(Math.abs)) * Math.max(...back.map(Math.abs));
        product(there, back, 3).forEach((value, at) => {
          expect(Math.abs(value - (at % 4 === 0 ? 1 : 0))).toBeLessThan(1e-13 * size + 1e-12);
        });
      }),
    );
  });

  it('refuses what is not finite', () => {
    expect(() => matrixExponential(Float64Array.of(Number.NaN), 1)).toThrow('must be finite');
  });
});
