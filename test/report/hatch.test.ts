import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hatch } from '../../src/report/hatch.ts';

const square = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
];

describe('hatch', () => {
  it('rules a square with lines whose total length is its area over the spacing', () => {
    // Area = integral of chord length over the spacing direction; a fine ruling sums to it.
    for (const lean of ['rising', 'falling'] as const) {
      const total = hatch(square, 0.01, lean).reduce(
        (sum, [a, b]) => sum + Math.hypot(a.x - b.x, a.y - b.y),
        0,
      );
      expect(total * 0.01).toBeCloseTo(100, 1);
    }
  });

  it('leans as told and stays inside', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 4, noNaN: true }), (spacing) => {
        for (const [a, b] of hatch(square, spacing, 'rising')) {
          expect(b.x - a.x).toBeCloseTo(-(b.y - a.y), 9);
          for (const p of [a, b]) {
            expect(Math.min(p.x, p.y)).toBeGreaterThan(-1e-9);
            expect(Math.max(p.x, p.y)).toBeLessThan(10 + 1e-9);
          }
        }
      }),
    );
  });

  it('leaves a dent free', () => {
    const dented = [...square.slice(0, 3), { x: 5, y: 5 }, ...square.slice(3)];
    const total = hatch(dented, 0.01, 'falling').reduce(
      (sum, [a, b]) => sum + Math.hypot(a.x - b.x, a.y - b.y),
      0,
    );
    expect(total * 0.01).toBeCloseTo(75, 1);
  });

  it('refuses a spacing that would never end', () => {
    expect(() => hatch(square, 0, 'rising')).toThrow(RangeError);
  });
});
