import { describe, expect, it } from 'vitest';
import { armBeamOf } from '../../src/airframe/askArm.ts';
import type { FrameArm } from '../../src/airframe/frameModel.ts';
import { type Blow, hit } from '../../src/airframe/hits.ts';
import { bodyMass, followBlow, inverse, type StruckArm } from '../../src/airframe/struckArm.ts';
import type { MassProperties } from '../../src/airframe/types.ts';
import type { Vector3 } from '../../src/numerics/vector3.ts';
import { sheet } from './sampleFrame.ts';

/** Tip and craft on a line: nothing turns. */
function inLine(tip: number, craft: number, arm: number, loose: StruckArm['loose'] = []): StruckArm {
  const heavy = [1e3, 1e3, 1e3].map((value, i) => [0, 1, 2].map((j) => (i === j ? value : 0)));
  const body = (mass: number) =>
    inverse(bodyMass(mass, [0, 0, 0], heavy as unknown as MassProperties['inertia']))!;
  return {
    tipMass: tip,
    freeTip: body(tip),
    freeRest: body(craft),
    arm: Float64Array.from({ length: 36 }, (_, i) => (i % 7 === 0 ? arm : 0)),
    push: [-1, 0, 0, 0, 0, 0],
    heading: [1, 0, 0],
    loose,
  };
}

/** Largest push along the arm at 1 m/s [N]. */
function pushed(struck: StruckArm, stiffness: number, restitution: number, duration: number): number {
  let most = 0;
  followBlow(struck, { stiffness, restitution }, duration, (load) => {
    most = Math.max(most, -load[0]!);
  });
  return most;
}

describe('a struck arm on a line', () => {
  it('without a mass at its tip is the spring and mass of the handbooks: F = v sqrt(k m) (Abrate 1998, ch. 3)', () => {
    const [contact, arm, mass] = [3e5, 5e4, 0.15];
    const k = 1 / (1 / contact + 1 / arm);
    const found = pushed(inLine(1e-4, mass, arm), contact, 0.99, Math.PI * Math.sqrt(mass / k));
    expect(found / Math.sqrt(k * mass)).toBeCloseTo(1, 1);
  });

  it('on ground far softer than the arm both stop as one, and the arm bears its share by mass', () => {
    const [contact, arm, tip, mass] = [2000, 1e6, 0.05, 0.15];
    const struck = inLine(tip, mass, arm);
    const whole = Math.sqrt(contact * (tip + mass));
    const found = pushed(struck, contact, 0.99, Math.PI * Math.sqrt((tip + mass) / contact));
    expect(found / (whole * (mass / (tip + mass)))).toBeGreaterThan(0.93);
    // The motor's own rattle against the craft comes on top.
    expect(found / (whole * (mass / (tip + mass)))).toBeLessThan(1.15);
  });

  it('a loose pack loads the arm by less than a fixed one, by more than none', () => {
    const pack = (stiffness: number): StruckArm['loose'] => [
      { mass: 0.1, stiffness: [stiffness, stiffness, stiffness], place: [0, 0, 0] },
    ];
    const of = (mass: number, loose: StruckArm['loose']) =>
      pushed(inLine(0.03, mass, 5e4, loose), 3e5, 0.3, Math.PI * Math.sqrt(0.25 / 4e4));
    const [none, fixed] = [of(0.15, []), of(0.25, [])];
    for (const stiffness of [1e3, 1e4, 1e5]) {
      expect(of(0.15, pack(stiffness))).toBeGreaterThan(0.99 * none);
      // Struck by turns, springs in a row may pass a little over the rigid one.
      expect(of(0.15, pack(stiffness))).toBeLessThan(1.25 * fixed);
    }
  });
});

