import fc from 'fast-check';
import type { Vector3 } from '../../src/numerics/vector3.ts';
import type { Camera, LensLaw, Occluder } from '../../src/view/types.ts';

// Even steps: fast-check's doubles crowd at 1e-300, where the eye sits exactly on a surface and
// 'inside' has no answer.
const real = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((i) => min + ((i + 0.37) / (1e6 + 1)) * (max - min));
const place = fc.tuple(real(-0.2, 0.2), real(-0.2, 0.2), real(-0.1, 0.1)) as fc.Arbitrary<Vector3>;
const direction = fc
  .tuple(real(-1, 1), real(-1, 1), real(-1, 1))
  .filter((v) => Math.hypot(...v) > 0.2) as fc.Arbitrary<Vector3>;
const angle = real(-3, 3);
/** Any part, near or far, of any shape. */
export const anyOccluder: fc.Arbitrary<Occluder> = fc.oneof(
  fc.record({
    kind: fc.constant('sweptDisc' as const),
    id: fc.constant('disc'),
    centre: place,
    axis: direction,
    radius: real(0.02, 0.1),
    hubRadius: real(0, 0.01),
    thickness: fc.oneof(fc.constant(0), real(0.001, 0.01)),
    blades: fc.integer({ min: 2, max: 5 }),
    chord: real(0.005, 0.02),
    angularSpeed: real(0, 4000),
  }),
  fc
    .record({
      kind: fc.constant('bar' as const),
      id: fc.constant('bar'),
      from: place,
      to: place,
      widthFrom: real(0.005, 0.03),
      widthTo: real(0.005, 0.03),
      thickness: real(0.002, 0.008),
      normal: direction,
    })
    .filter((bar) => {
      const d = bar.to.map((v, k) => v - bar.from[k]!);
      const n = bar.normal;
      const cross = [d[1]! * n[2] - d[2]! * n[1], d[2]! * n[0] - d[0]! * n[2], d[0]! * n[1] - d[1]! * n[0]];
      return Math.hypot(...cross) > 0.02 && Math.hypot(...d) > 0.03;
    }),
  fc.record({
    kind: fc.constant('box' as const),
    id: fc.constant('box'),
    centre: place,
    size: fc.tuple(real(0.005, 0.1), real(0.005, 0.1), real(0.005, 0.1)) as fc.Arbitrary<Vector3>,
    turned: fc.record({ pitch: angle, roll: angle, yaw: angle }),
  }),
  fc
    .record({
      centre: fc.tuple(real(-0.1, 0.1), real(-0.1, 0.1)),
      radii: fc.array(real(0.01, 0.09), { minLength: 3, maxLength: 12 }),
      z: real(-0.05, 0.05),
      thickness: real(0.001, 0.004),
    })
    .map(({ centre, radii, z, thickness }) => ({
      kind: 'plate' as const,
      id: 'plate',
      // A star about its centre: simple, and mostly not convex.
      outline: radii.map((r, i) => {
        const turn = (2 * Math.PI * i) / radii.length;
        return [centre[0] + r * Math.cos(turn), centre[1] + r * Math.sin(turn)] as const;
      }),
      z,
      thickness,
    })),
  fc
    .record({
      kind: fc.constant('ring' as const),
      id: fc.constant('ring'),
      centre: place,
      axis: direction,
      innerRadius: real(0.02, 0.07),
      wall: real(0.001, 0.01),
      height: real(0.003, 0.03),
    })
    .map(({ wall, ...ring }) => ({ ...ring, outerRadius: ring.innerRadius + wall })),
  fc
    .record({
      kind: fc.constant('rod' as const),
      id: fc.constant('rod'),
      from: place,
      to: place,
      radius: real(0.001, 0.015),
    })
    .filter((rod) => Math.hypot(...rod.to.map((v, k) => v - rod.from[k]!)) > 0.005),
  fc.record({
    kind: fc.constant('ball' as const),
    id: fc.constant('ball'),
    centre: place,
    radius: real(0.005, 0.05),
  }),
);
const law = fc.constantFrom<LensLaw>('rectilinear', 'equidistant', 'equisolid');
/** A camera of any lens, looking any way. */
export const anyCamera = fc
  .record({
    position: place.map(([x, y, z]): Vector3 => [x + 0.0013, y - 0.0017, z + 0.0011]),
    pitch: real(-1.5, 1.5),
    roll: angle,
    yaw: angle,
    lensLaw: law,
    degrees: real(40, 130),
    wider: fc.boolean(),
  })
  .map(({ degrees, wider, ...rest }): Camera => {
    const fisheye = rest.lensLaw !== 'rectilinear' && wider;
    const angle = ((fisheye ? degrees * 2 : degrees) * Math.PI) / 180;
    return { ...rest, field: { across: 'diagonal', angle }, width: 640, height: 480, exposure: 0.002 };
  });
