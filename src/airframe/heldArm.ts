import { type Banded, banded, multiplyBanded } from '../numerics/banded.ts';
import { lowestModes } from '../numerics/lowestModes.ts';
import { type Outcome, solved } from '../numerics/outcome.ts';
import { type ArmBeam, assembleArm, rootFixed } from './armBeam.ts';

/** Modes kept an arm; with 8 the frame's first dozen stand to 0.01 %. */
export const ARM_MODES = 8;
/** Their eigenvalues' last change: the basis of a reduction need not be finer. */
const SETTLED = 1e-7;
/** Vectors iterated on for the modes of one family, which lie far apart. */
const ITERATED = 8;

/** An arm held at its root: its modes, rigid mass about the root and their coupling. */
export interface HeldArm {
  /** Angular frequencies squared [rad2/s2], rising. */
  readonly eigenvalues: Float64Array;
  /** Tip motion of each mode, mass-normalised, six a mode. */
  readonly tipShapes: Float64Array;
  /** 6 x 6: mass [kg], its moments [kg m] and inertia [kg m2] about the root. */
  readonly rigidMass: Float64Array;
  /** modes x 6 */
  readonly coupling: Float64Array;
}

/**
 * A straight arm's stretching and up and down bending (u, w, turn about y) do not mix with its sideways bending
 * and torsion (v, turns about x and z), whatever stands on its tip: two problems of half the size.
 */
const FAMILIES = [
  [0, 2, 4],
  [1, 3, 5],
] as const;

/** Solves an arm held at its root, by its two families of motion. */
export function heldArm(beam: ArmBeam): Outcome<HeldArm> {
  const { stiffness, mass, elements } = assembleArm(beam);
  const { size } = mass;
  const rigid = new Float64Array(6 * size);
  const h = beam.length / elements;
  for (let node = 0; node <= elements; node++) {
    const x = node * h;
    for (let axis = 0; axis < 6; axis++) rigid[axis * size + node * 6 + axis] = 1;
    rigid[4 * size + node * 6 + 2] = -x;
    rigid[5 * size + node * 6 + 1] = x;
  }
  const [heldStiffness, heldMass] = [rootFixed(stiffness), rootFixed(mass)];
  const eigenvalues = new Float64Array(ARM_MODES);
  const vectors = new Float64Array(ARM_MODES * (size - 6));
  const each = ARM_MODES / FAMILIES.length;
  for (const [f, family] of FAMILIES.entries()) {
    const [k, m] = [ofFamily(heldStiffness, family), ofFamily(heldMass, family)];
    const pairs = lowestModes(k, m, each, 0, SETTLED, ITERATED);
    if (!pairs.ok) return pairs;
    eigenvalues.set(pairs.value.values, f * each);
    for (let k = 0; k < each; k++) {
      for (let i = 0; i < (size - 6) / 2; i++) {
        const at = 6 * Math.floor(i / 3) + (family[i % 3] as number);
        vectors[(f * each + k) * (size - 6) + at] = pairs.value.vectors[(k * (size - 6)) / 2 + i] as number;
      }
    }
  }
  const rigidMass = new Float64Array(36);
  const coupling = new Float64Array(ARM_MODES * 6);
  const tipShapes = new Float64Array(ARM_MODES * 6);
  const moved = new Float64Array(size);
  for (let axis = 0; axis < 6; axis++) {
    multiplyBanded(mass, rigid.subarray(axis * size, (axis + 1) * size), moved);
    for (let other = 0; other < 6; other++) {
      rigidMass[other * 6 + axis] = dot(rigid, other * size, moved, 0, size);
    }
    for (let k = 0; k < ARM_MODES; k++) {
      coupling[k * 6 + axis] = dot(vectors, k * (size - 6), moved, 6, size - 6);
    }
  }
  for (let k = 0; k < ARM_MODES; k++) {
    tipShapes.set(vectors.subarray((k + 1) * (size - 6) - 6, (k + 1) * (size - 6)), k * 6);
  }
  return solved({ eigenvalues, tipShapes, rigidMass, coupling });
}

/** Rows and columns of three of each node's six degrees of freedom. */
function ofFamily({ size, width, values }: Banded, family: readonly number[]): Banded {
  const part = banded(size / 2, 5);
  for (let i = 0; i < part.size; i++) {
    const row = 6 * Math.floor(i / 3) + (family[i % 3] as number);
    for (let j = Math.max(0, i - part.width); j <= i; j++) {
      const column = 6 * Math.floor(j / 3) + (family[j % 3] as number);
      const [low, high] = column < row ? [column, row] : [row, column];
      if (high - low > width) continue;
      part.values[i * (part.width + 1) + j - i + part.width] = values[
        high * (width + 1) + low - high + width
      ] as number;
    }
  }
  return part;
}

function dot(a: Float64Array, fromA: number, b: Float64Array, fromB: number, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += (a[fromA + i] as number) * (b[fromB + i] as number);
  return sum;
}
