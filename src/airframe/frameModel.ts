import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { generalisedEigen } from '../numerics/symmetricEigen.ts';
import type { Matrix3, Vector3 } from '../numerics/vector3.ts';
import { type ArmBeam, beamKey } from './armBeam.ts';
import { ARM_MODES, type HeldArm, heldArm } from './heldArm.ts';

/** A rigid body of the hub: everything that moves with it (plates, stack, pack, camera). */
export interface HubBody {
  /** [kg] */
  readonly mass: number;
  /** [m] in the aircraft's axes */
  readonly centreOfGravity: Vector3;
  /** About its centre of gravity, the aircraft's axes [kg m2]. */
  readonly inertia: Matrix3;
}

/** An arm in its place: the beam's x axis leaves the root in the plan direction `yaw`. */
export interface FrameArm {
  readonly name: string;
  /** On the arm's mid-plane [m]. */
  readonly root: Vector3;
  /** From the x axis, positive to the right [rad]. */
  readonly yaw: number;
  readonly beam: ArmBeam;
}

/**
 * What joins the arms' roots: interface nodes of six degrees of freedom, the first being the hub body's
 * own at the origin. Without stiffness there is that node alone: a rigid hub.
 */
export interface HubStructure {
  readonly body: HubBody;
  /** Stiffness between interface nodes and mass lumped on them, dense, 6 (1 + roots) square. */
  readonly plate?: { readonly stiffness: Float64Array; readonly mass: Float64Array };
}

/** The frame reduced to its interfaces and each arm's own modes (Craig and Bampton 1968). */
export interface FrameModel {
  /** Coordinates in all: the interfaces' first [m, rad], then the arms' modal ones. */
  readonly size: number;
  readonly interfaceSize: number;
  /** size x size, row by row; of the interfaces in SI, modes mass-normalised. */
  readonly stiffness: Float64Array;
  readonly mass: Float64Array;
  readonly arms: readonly ReducedArm[];
}

export interface ReducedArm {
  readonly arm: FrameArm;
  /** First of its modal coordinates, and of its root's interface node. */
  readonly firstMode: number;
  readonly rootNode: number;
  readonly modes: number;
  /** Tip motion in the arm's axes for each mode of the held arm, six a mode. */
  readonly tipShapes: Float64Array;
  /** Motion of the interface node to that of the root, in the arm's axes, 6 x 6. */
  readonly toRoot: Float64Array;
}

/** Each arm held at its root, ready for `frameModel`; arms that are alike are solved once. */
export function holdArms(arms: readonly FrameArm[]): Outcome<readonly HeldArm[]> {
  const solvedBeams = new Map<string, HeldArm>();
  const all: HeldArm[] = [];
  for (const arm of arms) {
    const key = beamKey(arm.beam);
    let own = solvedBeams.get(key);
    if (own === undefined) {
      const outcome = heldArm(arm.beam);
      if (!outcome.ok) return noSolution(`${arm.name}: ${outcome.reason}`);
      own = outcome.value;
      solvedBeams.set(key, own);
    }
    all.push(own);
  }
  return solved(all);
}

/**
 * Builds the reduced frame. The arms hang on their root alone, so the reduction's statics are exact.
 *
 * @param held the arms from `holdArms`, in their order
 */
export function frameModel(
  arms: readonly FrameArm[],
  held: readonly HeldArm[],
  hub: HubStructure,
): FrameModel {
  const nodes = hub.plate === undefined ? 1 : 1 + arms.length;
  const interfaceSize = 6 * nodes;
  const size = interfaceSize + arms.length * ARM_MODES;
  const stiffness = new Float64Array(size * size);
  const mass = new Float64Array(size * size);
  if (hub.plate !== undefined) {
    for (let i = 0; i < interfaceSize; i++) {
      for (let j = 0; j < interfaceSize; j++) {
        stiffness[i * size + j] = hub.plate.stiffness[i * interfaceSize + j] as number;
        mass[i * size + j] = hub.plate.mass[i * interfaceSize + j] as number;
      }
    }
  }
  addBody(mass, size, hub.body);
  const reduced: ReducedArm[] = [];
  for (const [i, arm] of arms.entries()) {
    const own = held[i];
    if (own === undefined) throw new RangeError(`held: nothing for ${arm.name}`);
    const rootNode = hub.plate === undefined ? 0 : 6 * (1 + i);
    const from: Vector3 = hub.plate === undefined ? arm.root : [0, 0, 0];
    const firstMode = interfaceSize + i * ARM_MODES;
    const toRoot = rootTransport(from, arm.yaw);
    addArm(mass, stiffness, size, own, toRoot, rootNode, firstMode);
    reduced.push({ arm, firstMode, rootNode, modes: ARM_MODES, tipShapes: own.tipShapes, toRoot });
  }
  return { size, interfaceSize, stiffness, mass, arms: reduced };
}

