import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addBanded, banded, factorBanded, multiplyBanded, solveBanded } from '../../src/numerics/banded.ts';
import { denseSolve } from '../../src/numerics/denseSolve.ts';
import { lowestModes } from '../../src/numerics/lowestModes.ts';
import { generalisedEigen } from '../../src/numerics/symmetricEigen.ts';

/** A positive definite band matrix from drawn entries: dominated by its diagonal. */
const spd = (size: number, width: number, draw: readonly number[]) => {
  const matrix = banded(size, width);
  let at = 0;
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - width); j < i; j++) addBanded(matrix, i, j, draw[at++ % draw.length]!);
    addBanded(matrix, i, i, 2 * width + 2 + Math.abs(draw[at++ % draw.length]!));
  }
  return matrix;
};
const dense = (m: ReturnType<typeof banded>): Float64Array => {
  const out = new Float64Array(m.size * m.size);
  const unit = new Float64Array(m.size);
  const column = new Float64Array(m.size);
  for (let j = 0; j < m.size; j++) {
    unit.fill(0);
    unit[j] = 1;
    multiplyBanded(m, unit, column);
    for (let i = 0; i < m.size; i++) out[i * m.size + j] = column[i]!;
  }
  return out;
};
const entries = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 });

describe('banded and dense solvers', () => {
  it('solve what they multiply', () => {
    fc.assert(
      fc.property(entries, (draw) => {
        const a = spd(17, 4, draw);
        const x = Float64Array.from({ length: 17 }, (_, i) => Math.sin(i + 1));
        const b = new Float64Array(17);
        multiplyBanded(a, x, b);
        const bySolve = denseSolve(dense(a), b, 17)!;
        solveBanded(factorBanded(a)!, b);
        for (let i = 0; i < 17; i++) {
          expect(b[i]).toBeCloseTo(x[i]!, 10);
          expect(bySolve[i]).toBeCloseTo(x[i]!, 10);
        }
      }),
    );
  });

  it('say so when a matrix is singular', () => {
    expect(denseSolve(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1), 2)).toBeUndefined();
    const loose = banded(2, 1);
    addBanded(loose, 0, 0, 1);
    addBanded(loose, 1, 0, -1);
    addBanded(loose, 1, 1, 1);
    expect(factorBanded(loose)).toBeUndefined();
  });
});

describe('eigensolvers', () => {
  it('leave no residual, and agree with each other', () => {
    fc.assert(
      fc.property(entries, entries, (first, second) => {
        const [k, m] = [spd(24, 3, first), spd(24, 3, second)];
        const all = generalisedEigen(dense(k), dense(m), 24);
        const few = lowestModes(k, m, 4);
        if (!all.ok || !few.ok) throw new Error('no solution');
        const [left, right] = [new Float64Array(24), new Float64Array(24)];
        for (let p = 0; p < 4; p++) {
          const value = few.value.values[p]!;
          // Subspace iteration stops when values move less than 1e-10 a step: some 1e-8 when they crowd.
          expect(value / all.value.values[p]!).toBeCloseTo(1, 6);
          const x = all.value.vectors.subarray(p * 24, (p + 1) * 24);
          multiplyBanded(k, x, left);
          multiplyBanded(m, x, right);
          let norm = 0;
          for (let i = 0; i < 24; i++) {
            expect(left[i]! - all.value.values[p]! * right[i]!).toBeCloseTo(0, 9);
            norm += x[i]! * right[i]!;
          }
          expect(norm).toBeCloseTo(1, 10);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('a chain of equal springs: omega2 = 4 sin2(k pi/2(n+1)) (Blevins 1979, table 6-1; from memory)', () => {
    const [k, m] = [banded(9, 1), banded(9, 1)];
    for (let i = 0; i < 9; i++) {
      addBanded(k, i, i, 2);
      addBanded(m, i, i, 1);
      if (i > 0) addBanded(k, i, i - 1, -1);
    }
    const modes = lowestModes(k, m, 5);
    if (!modes.ok) throw new Error(modes.reason);
    for (const [i, value] of modes.value.values.entries()) {
      expect(value).toBeCloseTo(4 * Math.sin(((i + 1) * Math.PI) / 20) ** 2, 9);
    }
  });
});
