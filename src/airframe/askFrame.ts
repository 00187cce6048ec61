import { denseSolve } from '../numerics/denseSolve.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import { tipResponses } from './armBeam.ts';
import { type ArmStress, armStress } from './armStress.ts';
import { type ArmQuestion, armBeamOf, checkArm, tipLoad } from './askArm.ts';
import {
  type FrameArm,
  type FrameModel,
  frameModel,
  type HubBody,
  type HubStructure,
  holdArms,
  rootTransport,
} from './frameModel.ts';
import { type FrameMode, frameModes } from './frameModes.ts';
import type { HeldArm } from './heldArm.ts';
import { condenseHubPlate } from './hubPlate.ts';
import { reducedStiffness, turnedStiffness } from './laminate.ts';
import type { PlateModuli } from './section.ts';
import type { Mode, Point2 } from './types.ts';

export interface PlacedArm {
  readonly name: string;
  /** Where it leaves the hub, on its mid-plane [m]. */
  readonly root: Vector3;
  /** Its direction from the x axis, positive to the right [rad]. */
  readonly yaw: number;
  /** Its own load and stress place are answered too; its `modes` is not used. */
  readonly arm: ArmQuestion;
}

/**
 * The frame's middle. `rigid`: two plates with standoffs, or anything far stiffer than the arms. `one
 * plate`: a single sheet from which the arms (grip `one piece`) run out, held stiff within a radius.
 */
export type HubQuestion =
  | { readonly kind: 'rigid'; readonly body: HubBody }
  | {
      readonly kind: 'one plate';
      readonly body: HubBody;
      /** Edge in plan, convex round the origin [m]. */
      readonly outline: readonly Point2[];
      readonly heldRadius: number;
      readonly thickness: number;
      /** Axis 1 lies at `fibreYaw` from the aircraft's x axis. */
      readonly moduli: PlateModuli;
      readonly fibreYaw: number;
      /** [kg/m3] */
      readonly density: number;
    };

export interface FrameQuestion {
  readonly arms: readonly PlacedArm[];
  readonly hub: HubQuestion;
  /** How many frequencies, 10 when absent. */
  readonly modes?: number;
}

export interface FrameAnswer {
  /** Of the free frame, its six rigid motions left out. */
  readonly frequencies: readonly Mode[];
  /** The modes with their motions, for the shake. */
  readonly modes: readonly FrameMode[];
  /** Of the first arm's tip against the held middle of the hub: along, across, up [N/m]. */
  readonly tipStiffness: { readonly x: number; readonly y: number; readonly z: number };
  readonly arms: readonly {
    readonly name: string;
    readonly tipStiffness: { readonly x: number; readonly y: number; readonly z: number };
    readonly stress?: ArmStress;
  }[];
}

/** Modes of a whole free frame, each arm's tip stiffness and stress: `quadwright ask frame`. */
export function askFrame(question: FrameQuestion): Outcome<FrameAnswer> {
  const structure = frameStructure(question);
  if (!structure.ok) return structure;
  const { arms, hub, model } = structure.value;
  const modes = frameModes(model, question.modes ?? 10);
  if (!modes.ok) return modes;
  const answers: FrameAnswer['arms'][number][] = [];
  for (const [i, arm] of arms.entries()) {
    const asked = question.arms[i]?.arm;
    const stiffness = tipStiffness(arm, i, hub);
    if (!stiffness.ok) return stiffness;
    const stress =
      asked?.load === undefined || asked.stressAt === undefined
        ? undefined
        : armStress(arm.beam, tipLoad(asked.load), asked.stressAt);
    answers.push({
      name: arm.name,
      tipStiffness: stiffness.value,
      ...(stress === undefined ? {} : { stress }),
    });
  }
  const first = answers[0];
  if (first === undefined) throw new RangeError('arms: a frame needs one or more');
  return solved({
    frequencies: modes.value.map(({ frequency, shape }) => ({ frequency, shape })),
    modes: modes.value,
    tipStiffness: first.tipStiffness,
    arms: answers,
  });
}

export interface FrameStructure {
  readonly arms: readonly FrameArm[];
  readonly hub: HubStructure;
  readonly model: FrameModel;
}

/** The arms of a frame as beams, and each of them held at its root: what no change of the hub's load touches. */
export interface SolvedArms {
  readonly arms: readonly FrameArm[];
  readonly held: readonly HeldArm[];
}

export function solveArms(placed: FrameQuestion['arms']): Outcome<SolvedArms> {
  const arms = frameArms(placed);
  const held = holdArms(arms);
  return held.ok ? solved({ arms, held: held.value }) : held;
}