function addArm(
  mass: Float64Array,
  stiffness: Float64Array,
  size: number,
  own: HeldArm,
  toRoot: Float64Array,
  node: number,
  first: number,
): void {
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      let sum = 0;
      for (let p = 0; p < 6; p++) {
        for (let q = 0; q < 6; q++) {
          sum +=
            (toRoot[p * 6 + i] as number) *
            (own.rigidMass[p * 6 + q] as number) *
            (toRoot[q * 6 + j] as number);
        }
      }
      const at = (node + i) * size + node + j;
      mass[at] = (mass[at] as number) + sum;
    }
    for (let k = 0; k < ARM_MODES; k++) {
      let sum = 0;
      for (let p = 0; p < 6; p++) sum += (own.coupling[k * 6 + p] as number) * (toRoot[p * 6 + i] as number);
      mass[(node + i) * size + first + k] = sum;
      mass[(first + k) * size + node + i] = sum;
    }
  }
  for (let k = 0; k < ARM_MODES; k++) {
    mass[(first + k) * size + first + k] = 1;
    stiffness[(first + k) * size + first + k] = own.eigenvalues[k] as number;
  }
}

/** Motion of a node to that of a point `offset` from it, in axes turned by `yaw`; 6 x 6 row-major. */
export function rootTransport([x, y, z]: Vector3, yaw: number): Float64Array {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  const turn = [c, s, 0, -s, c, 0, 0, 0, 1];
  const carry = [0, z, -y, -z, 0, x, y, -x, 0];
  const t = new Float64Array(36);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      t[i * 6 + j] = turn[i * 3 + j] as number;
      t[(i + 3) * 6 + j + 3] = turn[i * 3 + j] as number;
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += (turn[i * 3 + k] as number) * (carry[k * 3 + j] as number);
      t[i * 6 + j + 3] = sum;
    }
  }
  return t;
}

function addBody(mass: Float64Array, size: number, body: HubBody): void {
  const transport = rootTransport(body.centreOfGravity, 0);
  const own = new Float64Array(36);
  for (const axis of [0, 1, 2] as const) {
    own[axis * 7] = body.mass;
    for (const other of [0, 1, 2] as const) own[(axis + 3) * 6 + other + 3] = body.inertia[axis][other];
  }
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      let sum = 0;
      for (let p = 0; p < 6; p++) {
        for (let q = 0; q < 6; q++) {
          sum +=
            (transport[p * 6 + i] as number) * (own[p * 6 + q] as number) * (transport[q * 6 + j] as number);
        }
      }
      mass[i * size + j] = (mass[i * size + j] as number) + sum;
    }
  }
}

/** All modes of the free frame, its six rigid ones first: angular frequencies squared [rad2/s2], vectors mass-normalised. */
export interface FreeModes {
  readonly model: FrameModel;
  readonly values: Float64Array;
  /** Vector k from k times the model's size. */
  readonly vectors: Float64Array;
}

/** How many motions of a free body store no strain. */
export const RIGID = 6;

/**
 * All modes of the reduced frame, its six rigid ones found. The mass matrix is the one factored, so the
 * singular stiffness of a free frame needs no shift.
 */
export function freeModes(model: FrameModel): Outcome<FreeModes> {
  const pairs = generalisedEigen(model.stiffness, model.mass, model.size);
  if (!pairs.ok) return pairs;
  const { values, vectors } = pairs.value;
  const firstElastic = values[RIGID] as number;
  const lastRigid = Math.max(...Array.from(values.subarray(0, RIGID), Math.abs));
  if (!(lastRigid < 1e-5 * firstElastic)) {
    return noSolution(
      `a free frame has six rigid modes, but the sixth moves at ${Math.sqrt(lastRigid)} rad/s`,
    );
  }
  return solved({ model, values, vectors });
}
