import { linearProgram } from '../../numerics/linearProgram.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import { type ControlAxis, controlAxes, type ReserveModel } from './types.ts';
import { effectorCorners, type Wrench } from './wrench.ts';

/**
 * All wrenches that the effectors can give together: `base` plus shares of `columns`. Each column's
 * share runs from 0 to 1, and the shares of a group add to at most 1 (a servo's corners).
 */
export interface AttainableSet {
  readonly base: Wrench;
  readonly columns: readonly Wrench[];
  /** The effector each column belongs to, and what its whole share adds to that effector's thrust [N]. */
  readonly owners: readonly { readonly effector: number; readonly thrust: number }[];
  /** Thrusts at `base` [N], one an effector. */
  readonly baseThrusts: readonly number[];
  /** Indices of columns whose shares add to at most 1; a column alone in its group is left out. */
  readonly groups: readonly (readonly number[])[];
  /** [N], to scale equations with. */
  readonly weight: number;
  /** Weight times the largest distance of an effector from the centre of gravity [N m]. */
  readonly momentScale: number;
}

/** The Minkowski sum of what each effector can give (Durham 1993, for limits on each effector alone). */
export function attainableSet(model: ReserveModel): AttainableSet {
  const weight = model.mass * model.gravity;
  if (!(weight > 0 && Number.isFinite(weight))) {
    throw new RangeError(`mass and gravity must give a weight over 0 N; found ${weight} N`);
  }
  const base: [number, number, number, number] = [0, 0, 0, 0];
  const columns: Wrench[] = [];
  const owners: { effector: number; thrust: number }[] = [];
  const groups: number[][] = [];
  let arm = 0;
  for (const [index, effector] of model.effectors.entries()) {
    const [first, ...others] = effectorCorners(effector, model.centreOfGravity);
    if (first === undefined) continue;
    for (let i = 0; i < 4; i++) base[i] = (base[i] ?? 0) + (first[i] ?? 0);
    if (others.length > 1) groups.push(others.map((_, i) => columns.length + i));
    others.forEach((corner, k) => {
      columns.push(difference(corner, first));
      // A tilted effector's second corner is still at its lowest thrust.
      const lowest = others.length > 1 && k === 0;
      owners.push({
        effector: index,
        thrust: lowest ? 0 : effector.maximumThrust - effector.minimumThrust,
      });
    });
    const [x, y, z] = model.centreOfGravity;
    arm = Math.max(
      arm,
      Math.hypot(effector.position[0] - x, effector.position[1] - y, effector.position[2] - z),
    );
  }
  if (!(arm > 0)) throw new RangeError('effectors: at least one must stand away from the centre of gravity');
  const baseThrusts = model.effectors.map((effector) => effector.minimumThrust);
  return { base, columns, owners, baseThrusts, groups, weight, momentScale: weight * arm };
}

const difference = (a: Wrench, b: Wrench): Wrench => [a[0] - b[0], a[1] - b[1], a[2] - b[2], a[3] - b[3]];

/** What is asked of the wrench while something is maximised. An axis that is not held may do what it likes. */
export interface Hold {
  /** Axes whose moment must be nothing, or along the asked direction. */
  readonly axes: readonly ControlAxis[];
  /** Required lift [N]; free when absent. */
  readonly lift?: number;
}

/** An edge point of the set. */
export interface Extreme {
  /** Multiple of the asked direction. */
  readonly along: number;
  readonly wrench: Wrench;
  /** Thrusts that give it [N], one an effector. */
  readonly thrusts: readonly number[];
}

/**
 * The largest multiple of a moment that can be had while the rest is held: the set's edge along a
 * direction. Exact, by linear programming.
 *
 * @param direction [N m]; components on axes that are not held are not looked at
 */
export function reachAlong(set: AttainableSet, direction: Vector3, hold: Hold): Outcome<Extreme> {
  if (!hold.axes.some((axis) => component(direction, axis) !== 0)) {
    throw new RangeError('direction must have a component on a held axis');
  }
  return maximise(set, { direction, hold, objective: [0, 0, 0, 0], alongObjective: 1 });
}

/** The wrench farthest in the direction of `objective` while the rest is held. */
export function farthest(set: AttainableSet, objective: Wrench, hold: Hold): Outcome<Wrench> {
  const best = maximise(set, { hold, objective, alongObjective: 0 });
  return best.ok ? solved(best.value.wrench) : best;
}

interface Question {
  readonly direction?: Vector3;
  readonly hold: Hold;
  readonly objective: Wrench;
  readonly alongObjective: number;
}

function maximise(set: AttainableSet, question: Question): Outcome<Extreme> {
  const { base, columns, groups, momentScale, weight } = set;
  const { direction, hold, objective } = question;
  const scaleOf = (i: number): number => (i < 3 ? momentScale : weight);
  // Unit of the multiple: as many as reach the moment scale, so that the table stays about 1.
  const length = direction === undefined ? 0 : Math.hypot(...direction);
  const unit = length > 0 ? momentScale / length : 0;
  const rows: number[][] = [];
  const right: number[] = [];
  const require = (i: number, value: number, along: number): void => {
    rows.push([...columns.map((w) => (w[i] ?? 0) / scaleOf(i)), ...groups.map(() => 0), -along]);
    right.push((value - (base[i] ?? 0)) / scaleOf(i));
  };
  controlAxes.forEach((axis, i) => {
    if (!hold.axes.includes(axis)) return;
    require(i, 0, direction === undefined ? 0 : (component(direction, axis) * unit) / momentScale);
  });
  if (hold.lift !== undefined) require(3, hold.lift, 0);
  groups.forEach((group, g) => {
    const row = new Array<number>(columns.length + groups.length + 1).fill(0);
    for (const c of group) row[c] = 1;
    row[columns.length + g] = 1;
    rows.push(row);
    right.push(1);
  });
  const grouped = new Set(groups.flat());
  const gain = (w: Wrench): number =>
    w.reduce((sum, value, i) => sum + (value * (objective[i] ?? 0)) / scaleOf(i), 0);
  const best = linearProgram({
    objective: [...columns.map(gain), ...groups.map(() => 0), question.alongObjective],
    rows,
    right,
    upper: [
      ...columns.map((_, c) => (grouped.has(c) ? Number.POSITIVE_INFINITY : 1)),
      ...groups.map(() => Number.POSITIVE_INFINITY),
      direction === undefined ? 0 : Number.POSITIVE_INFINITY,
    ],
  });
  if (!best.ok) return noSolution('the motors cannot give this lift and hold the craft level');
  return solved({
    along: (best.value[columns.length + groups.length] ?? 0) * unit,
    ...pointAt(set, best.value),
  });
}

/** @param shares of the columns, in their order; what comes after them is not looked at */
export function pointAt(set: AttainableSet, shares: ArrayLike<number>): Pick<Extreme, 'wrench' | 'thrusts'> {
  const wrench: [number, number, number, number] = [...set.base];
  const thrusts = [...set.baseThrusts];
  set.columns.forEach((w, c) => {
    const share = shares[c] ?? 0;
    for (let i = 0; i < 4; i++) wrench[i] = (wrench[i] ?? 0) + share * (w[i] ?? 0);
    const owner = set.owners[c];
    if (owner !== undefined) {
      thrusts[owner.effector] = (thrusts[owner.effector] ?? 0) + share * owner.thrust;
    }
  });
  return { wrench, thrusts };
}

const component = (v: Vector3, axis: ControlAxis): number => v[controlAxes.indexOf(axis)] ?? 0;
