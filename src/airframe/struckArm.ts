import { denseSolve } from '../numerics/denseSolve.ts';
import type { TipGive, TipLoad } from './armBeam.ts';

/**
 * An arm about to be struck at its motor, everything in the arm's axes about the middle of its tip section (x along,
 * y across, z down; shifts, then turns). The motor and the craft behind the arm are rigid bodies, the arm
 * itself a spring without mass.
 */
export interface StruckArm {
  /** Of the motor with the arm's own share [kg]. */
  readonly tipMass: number;
  /** Inverse mass of the same, and of the craft without it and without what is loose; 6 x 6. */
  readonly freeTip: Float64Array;
  readonly freeRest: Float64Array;
  /** Of the arm, 6 x 6 [N/m, N, N m]. */
  readonly arm: Float64Array;
  /** What a force of 1 N against the heading at the struck point loads the tip with. */
  readonly push: TipLoad;
  /** Of the craft against what it strikes, unit vector. */
  readonly heading: readonly [number, number, number];
  readonly loose: readonly LoosePart[];
}

/** Held loosely by the craft, in the arm's axes. */
export interface LoosePart {
  /** [kg] */
  readonly mass: number;
  /** Of what holds it, along each axis [N/m]. */
  readonly stiffness: readonly [number, number, number];
  /** From the middle of the tip's section [m]. */
  readonly place: readonly [number, number, number];
}

export interface Ground {
  /** [N/m] */
  readonly stiffness: number;
  /** Speed of a rebound over that of the hit, 0 to 1. */
  readonly restitution: number;
}

/** Of the fastest swing, in radians a step: leapfrog holds to 2 (Hairer, Lubich and Wanner 2003). */
const STEP = 1.2;
/** The fastest swing, along the arm, is the one thing seen coarsely: of the rest this many steps miss nothing. */
const SEEN = 2;
const MOST_STEPS = 6000;
/** Watched on after the ground is left, over the length of the push. */
const AFTER = 0.5;

/**
 * A hit at 1 m/s, step by step: `see` is given the load on the tip's section [N, N m], which is what bends the arm. All
 * is proportional to speed, since leaving the ground is a matter of sign alone.
 *
 * Motor and craft swing against each other on the arm, so that a push along the arm, above it, throws the motor aside
 * and bends the root by up to twice what it would put on slowly.
 *
 * @param push how long the ground pushes, about [s]
 */
export function followBlow(
  struck: StruckArm,
  { stiffness, restitution }: Ground,
  push: number,
  see: (load: Float64Array) => void,
): void {
  const { tipMass, freeTip, freeRest, arm, heading, loose } = struck;
  const basis = Float64Array.from(struck.push);
  const loss = -Math.log(Math.min(0.99, Math.max(0.01, restitution)));
  const dashpot = ((2 * loss) / Math.hypot(Math.PI, loss)) * Math.sqrt(stiffness * tipMass);
  const step = STEP / fastest(struck, stiffness);
  const last = Math.min(MOST_STEPS, Math.ceil((2 * push) / step));
  const q = new Float64Array(6);
  const p = new Float64Array(6);
  const [vq, vp] = [new Float64Array(6), new Float64Array(6)];
  const [bent, held] = [new Float64Array(6), new Float64Array(6)];
  const [byTip, byRest] = [new Float64Array(6), new Float64Array(6)];
  const onTip = new Float64Array(6);
  const onRest = new Float64Array(6);
  const swings = loose.map((part) => ({
    part,
    shift: new Float64Array(3),
    speed: Float64Array.from(heading),
  }));
  for (let axis = 0; axis < 3; axis++) {
    vq[axis] = heading[axis] as number;
    vp[axis] = heading[axis] as number;
  }
  let left = 0;
  let touched = false;
  for (let i = 0; i < last && left * step < AFTER * push; i++) {
    for (let k = 0; k < 6; k++) {
      q[k] = (q[k] as number) + (vq[k] as number) * step;
      p[k] = (p[k] as number) + (vp[k] as number) * step;
    }
    for (let k = 0; k < 6; k++) bent[k] = (q[k] as number) - (p[k] as number);
    times(arm, bent, held);
    let depth = 0;
    let speed = 0;
    for (let k = 0; k < 6; k++) {
      depth -= (basis[k] as number) * (q[k] as number);
      speed -= (basis[k] as number) * (vq[k] as number);
    }
    const force = depth > 0 ? Math.max(0, stiffness * depth + dashpot * speed) : 0;
    if (force > 0) {
      touched = true;
      left = 0;
    } else if (touched) left++;
    for (let k = 0; k < 6; k++) {
      onTip[k] = (basis[k] as number) * force - (held[k] as number);
      onRest[k] = held[k] as number;
    }
    for (const { part, shift, speed: own } of swings) pullLoose(part, p, shift, own, step, onRest);
    times(freeTip, onTip, byTip);
    times(freeRest, onRest, byRest);
    for (let k = 0; k < 6; k++) {
      vq[k] = (vq[k] as number) + (byTip[k] as number) * step;
      vp[k] = (vp[k] as number) + (byRest[k] as number) * step;
    }
    if (i % SEEN === 0) see(held);
  }
}