/**
 * The beam model of a frame, for modes and shake.
 *
 * @param known its arms, where they have been solved before
 */
export function frameStructure(
  question: FrameQuestion,
  known: Outcome<SolvedArms> = solveArms(question.arms),
): Outcome<FrameStructure> {
  if (!known.ok) return known;
  const { arms, held } = known.value;
  const hub = hubStructure(question.hub, arms);
  if (!hub.ok) return hub;
  return solved({ arms, hub: hub.value, model: frameModel(arms, held, hub.value) });
}

/** The arms alone as beams, for hits. */
export const frameArms = (placed: FrameQuestion['arms']): readonly FrameArm[] =>
  placed.map(({ name, root, yaw, arm }) => {
    checkArm(arm);
    return { name, root, yaw, beam: armBeamOf(arm, arm.tipBody !== undefined) };
  });

function hubStructure(hub: HubQuestion, arms: readonly FrameArm[]): Outcome<HubStructure> {
  if (!(hub.body.mass > 0))
    throw new RangeError(`hub: its body needs a mass over 0 kg, got ${hub.body.mass}`);
  if (hub.kind === 'rigid') return solved({ body: hub.body });
  const { thickness, moduli, fibreYaw, density, outline, heldRadius } = hub;
  const scaled = (q: Float64Array, by: number): Float64Array => q.map((value) => value * by);
  const inPlane = turnedStiffness(reducedStiffness(moduli), fibreYaw);
  const bending = turnedStiffness(reducedStiffness(bendingModuli(moduli)), fibreYaw);
  const [c2, s2] = [Math.cos(fibreYaw) ** 2, Math.sin(fibreYaw) ** 2];
  const plate = condenseHubPlate(
    {
      outline,
      heldRadius,
      areaDensity: density * thickness,
      stiffness: {
        stretching: scaled(inPlane, thickness),
        bending: scaled(bending, thickness ** 3 / 12),
        shear: [
          (5 / 6) * thickness * (moduli.G13 * c2 + moduli.G23 * s2),
          (5 / 6) * thickness * (moduli.G13 * s2 + moduli.G23 * c2),
        ],
      },
    },
    arms.map(({ root, yaw, beam }) => ({
      root: [root[0], root[1]],
      yaw,
      width: beam.outline[0]?.width ?? 0,
    })),
  );
  if (!plate.ok) return plate;
  return plate.value === undefined
    ? solved({ body: hub.body })
    : solved({ body: hub.body, plate: plate.value });
}

const bendingModuli = (m: PlateModuli): PlateModuli => {
  const share = (m.E1Bending ?? m.E1) / m.E1;
  return { ...m, E1: m.E1 * share, E2: m.E2 * share, G12: m.G12Twist ?? m.G12 };
};

/** Tip force over its displacement, the arm's own give and the plate's together, middle held. */
function tipStiffness(arm: FrameArm, index: number, hub: HubStructure): Outcome<FrameAnswer['tipStiffness']> {
  const loads = [0, 1, 2].map((axis) => [0, 0, 0, 0, 0, 0].map((_, i) => (i === axis ? 1 : 0)));
  const own = tipResponses(arm.beam, loads as unknown as Parameters<typeof tipResponses>[1]);
  if (!own.ok) return own;
  const stiffness: number[] = [];
  for (const axis of [0, 1, 2] as const) {
    const plate = plateGive(arm, index, hub, axis);
    if (plate === undefined) return noSolution('the hub plate has no stiffness in some direction');
    stiffness.push(1 / ((own.value[axis]?.[axis] ?? Number.NaN) + plate));
  }
  const [x = 0, y = 0, z = 0] = stiffness;
  return solved({ x, y, z });
}

/** Displacement of an arm's tip under a unit force there from the hub plate's give alone [m/N]. */
function plateGive(
  arm: FrameArm,
  index: number,
  { plate }: HubStructure,
  axis: 0 | 1 | 2,
): number | undefined {
  if (plate === undefined) return 0;
  const whole = Math.sqrt(plate.stiffness.length);
  const size = whole - 6;
  const k = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    k.set(plate.stiffness.subarray((i + 6) * whole + 6, (i + 6) * whole + whole), i * size);
  }
  // Root motion in the arm's axes, then carried along the arm to its tip.
  const tip = rootTransport(
    [arm.beam.length * Math.cos(arm.yaw), arm.beam.length * Math.sin(arm.yaw), 0],
    arm.yaw,
  );
  const force = new Float64Array(size);
  force.set(tip.subarray(axis * 6, axis * 6 + 6), index * 6);
  const moved = denseSolve(k, force, size);
  return moved?.reduce((sum, value, i) => sum + value * (force[i] as number), 0);
}
