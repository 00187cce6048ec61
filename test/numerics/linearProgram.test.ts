import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearProgram } from '../../src/numerics/linearProgram.ts';
import { secantRoot } from '../../src/numerics/secantRoot.ts';

describe('linear program', () => {
  // Hillier and Lieberman, Wyndor example (from memory): max 3 x + 5 y, x <= 4, 2 y <= 12, 3 x + 2 y <= 18: 36 at (2, 6).
  it('solves a textbook example', () => {
    const found = linearProgram({
      objective: [3, 5, 0],
      rows: [[3, 2, 1]],
      right: [18],
      upper: [4, 6, Number.POSITIVE_INFINITY],
    });
    expect(found.ok && [...found.value].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([2, 6, 0]);
  });

  it('is never beaten by a random feasible point, and is feasible', () => {
    // Of size about 1, as the caller promises.
    const cell = fc.integer({ min: -2000, max: 2000 }).map((k) => k / 1000);
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 6, maxLength: 6 }), { minLength: 1, maxLength: 4 }),
        fc.array(cell, { minLength: 6, maxLength: 6 }),
        fc.array(unit, { minLength: 6, maxLength: 6 }),
        (rows, objective, inside) => {
          const right = rows.map((row) => row.reduce((s, a, i) => s + a * inside[i]!, 0));
          const found = linearProgram({ objective, rows, right, upper: [1, 1, 1, 1, 1, 1] });
          expect(found.ok).toBe(true);
          if (!found.ok) return;
          const value = (x: ArrayLike<number>) => objective.reduce((s, c, i) => s + c * x[i]!, 0);
          expect(value(found.value)).toBeGreaterThanOrEqual(value(inside) - 1e-7);
          rows.forEach((row, r) => {
            expect(row.reduce((s, a, i) => s + a * found.value[i]!, 0)).toBeCloseTo(right[r]!, 6);
          });
          for (const x of found.value) {
            expect(x).toBeGreaterThan(-1e-7);
            expect(x).toBeLessThan(1 + 1e-7);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('tells no solution and no bound apart', () => {
    const none = linearProgram({ objective: [1], rows: [[1]], right: [5], upper: [1] });
    expect(none.ok ? '' : none.reason).toMatch(/no solution inside/);
    const free = linearProgram({
      objective: [1, 1],
      rows: [[1, -1]],
      right: [0],
      upper: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
    });
    expect(free.ok ? '' : free.reason).toMatch(/no bound/);
  });
});

describe('guarded secant', () => {
  it('finds roots of powers, kinks and steps from any guess', () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(unit, unit, fc.integer({ min: 1, max: 9 }), (root, guess, power) => {
        expect(secantRoot((x) => x - root + (x > root ? 3 * (x - root) : 0), 0, 1, guess)).toBeCloseTo(
          root,
          9,
        );
        expect(secantRoot((x) => x ** power - root ** power, 0, 1, guess) ** power).toBeCloseTo(
          root ** power,
          9,
        );
        expect(secantRoot((x) => (x < root ? -1 : 1), 0, 1, guess)).toBeCloseTo(root, 9);
      }),
    );
  });
});
