import { type Outcome, solved } from '../numerics/outcome.ts';
import { type ArmBeam, type TipBody, type TipLoad, tipResponses } from './armBeam.ts';
import { armModes } from './armModes.ts';
import { type ArmPlace, type ArmStress, armStress } from './armStress.ts';
import { type EndLength, PLAIN_END } from './endLength.ts';
import { grippedEnd, joinedEnd } from './grippedEnd.ts';
import { heldEnd } from './heldEnd.ts';
import type { PlateModuli } from './section.ts';
import type { Mode } from './types.ts';

/**
 * How the root is fixed. `held face`: every point of the root's cross-section; `between plates`: the
 * arm runs on between two plates that hold its faces; `one piece`: cut with its plate from one sheet, the
 * plate's middle counted apart; `plain`: beam theory's clamp. A loose joint adds lengths by which the arm
 * acts longer [m].
 */
export interface Grip {
  readonly kind: 'held face' | 'between plates' | 'one piece' | 'plain';
  readonly extraOutOfPlane?: number;
  readonly extraInPlane?: number;
  readonly extraTorsion?: number;
}

/** One arm alone, root to motor axis; axes along the arm, across to the right, and up. */
export interface ArmQuestion {
  /** [m] */
  readonly length: number;
  /** Width [m] at places from 0 at the root to 1 at the motor's axis. */
  readonly outline: readonly { readonly at: number; readonly width: number }[];
  /** [m] */
  readonly thickness: number;
  readonly moduli: PlateModuli;
  /** [kg/m3] */
  readonly density: number;
  readonly grip: Grip;
  /** The motor with its prop; without it the tip is free. */
  readonly tipBody?: TipBody;
  /** Force [N] and moment [N m] at the tip section's middle. */
  readonly load?: {
    readonly force: readonly [along: number, across: number, up: number];
    readonly moment?: readonly [along: number, across: number, up: number];
  };
  /** Where the stress under the load is wanted. */
  readonly stressAt?: ArmPlace;
  /** How many frequencies, 6 when absent. */
  readonly modes?: number;
}

export interface ArmAnswer {
  readonly frequencies: readonly Mode[];
  /** Force at the tip over its displacement that way, tip section rigid [N/m]. */
  readonly tipStiffness: { readonly x: number; readonly y: number; readonly z: number };
  /** Torque about the arm over the tip's twist [N m/rad]. */
  readonly twistStiffness: number;
  /** Of the tip under the load, along, across, up [m]. */
  readonly deflection?: readonly [along: number, across: number, up: number];
  readonly stress?: ArmStress;
}

/** Frequencies, tip stiffness and stress of one arm: `quadwright ask arm`. */
export function askArm(question: ArmQuestion): Outcome<ArmAnswer> {
  checkArm(question);
  const still = armBeamOf(question, true);
  const modes = armModes(armBeamOf(question, question.tipBody !== undefined), question.modes ?? 6);
  if (!modes.ok) return modes;
  const load = question.load === undefined ? undefined : tipLoad(question.load);
  const responses = tipResponses(still, [...UNIT_LOADS, ...(load === undefined ? [] : [load])]);
  if (!responses.ok) return responses;
  const [alongX, acrossY, throughZ, twist, loaded] = responses.value;
  const stiffness = (row: Float64Array | undefined, i: number): number => 1 / (row?.[i] ?? Number.NaN);
  return solved({
    frequencies: modes.value.map(({ frequency, shape }) => ({ frequency, shape })),
    tipStiffness: { x: stiffness(alongX, 0), y: stiffness(acrossY, 1), z: stiffness(throughZ, 2) },
    twistStiffness: stiffness(twist, 3),
    ...(loaded === undefined
      ? {}
      : { deflection: [loaded[0] ?? 0, loaded[1] ?? 0, -(loaded[2] ?? 0)] as const }),
    ...(load === undefined || question.stressAt === undefined
      ? {}
      : { stress: armStress(still, load, question.stressAt) }),
  });
}

const UNIT_LOADS: readonly TipLoad[] = [
  [1, 0, 0, 0, 0, 0],
  [0, 1, 0, 0, 0, 0],
  [0, 0, 1, 0, 0, 0],
  [0, 0, 0, 1, 0, 0],
];

/** A load in the question's axes as the beam has it. Up becomes down: forces and moments about `up` change sign. */
export function tipLoad({ force, moment = [0, 0, 0] }: NonNullable<ArmQuestion['load']>): TipLoad {
  return [force[0], force[1], -force[2], moment[0], moment[1], -moment[2]];
}

/** The beam model behind a question; a motor or a loading block holds the tip's section rigid. */
export function armBeamOf(question: ArmQuestion, rigidTip: boolean): ArmBeam {
  const { length, outline, thickness, moduli, density, grip, tipBody } = question;
  const width = (end: 'root' | 'tip'): number => outline[end === 'root' ? 0 : outline.length - 1]?.width ?? 0;
  return {
    length,
    outline,
    thickness,
    moduli,
    density,
    rootEnd: gripEnd(grip, width('root'), thickness, moduli),
    tipEnd: rigidTip ? heldEnd(width('tip'), thickness, moduli) : PLAIN_END,
    ...(tipBody === undefined ? {} : { tipBody }),
  };
}

/** End lengths of a grip on a section [m]. */
export function gripEnd(grip: Grip, width: number, thickness: number, moduli: PlateModuli): EndLength {
  const base = {
    'held face': heldEnd,
    'between plates': grippedEnd,
    'one piece': joinedEnd,
    plain: () => PLAIN_END,
  }[grip.kind](width, thickness, moduli);
  return {
    ...base,
    outOfPlane: base.outOfPlane + (grip.extraOutOfPlane ?? 0),
    inPlane: base.inPlane + (grip.extraInPlane ?? 0),
    torsion: base.torsion + (grip.extraTorsion ?? 0),
  };
}

export function checkArm({ length, outline, thickness, density, moduli, tipBody }: ArmQuestion): void {
  const positive = { length, thickness, E1: moduli.E1, E2: moduli.E2, G12: moduli.G12, G13: moduli.G13 };
  for (const [name, value] of Object.entries(positive)) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name}: must be over 0, got ${value}`);
  }
  if (!(density > 0)) throw new RangeError(`density: must be over 0 kg/m3, got ${density}`);
  if (outline.length === 0) throw new RangeError('outline: needs one station or more');
  for (const { at, width } of outline) {
    if (!(width > 0 && at >= 0 && at <= 1))
      throw new RangeError(`outline: ${width} m at ${at} is no section`);
  }
  if (tipBody !== undefined && !(tipBody.mass > 0 && tipBody.inertia.every((i) => i > 0))) {
    throw new RangeError(`tipBody: mass and inertias must be over 0, got ${tipBody.mass} kg`);
  }
}
