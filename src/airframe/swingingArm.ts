import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { type Matrix3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import { type ArmBeam, outlineWidth, type TipGive, tipGive } from './armBeam.ts';
import type { FrameArm } from './frameModel.ts';
import { beamMass, type Section, sectionsOf, TIP_SHARE } from './hitStress.ts';
import { armStiffness, bodyMass, inverse, type StruckArm } from './struckArm.ts';
import type { MassProperties } from './types.ts';

/** Something heavy that the craft carries on straps. */
export interface LooseMass {
  /** [kg] */
  readonly mass: number;
  /** Its middle, the aircraft's axes [m]. */
  readonly place: Vector3;
  /** Of what holds it in the plane of the arms, and up and down [N/m]. */
  readonly stiffness: { readonly along: number; readonly upright: number };
}

/** Places along the arm that are watched while it is struck, over its length. */
const WATCHED = [0, 0.2, 0.45, 0.7, 0.88];
/** Places told of. */
const EVERY = Array.from({ length: 21 }, (_, i) => i / 20);

/** An arm whatever way it is struck. */
export interface SwingingArm extends Pick<StruckArm, 'tipMass' | 'freeTip' | 'freeRest' | 'arm' | 'loose'> {
  readonly give: TipGive;
  /** Sections that are watched, and all that are told of. */
  readonly watched: readonly Section[];
  readonly sections: readonly Section[];
}

export interface SwingingQuestion {
  readonly arm: FrameArm;
  /** The whole craft. */
  readonly craft: MassProperties;
  /** What it carries loosely, and the craft without that. */
  readonly loose?: { readonly parts: readonly LooseMass[]; readonly rest: MassProperties };
  /** Diameter of the screw holes at the root, 0 for none [m]. */
  readonly rootHole: number;
  /** Of the arm's tip, from `tipGive`; worked out when absent. */
  readonly give?: TipGive;
}

/** Makes an arm ready to be struck, once for all ways. */
export function swingingArm({ arm, craft, loose, rootHole, give }: SwingingQuestion): Outcome<SwingingArm> {
  const known = give === undefined ? tipGive(arm.beam) : solved(give);
  if (!known.ok) return known;
  const stiffness = armStiffness(known.value);
  if (stiffness === undefined) return noSolution('the arm has no stiffness in some direction');
  const end = endOf(arm);
  const tip = tipMass(arm.beam);
  const [freeTip, freeRest] = [tip, restMass(loose?.rest ?? craft, end, arm.yaw, tip)].map(inverse);
  if (freeTip === undefined || freeRest === undefined)
    return noSolution('the craft has no inertia about some axis');
  return solved({
    give: known.value,
    tipMass: tip[0] as number,
    freeTip,
    freeRest,
    arm: stiffness,
    loose: (loose?.parts ?? []).map(({ mass, stiffness: { along, upright }, place }) => ({
      mass,
      stiffness: [along, along, upright] as const,
      place: inArmAxes(arm.yaw, subtract3(place, end)),
    })),
    watched: sectionsOf(arm.beam, WATCHED, rootHole),
    sections: sectionsOf(arm.beam, EVERY, rootHole),
  });
}

/** The middle of the tip's section, the aircraft's axes [m]. */
export const endOf = ({ root, yaw, beam }: FrameArm): Vector3 => [
  root[0] + beam.length * Math.cos(yaw),
  root[1] + beam.length * Math.sin(yaw),
  root[2],
];

/** Less than this of a mass or inertia left behind the arm is none. */
const LEAST_BEHIND = 1e-5;

/** Motor and propeller with the arm's own share, about the tip section's middle. */
function tipMass(beam: ArmBeam): Float64Array {
  const { mass = 0, height = 0, inertia = [0, 0, 0] } = beam.tipBody ?? {};
  const [x, y, z] = inertia;
  const own = bodyMass(
    mass,
    [0, 0, -height],
    [
      [x, 0, 0],
      [0, y, 0],
      [0, 0, z],
    ],
  );
  const share = TIP_SHARE * beamMass(beam);
  // What turns of the arm's end by itself: a piece as long as it is wide.
  const width = outlineWidth(beam.outline, 1);
  for (const [axis, part] of [
    share,
    share,
    share,
    ...[1, 1, 2].map((k) => (k * share * width ** 2) / 12),
  ].entries()) {
    own[axis * 7] = (own[axis * 7] as number) + part;
  }
  return own;
}

/** The craft about the end of an arm, in the arm's axes, less what moves with the tip. */
function restMass(craft: MassProperties, end: Vector3, yaw: number, tip: Float64Array): Float64Array {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  const turn = [
    [c, s, 0],
    [-s, c, 0],
    [0, 0, 1],
  ];
  const inertia = turn.map((row) =>
    turn.map((column) =>
      row.reduce(
        (sum, a, i) => sum + column.reduce((inner, b, j) => inner + a * (craft.inertia[i]?.[j] ?? 0) * b, 0),
        0,
      ),
    ),
  ) as unknown as Matrix3;
  const whole = bodyMass(craft.mass, inArmAxes(yaw, subtract3(craft.centreOfGravity, end)), inertia);
  const without = whole.map((value, i) => value - (tip[i] as number));
  // A craft that weighs less than it should for the motor told on the arm: then all of it stays behind the arm.
  return isPositive(without) ? without : whole;
}

/** Cholesky's test. */
function isPositive(matrix: Float64Array): boolean {
  const lower = new Float64Array(36);
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * 6 + j] as number;
      for (let k = 0; k < j; k++) sum -= (lower[i * 6 + k] as number) * (lower[j * 6 + k] as number);
      if (i === j) {
        if (!(sum > LEAST_BEHIND * Math.abs(matrix[i * 7] as number))) return false;
        lower[i * 7] = Math.sqrt(sum);
      } else lower[i * 6 + j] = sum / (lower[j * 7] as number);
    }
  }
  return true;
}

/** A vector of the aircraft in the axes of an arm. */
export function inArmAxes(yaw: number, [x, y, z]: Vector3): Vector3 {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  return [c * x + s * y, c * y - s * x, z];
}