/** A 6 x 6 matrix times a vector: the innermost work of all, so written out. */
function times(matrix: Float64Array, vector: Float64Array, into: Float64Array): void {
  const [a, b, c] = [vector[0] as number, vector[1] as number, vector[2] as number];
  const [d, e, f] = [vector[3] as number, vector[4] as number, vector[5] as number];
  for (let i = 0; i < 36; i += 6) {
    into[i / 6] =
      (matrix[i] as number) * a +
      (matrix[i + 1] as number) * b +
      (matrix[i + 2] as number) * c +
      (matrix[i + 3] as number) * d +
      (matrix[i + 4] as number) * e +
      (matrix[i + 5] as number) * f;
  }
}

/** One step of what is loose, and its pull on the craft added to what the craft bears. */
function pullLoose(
  { mass, stiffness, place }: LoosePart,
  p: Float64Array,
  shift: Float64Array,
  speed: Float64Array,
  step: number,
  onRest: Float64Array,
): void {
  const [x, y, z] = place;
  const [a, b, c] = [p[3] as number, p[4] as number, p[5] as number];
  for (let k = 0; k < 3; k++) shift[k] = (shift[k] as number) + (speed[k] as number) * step;
  const px = stiffness[0] * ((shift[0] as number) - (p[0] as number) - b * z + c * y);
  const py = stiffness[1] * ((shift[1] as number) - (p[1] as number) - c * x + a * z);
  const pz = stiffness[2] * ((shift[2] as number) - (p[2] as number) - a * y + b * x);
  speed[0] = (speed[0] as number) - (px / mass) * step;
  speed[1] = (speed[1] as number) - (py / mass) * step;
  speed[2] = (speed[2] as number) - (pz / mass) * step;
  onRest[0] = (onRest[0] as number) + px;
  onRest[1] = (onRest[1] as number) + py;
  onRest[2] = (onRest[2] as number) + pz;
  onRest[3] = (onRest[3] as number) + y * pz - z * py;
  onRest[4] = (onRest[4] as number) + z * px - x * pz;
  onRest[5] = (onRest[5] as number) + x * py - y * px;
}

/**
 * Largest angular frequency of motor, arm and ground, from above: the eigenvalues of (M_tip^-1 + M_rest^-1) K and the ground's own
 * are none of them negative, so that none is more than their sum, which is the trace [rad/s].
 */
function fastest({ arm, push, loose, freeTip, freeRest }: StruckArm, stiffness: number): number {
  let sum = 0;
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      const at = i * 6 + j;
      sum += ((freeTip[at] as number) + (freeRest[at] as number)) * (arm[j * 6 + i] as number);
      sum += stiffness * (push[i] as number) * (freeTip[at] as number) * (push[j] as number);
    }
  }
  const straps = Math.max(0, ...loose.map((part) => Math.max(...part.stiffness) / part.mass));
  return Math.sqrt(Math.max(sum, 4 * straps));
}

/** @param give of the arm's tip, from `tipGive` */
export function armStiffness(give: TipGive): Float64Array | undefined {
  return inverse(Float64Array.from({ length: 36 }, (_, i) => give[Math.floor(i / 6)]?.[i % 6] ?? 0));
}

/** Of a 6 x 6 matrix; undefined where it has none. */
export function inverse(matrix: Float64Array): Float64Array | undefined {
  const one = Float64Array.from({ length: 36 }, (_, i) => Number(i % 7 === 0));
  return denseSolve(matrix, one, 6);
}

/** Mass of a rigid body about a point: `place` of its centre of gravity from there, inertia about its own, all in one set of axes. */
export function bodyMass(
  mass: number,
  [x, y, z]: readonly [number, number, number],
  inertia: readonly (readonly [number, number, number])[],
): Float64Array {
  const cross = [0, -z, y, z, 0, -x, -y, x, 0];
  const matrix = new Float64Array(36);
  for (let i = 0; i < 3; i++) {
    matrix[i * 7] = mass;
    for (let j = 0; j < 3; j++) {
      const c = mass * (cross[i * 3 + j] as number);
      matrix[(i + 3) * 6 + j] = c;
      matrix[j * 6 + i + 3] = c;
      let square = 0;
      for (let k = 0; k < 3; k++) square += (cross[i * 3 + k] as number) * (cross[k * 3 + j] as number);
      matrix[(i + 3) * 6 + j + 3] = (inertia[i]?.[j] ?? 0) - mass * square;
    }
  }
  return matrix;
}
