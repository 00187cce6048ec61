import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutMotors } from '../../src/airframe/layout.ts';
import { overlapShare, tipGaps } from '../../src/airframe/tipGaps.ts';
import type { LayoutParameters } from '../../src/airframe/types.ts';

const every: readonly LayoutParameters[] = [
  { kind: 'true X', diagonal: 0.22 },
  { kind: 'stretched X', width: 0.15, length: 0.18 },
  { kind: 'squashed X', width: 0.18, length: 0.15 },
  { kind: 'H', width: 0.17, length: 0.17 },
  { kind: 'dead cat', frontWidth: 0.2, rearWidth: 0.15, length: 0.14 },
  { kind: 'plus', diagonal: 0.22 },
  { kind: 'tri', frontWidth: 0.2, length: 0.18 },
  { kind: 'hexa X', diagonal: 0.3 },
  { kind: 'hexa plus', diagonal: 0.3 },
  { kind: 'octo', diagonal: 0.4 },
  { kind: 'octo plus', diagonal: 0.4 },
  { kind: 'X8 coaxial', width: 0.16, length: 0.16, discSpacing: 0.04 },
  { kind: 'Y6 coaxial', frontWidth: 0.2, length: 0.18, discSpacing: 0.04 },
];

describe('layouts', () => {
  it.each(every)('$kind is centred, named uniquely, and mirrored left to right', (parameters) => {
    const { motors } = layoutMotors(parameters);
    const sum = motors.reduce((s, m) => [s[0]! + m.position[0], s[1]! + m.position[1]], [0, 0]);
    expect(sum[0]).toBeCloseTo(0, 12);
    expect(sum[1]).toBeCloseTo(0, 12);
    expect(new Set(motors.map((m) => m.name)).size).toBe(motors.length);
    for (const m of motors) {
      const twin = motors.find(
        (o) =>
          Math.hypot(o.position[0] - m.position[0], o.position[1] + m.position[1]) < 1e-9 &&
          o.position[2] === m.position[2],
      );
      expect(twin).toBeDefined();
    }
    if (motors.length % 2 === 0) expect(motors.reduce((s, m) => s + m.spin, 0)).toBe(0);
  });

  it('puts true X arms at 90 degrees and its diagonal motor to motor', () => {
    const { motors, diagonal } = layoutMotors({ kind: 'true X', diagonal: 0.22 });
    expect(diagonal).toBeCloseTo(0.22, 12);
    const [a, b] = [motors[0]!.position, motors[1]!.position];
    expect(a[0] * b[0] + a[1] * b[1]).toBeCloseTo(0, 12);
  });

  it('turns front props inward by default and outward when asked', () => {
    const spinOf = (frontSpin: 'inward' | 'outward') =>
      layoutMotors({ kind: 'true X', diagonal: 0.2, frontSpin }).motors.find((m) => m.name === 'front left')
        ?.spin;
    expect(spinOf('inward')).toBe(1);
    expect(spinOf('outward')).toBe(-1);
  });

  it('refuses a stretched X that is not stretched, and a negative width', () => {
    expect(() => layoutMotors({ kind: 'stretched X', width: 0.2, length: 0.1 })).toThrow(/length/);
    expect(() => layoutMotors({ kind: 'H', width: -0.2, length: 0.1 })).toThrow(/width/);
  });
});

describe('tip gaps', () => {
  const quad = layoutMotors({ kind: 'true X', diagonal: 0.22 });

  it('gives side minus diameter between neighbours', () => {
    const gaps = tipGaps(quad, 0.127, []);
    expect(gaps).toHaveLength(6);
    expect(gaps[0]?.gap).toBeCloseTo(0.22 / Math.SQRT2 - 0.127, 12);
  });

  it('measures to a plate and inside a guard', () => {
    const plate = [
      [-0.05, -0.02],
      [0.05, -0.02],
      [0.05, 0.02],
      [-0.05, 0.02],
    ] as const;
    const gaps = tipGaps(quad, 0.1, [
      { name: 'top plate', part: 'frame', shape: 'outline', outline: plate },
      { name: 'guard', part: 'frame', shape: 'ring', motor: 'front left', innerRadius: 0.052 },
    ]);
    const side = 0.11 / Math.SQRT2;
    expect(gaps.find((g) => g.to === 'top plate')?.gap).toBeCloseTo(
      Math.hypot(side - 0.05, side - 0.02) - 0.05,
      12,
    );
    expect(gaps.find((g) => g.to === 'guard')?.gap).toBeCloseTo(0.002, 12);
  });

  it('overlaps wholly at no distance and not at two radii (lens of two circles, mensuration)', () => {
    expect(overlapShare(0)).toBeCloseTo(1, 12);
    expect(overlapShare(2)).toBe(0);
    // Unit circles one radius apart: lens 2 pi/3 - sqrt(3)/2.
    expect(overlapShare(1)).toBeCloseTo(2 / 3 - Math.sqrt(3) / 2 / Math.PI, 12);
  });

  it('shrinks by exactly the growth of the prop', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (d, grow) => {
          const [a, b] = [tipGaps(quad, d, [])[0]!.gap, tipGaps(quad, d + grow, [])[0]!.gap];
          expect(a - b).toBeCloseTo(grow, 10);
        },
      ),
    );
  });
});