describe('against explicit beams with large deflections (our own, scripts/struck-arm.c)', () => {
  const LENGTH = 0.093873;
  const ROOT = 0.0226;
  const outline = [
    { at: 0, width: 0.015 },
    { at: 0.5, width: 0.011 },
    { at: 0.8755, width: 0.011751 },
    { at: 0.88795, width: 0.011776 },
    { at: 0.9253, width: 0.0184 },
    { at: 0.96265, width: 0.021941 },
    { at: 1, width: 0.023 },
  ];
  const tipBody = { mass: 0.0378, height: 0.01252, inertia: [5.08e-6, 5.08e-6, 7.4e-6] as const };
  const arm: FrameArm = {
    name: 'arm',
    root: [ROOT, 0, 0],
    yaw: 0,
    beam: armBeamOf(
      {
        length: LENGTH,
        outline,
        thickness: 0.005,
        moduli: { E1: 52e9, E2: 52e9, nu12: 0.06, G12: 4.2e9, G13: 3e9, G23: 3e9 },
        density: 1550,
        grip: { kind: 'plain' },
        tipBody,
      },
      true,
    ),
  };
  /** Hub, motor and the arm in small pieces, put together by the parallel-axis theorem; turns out of the plane hardly matter. */
  const pieces: readonly (readonly [mass: number, place: Vector3, pitch: number])[] = [
    [0.3985, [-0.00967, 0, -0.0265], 0.00113],
    [tipBody.mass, [ROOT + LENGTH, 0, -tipBody.height], tipBody.inertia[1]],
    ...Array.from({ length: 14 }, (_, i): readonly [number, Vector3, number] => {
      const at = (i + 0.5) / 14;
      return [(1550 * 0.0129 * 0.005 * LENGTH) / 14, [ROOT + at * LENGTH, 0, 0], 0];
    }),
  ];
  const mass = pieces.reduce((sum, [each]) => sum + each, 0);
  const mean = (axis: 0 | 2) => pieces.reduce((sum, [each, place]) => sum + each * place[axis], 0) / mass;
  const centreOfGravity: Vector3 = [mean(0), 0, mean(2)];
  const pitch = pieces.reduce(
    (sum, [each, place, own]) =>
      sum + own + each * ((place[0] - centreOfGravity[0]) ** 2 + (place[2] - centreOfGravity[2]) ** 2),
    0,
  );
  const rest: MassProperties = {
    mass,
    centreOfGravity,
    inertia: [
      [0.002, 0, 0],
      [0, pitch, 0],
      [0, 0, 0.004],
    ],
  };
  const pack = { mass: 0.208, place: [-0.003, 0, -0.0525], stiffness: { along: 2e4, upright: 6e4 } } as const;
  const base: Omit<Blow, 'heading' | 'contactHeight'> = {
    arm,
    material: sheet,
    craft: { ...rest, mass: rest.mass + pack.mass },
    rootHole: 0,
    loose: { parts: [pack], rest },
  };
  const half = (heading: Vector3, contactHeight: number, contactStiffness: number, restitution: number) => {
    const surface = { name: 'as told', contactStiffness, restitution, source: '' };
    const found = hit({ ...base, heading, contactHeight, speed: 5, surface });
    if (!found.ok) throw new Error(found.reason);
    return (5 * 450e6) / Math.max(...found.value.stress.map(({ compression }) => compression));
  };
  const bell = (ground: number) => 1 / (1 / 2e6 + 1 / ground);

  // Speed at which a fibre is first pressed by 450 MPa.
  it.each([
    ['concrete', 3e6, 0.3, 7.01],
    ['wood', 3e5, 0.3, 7.46],
    ['grass', 2e4, 0.1, 9.48],
  ])('from below on %s to 6 %%', (_, ground, restitution, explicit) => {
    expect(Math.abs(half([0, 0, 1], 0, ground, restitution) / explicit - 1)).toBeLessThan(0.06);
  });

  it('along the arm at the bell on concrete to 6 %, on wood to 15 %', () => {
    expect(Math.abs(half([1, 0, 0], 0.01125, 1.2e6, 0.3) / 3.18 - 1)).toBeLessThan(0.06);
    expect(Math.abs(half([1, 0, 0], 0.01125, bell(3e5), 0.3) / 3.78 - 1)).toBeLessThan(0.15);
  });

  it('along the arm on grass its long push bends the arm on: the reserve counts that', () => {
    // By the stress alone 14 m/s, by large deflections 10.55.
    const [heading, surface] = [
      [1, 0, 0],
      { name: 'grass', contactStiffness: bell(2e4), restitution: 0.1, source: '' },
    ] as const;
    const found = hit({ ...base, heading, contactHeight: 0.01125, speed: 5, surface });
    if (!found.ok) throw new Error(found.reason);
    const byStress = half(heading, 0.01125, bell(2e4), 0.1);
    expect(byStress).toBeGreaterThan(12);
    const { tension } = sheet.strength;
    expect(found.value.breakingSpeed).toBeLessThan((10.55 * tension) / 450e6);
    expect(found.value.breakingSpeed).toBeGreaterThan((0.6 * 10.55 * tension) / 450e6);
  });
});
