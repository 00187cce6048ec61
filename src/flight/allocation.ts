import { linearProgram } from '../numerics/linearProgram.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import { wrenchPerNewton } from './reserve/wrench.ts';
import type { Station } from './types.ts';

/** What a newton of net thrust of each motor does to the airframe; one column a station. */
export interface Effectiveness {
  /** Upward force, 1 for a straight rotor. */
  readonly lift: readonly number[];
  /** About the centre of gravity [m]. */
  readonly roll: readonly number[];
  readonly pitch: readonly number[];
  /** Reaction torque and lever together [m]. */
  readonly yaw: readonly number[];
  /** Horizontal force, forward and right. */
  readonly forward: readonly number[];
  readonly right: readonly number[];
}

/**
 * @param torquePerThrust of each station, torque over net thrust [m]
 * @param centreOfGravity [m]
 */
export function effectivenessOf(
  stations: readonly Station[],
  centreOfGravity: Vector3,
  torquePerThrust: ArrayLike<number>,
): Effectiveness {
  const lift: number[] = [];
  const roll: number[] = [];
  const pitch: number[] = [];
  const yaw: number[] = [];
  const forward: number[] = [];
  const right: number[] = [];
  stations.forEach((station, i) => {
    const newton = wrenchPerNewton(station, centreOfGravity, torquePerThrust[i] ?? 0);
    roll.push(newton[0]);
    pitch.push(newton[1]);
    yaw.push(newton[2]);
    lift.push(newton[3]);
    forward.push(station.thrustAxis?.[0] ?? 0);
    right.push(station.thrustAxis?.[1] ?? 0);
  });
  return { lift, roll, pitch, yaw, forward, right };
}

/** The balance as equations of about unit size, rows x thrusts = right, for a total lift of 1. */
export interface Balance {
  readonly rows: readonly (readonly number[])[];
  /** Divide an outside moment [N m per N of lift] by these: roll, pitch, yaw [m]. */
  readonly scales: readonly [number, number, number];
}

/** @param withYaw false when a tail servo holds the yaw */
export function balanceOf(
  effect: Effectiveness,
  stations: readonly Station[],
  centreOfGravity: Vector3,
  withYaw: boolean,
): Balance {
  let arm = 1e-3;
  for (const { position } of stations) {
    arm = Math.max(arm, Math.hypot(position[0] - centreOfGravity[0], position[1] - centreOfGravity[1]));
  }
  // Reaction torque is a hundred times smaller than lever moments: scaled to its own largest.
  const turn = effect.yaw.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-9);
  const over = (row: readonly number[], size: number): readonly number[] => row.map((value) => value / size);
  const rows = [effect.lift, over(effect.roll, arm), over(effect.pitch, arm)];
  if (withYaw) rows.push(over(effect.yaw, turn));
  return { rows, scales: [arm, arm, turn] };
}

/**
 * Thrusts >= 0 that solve rows x thrusts = right, of least square sum: the pseudo-inverse where it is
 * all positive (Durham 1993 'generalized inverse'), otherwise motors that it would have pull down are stopped one
 * after another; should that miss, any solution the linear program finds. Exact in feasibility, least
 * square only among the motors left turning.
 *
 * @param rows of about unit size
 */
export function leastThrusts(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): Outcome<Float64Array> {
  const count = rows[0]?.length ?? 0;
  const turning = Array.from({ length: count }, () => true);
  for (let attempt = 0; attempt < count; attempt++) {
    const thrusts = leastSquares(rows, right, turning);
    if (thrusts === undefined) break;
    let worst = -1;
    let lowest = -1e-9;
    for (let i = 0; i < count; i++) {
      if ((thrusts[i] as number) < lowest) {
        lowest = thrusts[i] as number;
        worst = i;
      }
    }
    if (worst < 0) return solved(thrusts.map((t) => Math.max(t, 0)));
    turning[worst] = false;
  }
  const objective = Array.from({ length: count }, () => -1);
  const upper = Array.from({ length: count }, () => Number.POSITIVE_INFINITY);
  const found = linearProgram({ objective, rows, right, upper });
  return found.ok ? found : noSolution('no thrusts balance the aircraft');
}

/** Pseudo-inverse over the turning motors: A^T (A A^T)^-1 b; undefined when b is out of reach. */
function leastSquares(
  rows: readonly (readonly number[])[],
  right: readonly number[],
  turning: readonly boolean[],
): Float64Array | undefined {
  const m = rows.length;
  const count = turning.length;
  const matrix = new Float64Array(m * count);
  for (let r = 0; r < m; r++) {
    const row = rows[r] as readonly number[];
    for (let i = 0; i < count; i++) matrix[r * count + i] = turning[i] ? (row[i] as number) : 0;
  }
  const gram = new Float64Array(m * m);
  for (let r = 0; r < m; r++) {
    for (let c = 0; c <= r; c++) {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        sum += (matrix[r * count + i] as number) * (matrix[c * count + i] as number);
      }
      gram[r * m + c] = sum;
      gram[c * m + r] = sum;
    }
  }
  const multipliers = solveSymmetric(gram, right, m);
  const thrusts = new Float64Array(count);
  for (let r = 0; r < m; r++) {
    const multiplier = multipliers[r] as number;
    for (let i = 0; i < count; i++) {
      thrusts[i] = (thrusts[i] as number) + multiplier * (matrix[r * count + i] as number);
    }
  }
  for (let r = 0; r < m; r++) {
    let sum = -(right[r] as number);
    for (let i = 0; i < count; i++) sum += (matrix[r * count + i] as number) * (thrusts[i] as number);
    if (Math.abs(sum) > 1e-9) return undefined;
  }
  return thrusts;
}

/** Gaussian elimination with full pivoting; dependent rows get a zero multiplier. Overwrites `matrix`. */
function solveSymmetric(matrix: Float64Array, right: readonly number[], m: number): Float64Array {
  const b = Float64Array.from(right);
  const used = new Int32Array(m).fill(-1);
  for (let step = 0; step < m; step++) {
    let best = -1;
    let pivot = 1e-12;
    for (let r = 0; r < m; r++) {
      // The Gram matrix is semidefinite, so the largest diagonal is a full pivot.
      const diagonal = matrix[r * m + r] as number;
      if ((used[r] as number) < 0 && diagonal > pivot) {
        best = r;
        pivot = diagonal;
      }
    }
    if (best < 0) break;
    used[best] = step;
    for (let r = 0; r < m; r++) {
      const factor = (matrix[r * m + best] as number) / pivot;
      if (r === best || factor === 0) continue;
      for (let c = 0; c < m; c++) {
        matrix[r * m + c] = (matrix[r * m + c] as number) - factor * (matrix[best * m + c] as number);
      }
      b[r] = (b[r] as number) - factor * (b[best] as number);
    }
  }
  for (let r = 0; r < m; r++) {
    b[r] = (used[r] as number) < 0 ? 0 : (b[r] as number) / (matrix[r * m + r] as number);
  }
  return b;
}
