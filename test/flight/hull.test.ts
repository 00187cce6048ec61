import { describe, expect, it } from 'vitest';
import { distanceOutside } from '../../src/flight/hull.ts';

const square = [
  [1, 1],
  [1, -1],
  [-1, -1],
  [-1, 1],
] as const;

describe('distance outside a hull', () => {
  // Plane geometry by hand: nearest edge, nearest corner, inside, on a line of two motors.
  it.each([
    [[0, 0], 0],
    [[1, 0], 0],
    [[3, 0.5], 2],
    [[2, 2], Math.SQRT2],
    [[-1, -4], 3],
  ] as const)('from %j is %f', (point, expected) => {
    expect(distanceOutside(square, point)).toBeCloseTo(expected, 12);
  });

  it('measures from two points as from their segment', () => {
    const segment = [
      [0, -1],
      [0, 1],
    ] as const;
    expect(distanceOutside(segment, [0.3, 0])).toBeCloseTo(0.3, 12);
    expect(distanceOutside(segment, [0, 3])).toBeCloseTo(2, 12);
    expect(distanceOutside(segment, [0, 0.5])).toBe(0);
  });
});
