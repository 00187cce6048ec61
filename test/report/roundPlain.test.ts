import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootTransport } from '../../src/airframe/frameModel.ts';
import { cross3, dot3, type Vector3 } from '../../src/numerics/vector3.ts';
import { seenFromAbove, seenFromRight } from '../../src/report/path.ts';
import { armLoads, stressAt, stressBands } from '../../src/report/solids/armStresses.ts';
import { cornersOf, fitted, sheetAxes, sighted, VIEWS } from '../../src/report/solids/axonometric.ts';
import { type ModeMotion, swingField } from '../../src/report/solids/modeSwing.ts';
import type { ArmAxis } from '../../src/report/solids/solidsOf.ts';

const place = fc.tuple(
  ...([0, 1, 2] as const).map(() => fc.double({ min: -0.3, max: 0.3, noNaN: true })),
) as unknown as fc.Arbitrary<Vector3>;
const bounds = { low: [-0.1, -0.15, -0.04] as Vector3, high: [0.12, 0.15, 0.02] as Vector3 };
const window = { width: 800, height: 500, room: 40 };

describe('the sheet in the round', () => {
  it('has the plan and the side view where the flat drawings have them', () => {
    fc.assert(
      fc.property(place, ([x, y, z]) => {
        for (const [view, flat] of [
          ['plan', seenFromAbove({ x, y })],
          ['side', seenFromRight({ x, z })],
        ] as const) {
          const sighting = {
            ...fitted(cornersOf(bounds), VIEWS[view], window),
            pen: 0.001,
            centre: [0, 0, 0] as Vector3,
          };
          const at = sighted(sighting)([x, y, z]);
          expect(at.x - 400).toBeCloseTo(flat.x, 6);
          expect(at.y - 250).toBeCloseTo(flat.y, 6);
        }
      }),
    );
  });

  it('keeps its axes square, right-handed, from wherever it is seen', () => {
    const angle = fc.double({ min: -7, max: 7, noNaN: true });
    fc.assert(
      fc.property(
        angle,
        fc.double({ min: -Math.PI / 2, max: Math.PI / 2, noNaN: true }),
        (azimuth, elevation) => {
          const { right, up, out } = sheetAxes({ azimuth, elevation });
          for (const [a, b] of [
            [right, up],
            [up, out],
            [out, right],
          ] as const)
            expect(dot3(a, b)).toBeCloseTo(0, 9);
          expect(dot3(cross3(right, up), out)).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('fits the whole into the window', () => {
    for (const look of Object.values(VIEWS)) {
      const see = sighted(fitted(cornersOf(bounds), look, window));
      for (const corner of cornersOf(bounds)) {
        const { x, y } = see(corner);
        expect(x).toBeGreaterThan(39);
        expect(x).toBeLessThan(761);
        expect(y).toBeGreaterThan(39);
        expect(y).toBeLessThan(461);
      }
    }
  });
});

const arm: ArmAxis = { name: 'front right arm', root: [0.03, 0.02, 0.001], yaw: 0.7, length: 0.1 };
const six = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 });

describe('a mode drawn', () => {
  it('joins hub, arm and motor without a step', () => {
    fc.assert(
      fc.property(six, six, (hub, tip) => {
        const motion: ModeMotion = { hub, tips: [{ arm: arm.name, motion: tip }] };
        const on = (rides: 'hub' | 'arm' | 'tip') =>
          swingField(rides === 'hub' ? { on: 'hub' } : { on: rides, arm: arm.name }, [arm], motion);
        const along = (x: number, y: number, z: number): Vector3 => [
          arm.root[0] + x * Math.cos(arm.yaw) - y * Math.sin(arm.yaw),
          arm.root[1] + x * Math.sin(arm.yaw) + y * Math.cos(arm.yaw),
          arm.root[2] + z,
        ];
        for (const [y, z] of [
          [0, 0],
          [0.006, 0.002],
        ] as const) {
          const [root, end] = [along(1e-9, y, z), along(arm.length - 1e-9, y, z)];
          for (const axis of [0, 1, 2] as const) {
            expect(on('arm')(root)[axis]).toBeCloseTo(on('hub')(root)[axis], 6);
            expect(on('arm')(end)[axis]).toBeCloseTo(on('tip')(end)[axis], 6);
          }
        }
      }),
    );
  });

  it('bends a light arm pushed at its end as the cantilever does', () => {
    // w(x) / w(L) = (3 x2 L - x3) / (2 L3), end slope 3 w / 2 L: Gere and Goodno, Mechanics of Materials, table H-1.
    const [w, L] = [0.004, arm.length];
    const motion = {
      hub: [0, 0, 0, 0, 0, 0],
      tips: [{ arm: arm.name, motion: [0, 0, w, 0, (-1.5 * w) / L, 0] }],
    };
    const field = swingField({ on: 'arm', arm: arm.name }, [arm], motion);
    for (const x of [0.02, 0.05, 0.08]) {
      const at: Vector3 = [
        arm.root[0] + x * Math.cos(arm.yaw),
        arm.root[1] + x * Math.sin(arm.yaw),
        arm.root[2],
      ];
      expect(field(at)[2]).toBeCloseTo((w * (3 * x * x * L - x ** 3)) / (2 * L ** 3), 9);
    }
  });

  it('carries an arm that does not bend with a turning hub', () => {
    const hub = [0.1, 0.2, -0.1, 0.3, -0.2, 0.4];
    const tipAt: Vector3 = [
      arm.root[0] + arm.length * Math.cos(arm.yaw),
      arm.root[1] + arm.length * Math.sin(arm.yaw),
      arm.root[2],
    ];
    const carry = rootTransport(tipAt, arm.yaw);
    const motion = hub.map((_, i) => hub.reduce((sum, value, j) => sum + carry[i * 6 + j]! * value, 0));
    const stiff = { hub, tips: [{ arm: arm.name, motion }] };
    const [onArm, onHub] = [
      swingField({ on: 'arm', arm: arm.name }, [arm], stiff),
      swingField({ on: 'hub' }, [arm], stiff),
    ];
    const at: Vector3 = [
      arm.root[0] + 0.04 * Math.cos(arm.yaw),
      arm.root[1] + 0.04 * Math.sin(arm.yaw),
      0.004,
    ];
    for (const axis of [0, 1, 2] as const) expect(onArm(at)[axis]).toBeCloseTo(onHub(at)[axis], 9);
  });
});

describe('stress on the arms', () => {
  const hit = {
    arm: arm.name,
    way: 'flat',
    surface: 'wood',
    stress: [
      { at: 0, tension: 3.4e8, compression: 3e8, shear: 0 },
      { at: 0.1, tension: 0, compression: 1e7, shear: 0 },
    ],
  } as unknown as Parameters<typeof armLoads>[1][number];

  it('takes the larger of pull and push, straight between stations, and none in the clamp', () => {
    const [load] = armLoads([arm], [hit], 'flat', 'wood');
    expect(load!.worst).toEqual({ stress: 3.4e8, at: 0 });
    expect(stressAt(load!, 0.05)).toBeCloseTo((3.4e8 + 1e7) / 2, 0);
    expect(stressAt(load!, -0.001)).toBe(0);
    expect(stressAt(load!, 0.2)).toBe(1e7);
    expect(stressBands([load!])).toEqual([0, 8e7, 16e7, 24e7, 32e7, 4e8]);
    expect(armLoads([arm], [hit], 'flat', 'grass')).toEqual([]);
  });
});
