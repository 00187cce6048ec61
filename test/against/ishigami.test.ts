import { describe, expect, it } from 'vitest';
import { latinHypercube } from '../../src/choose/latinHypercube.ts';
import { normalQuantile } from '../../src/choose/normalQuantile.ts';
import { sobolIndices } from '../../src/choose/sobolIndices.ts';

/*
 * Ishigami and Homma 1990 ('An importance quantification technique in uncertainty analysis for computer
 * models', ISUMA): f = sin x1 + a sin2 x2 + b x3^4 sin x1, x uniform on (-pi, pi), a = 7, b = 0.1.
 * Closed form: V1 = (1 + b pi^4/5)^2/2, V2 = a^2/8, V3 = 0, V13 = b^2 pi^8 (1/18 - 1/50); so S 0.313905,
 * 0.442411, 0 and S_T 0.557589, 0.442411, 0.243684 (also in Saltelli et al. 2008). Tolerance four standard
 * errors of a sample of 8192, about 0.03.
 */
const ishigami = (point: Float64Array) => {
  const [x1, x2, x3] = Array.from(point, (u) => (2 * u - 1) * Math.PI) as [number, number, number];
  return Math.sin(x1) + 7 * Math.sin(x2) ** 2 + 0.1 * x3 ** 4 * Math.sin(x1);
};

describe('Ishigami function', () => {
  it('the variance is the published one', () => {
    const sample = latinHypercube(20000, 3, 5);
    const values = Array.from({ length: 20000 }, (_, row) => ishigami(sample.subarray(3 * row, 3 * row + 3)));
    const mean = values.reduce((a, b) => a + b) / values.length;
    const variance = values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / values.length;
    expect(mean).toBeCloseTo(3.5, 1);
    expect(Math.abs(variance / 13.844588 - 1)).toBeLessThan(0.03);
  });

  it.each([1, 2, 3])('first-order and total indices, seed %i', (seed) => {
    const found = sobolIndices(ishigami, [[0], [1], [2]], 8192, seed);
    const first = [0.313905, 0.442411, 0];
    const total = [0.557589, 0.442411, 0.243684];
    for (const [i, index] of found.entries()) {
      expect(Math.abs(index.first - first[i]!)).toBeLessThan(0.04);
      expect(Math.abs(index.total - total[i]!)).toBeLessThan(0.03);
      expect(index.totalError).toBeLessThan(0.02);
    }
  });

  it('grouped columns carry what they do together: x1 with x3 is all but x2', () => {
    const [together, alone] = sobolIndices(ishigami, [[0, 2], [1]], 8192, 4);
    expect(Math.abs(together!.first - (1 - 0.442411))).toBeLessThan(0.04);
    expect(Math.abs(together!.total - (1 - 0.442411))).toBeLessThan(0.03);
    expect(Math.abs(alone!.total - 0.442411)).toBeLessThan(0.03);
  });

  it('the same seed gives the same numbers', () => {
    const run = () => sobolIndices(ishigami, [[0], [1], [2]], 64, 9);
    expect(run()).toEqual(run());
  });
});

it('a Latin hypercube has one number in every slice of every column', () => {
  const sample = latinHypercube(50, 4, 7);
  for (let column = 0; column < 4; column++) {
    const slices = Array.from({ length: 50 }, (_, row) => Math.floor(50 * sample[4 * row + column]!));
    expect(slices.sort((a, b) => a - b)).toEqual(Array.from({ length: 50 }, (_, i) => i));
  }
});

// Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.5 (from memory): 0.90 1.28155 15655 44600,
// 0.975 1.95996 39845 40054, 0.999 3.09023 23061 67814.
it.each([
  [0.9, 1.2815515655446],
  [0.975, 1.95996398454005],
  [0.999, 3.09023230616781],
  [0.001, -3.09023230616781],
  [0.5, 0],
])('normal quantile of %f', (p, x) => {
  expect(Math.abs(normalQuantile(p) - x)).toBeLessThan(1e-8);
});
