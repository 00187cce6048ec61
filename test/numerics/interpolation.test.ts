import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubicWeights, weighted } from '../../src/numerics/cubicWeights.ts';
import { interpolateLinear } from '../../src/numerics/interpolate.ts';

describe('interpolateLinear', () => {
  it('meets its knots, runs straight between and stays level beyond', () => {
    const xs = [0, 1, 4];
    const ys = [2, 4, -2];
    expect(interpolateLinear(1, xs, ys)).toBe(4);
    expect(interpolateLinear(2.5, xs, ys)).toBe(1);
    expect(interpolateLinear(-3, xs, ys)).toBe(2);
    expect(interpolateLinear(9, xs, ys)).toBe(-2);
  });
});

describe('cubicWeights', () => {
  const columns = 7;
  const rows = 6;
  const read = (table: Float64Array, x: number, y: number, byX = false, byY = false) => {
    const weights = new Float64Array(16);
    const column = cubicWeights(x, columns, weights, 0);
    const first = cubicWeights(y, rows, weights, 8) * columns + column;
    return weighted(table, first, columns, weights, byX ? 4 : 0, byY ? 12 : 8);
  };

  it('reproduces planes everywhere and parabolas inside, with their slopes', () => {
    const f = (x: number, y: number) => 1 + 2 * x - 3 * y;
    const g = (x: number, y: number) => 1 + x * x + x * y - 0.5 * y * y;
    const table = (h: typeof f) =>
      Float64Array.from({ length: rows * columns }, (_, i) => h(i % columns, Math.floor(i / columns)));
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: columns - 1, noNaN: true }),
        fc.double({ min: 0, max: rows - 1, noNaN: true }),
        (x, y) => {
          expect(read(table(f), x, y)).toBeCloseTo(f(x, y), 10);
          expect(read(table(f), x, y, true)).toBeCloseTo(2, 10);
          expect(read(table(f), x, y, false, true)).toBeCloseTo(-3, 10);
          if (x < 1 || y < 1 || x > columns - 2 || y > rows - 2) return;
          expect(read(table(g), x, y)).toBeCloseTo(g(x, y), 10);
          expect(read(table(g), x, y, true)).toBeCloseTo(2 * x + y, 10);
          expect(read(table(g), x, y, false, true)).toBeCloseTo(x - y, 10);
        },
      ),
    );
  });
});
