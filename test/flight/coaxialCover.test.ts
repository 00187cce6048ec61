import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coaxialCover } from '../../src/flight/wake.ts';

/** By counting: share of an evenly spread wake circle that lies on the lower disc. */
function counted(apart: number, size: number): number {
  let [inside, all] = [0, 0];
  const steps = 400;
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < steps; k++) {
      const [x, y] = [(2 * (i + 0.5)) / steps - 1, (2 * (k + 0.5)) / steps - 1].map(
        (at) => at * Math.SQRT1_2,
      );
      if (Math.hypot(x!, y!) > Math.SQRT1_2) continue;
      all++;
      if (Math.hypot(x! + apart, y!) <= size) inside++;
    }
  }
  return inside / all;
}

describe('how much of the upper wake lands on the lower disc of a coaxial pair', () => {
  it('is all of it in hover, and none once it is swept beside the disc', () => {
    expect(coaxialCover(0.86, 1, 6, 0, 0)).toBe(1);
    expect(coaxialCover(0.86, 1, 6, 3, 0)).toBe(1);
    expect(coaxialCover(0.86, 1, 2.3, 4.6, 40)).toBe(0);
  });

  it('is the area that two circles share', () => {
    // Swept by 0.86 x 15 / (4.6 + 1.371 x 2.3), 1.371 = 1 + (sqrt(1 + 0.86^2) - 1) / 0.86: by hand.
    const apart = (0.86 * 15) / (4.6 + 1.371 * 2.3);
    expect(apart).toBeGreaterThan(1.6);
    expect(coaxialCover(0.86, 1, 2.3, 4.6, 15)).toBeCloseTo(counted(apart, 1), 2);
    expect(coaxialCover(0.5, 1, 6, 0, 8)).toBeCloseTo(counted((0.5 * 8) / (6 * 1.236), 1), 2);
    expect(coaxialCover(0.5, 0.8, 6, 0, 12)).toBeCloseTo(
      counted((0.5 * 12) / (6 * 1.236), 0.8) / counted(0, 0.8),
      2,
    );
  });

  it('falls with speed along the discs and with the gap between them, never below none', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        fc.double({ min: 0.5, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (drop, size, induced, climb, speed) => {
          const at = (more: number, deeper: number) =>
            coaxialCover(drop * deeper, size, induced, climb, speed * more);
          expect(at(1, 1)).toBeGreaterThanOrEqual(0);
          expect(at(1, 1)).toBeLessThanOrEqual(1 + 1e-12);
          expect(at(1.1, 1)).toBeLessThanOrEqual(at(1, 1) + 1e-9);
          expect(at(1, 1.1)).toBeLessThanOrEqual(at(1, 1) + 1e-9);
        },
      ),
    );
  });
});
