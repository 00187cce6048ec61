import { describe, expect, it } from 'vitest';
import { massProperties } from '../../src/airframe/massProperties.ts';
import type { Primitive } from '../../src/airframe/types.ts';
import { polygonMoments } from '../../src/numerics/polygon.ts';

/**
 * Mass moments of inertia of homogeneous solids as tabled in Beer and Johnston, Vector Mechanics for
 * Engineers (inside cover) and Roark's Formulas for Stress and Strain (plane areas, table A.1); formulas from memory.
 * Tolerance 1e-12 relative: both sides are closed forms.
 */
const inertiaOf = (primitive: Primitive) =>
  massProperties([{ name: 'a', part: 'a', primitive, place: [0.3, -0.2, 0.1], amount: { mass: 2 } }]);

describe('solid bodies', () => {
  it.each<[string, Primitive, readonly [number, number, number]]>([
    [
      'rectangular prism m(b2+c2)/12',
      { kind: 'box', length: 0.3, width: 0.2, height: 0.1 },
      [(2 * (0.04 + 0.01)) / 12, (2 * (0.09 + 0.01)) / 12, (2 * (0.09 + 0.04)) / 12],
    ],
    [
      'circular cylinder m r2/2, m(3r2+h2)/12',
      { kind: 'cylinder', diameter: 0.2, height: 0.3 },
      [(2 * (0.03 + 0.09)) / 12, (2 * (0.03 + 0.09)) / 12, 0.01],
    ],
    [
      'cylinder on its side',
      { kind: 'cylinder', diameter: 0.2, height: 0.3, axis: 'x' },
      [0.01, (2 * (0.03 + 0.09)) / 12, (2 * (0.03 + 0.09)) / 12],
    ],
    [
      'thick tube m(R2+r2)/2',
      { kind: 'tube', outerDiameter: 0.4, innerDiameter: 0.2, height: 0.3 },
      [(2 * (3 * 0.05 + 0.09)) / 12, (2 * (3 * 0.05 + 0.09)) / 12, 0.05],
    ],
    [
      'thin rectangular plate of thickness t',
      {
        kind: 'plate',
        outline: [
          [0, 0],
          [0.3, 0],
          [0.3, 0.2],
          [0, 0.2],
        ],
        thickness: 0.1,
      },
      [(2 * (0.04 + 0.01)) / 12, (2 * (0.09 + 0.01)) / 12, (2 * (0.09 + 0.04)) / 12],
    ],
  ])('%s', (_name, primitive, expected) => {
    const { inertia } = inertiaOf(primitive);
    for (const i of [0, 1, 2] as const) expect(inertia[i][i]).toBeCloseTo(expected[i], 14);
    expect(Math.abs(inertia[0][1]) + Math.abs(inertia[0][2]) + Math.abs(inertia[1][2])).toBeLessThan(1e-15);
  });

  it('isosceles trapezium: area h(a+b)/2, centroid h(2a+b)/(3(a+b)) from the side b (Roark A.1)', () => {
    const [a, b, h] = [0.012, 0.018, 0.16];
    const { area, centroid } = polygonMoments([
      [0, -b / 2],
      [h, -a / 2],
      [h, a / 2],
      [0, b / 2],
    ]);
    expect(area).toBeCloseTo((h * (a + b)) / 2, 15);
    expect(centroid[0]).toBeCloseTo((h * (2 * a + b)) / (3 * (a + b)), 14);
  });
});
