import { linearProgram } from '../../numerics/linearProgram.ts';
import { noSolution } from '../../numerics/outcome.ts';
import { subtract3 } from '../../numerics/vector3.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { balanceOf, effectivenessOf, leastThrusts } from '../allocation.ts';
import { CRAWL, type ForwardCraft, type ForwardTrim, type NoTrim } from './types.ts';

/** Of the mean thrust. */
const LEAST_PULL = 0.25;

/** Shares of the total thrust, and why they do not balance; absent when they do. */
export interface MomentShares {
  readonly shares: ArrayLike<number>;
  readonly whyNot?: NoTrim;
}

/**
 * Shares of the total thrust that balance every moment of a state about the centre of gravity. Where none do, those that balance
 * as much of the moments as can be, with what is left in words.
 *
 * @param known shares to keep where not even the weight alone can be balanced
 */
export function momentShares(
  craft: ForwardCraft,
  state: ForwardTrim,
  known: ArrayLike<number>,
): MomentShares {
  const { model, circuit } = craft;
  const { stations, centreOfGravity } = model;
  const total = leastTotal(state, circuit.weight);
  const servo = stations.some((station) => station.servoTilt !== undefined);
  const ratios = stations.map((_, i) => torquePerThrust(craft, state, i));
  const balance = balanceOf(
    effectivenessOf(stations, centreOfGravity, ratios),
    stations,
    centreOfGravity,
    !servo,
  );
  let [roll, pitch, yaw] = bodyMoments(craft, state);
  stations.forEach((_, i) => {
    const own = besideThrust(craft, state, i);
    roll += own[0];
    pitch += own[1];
    yaw += own[2];
  });
  // At rest exactly the hover trim, to the last digit.
  if (state.speed <= CRAWL && state.climb <= CRAWL) roll = pitch = yaw = 0;
  stations.forEach(({ spin }, i) => {
    yaw -= spin * ((state.load.torque[i] as number) - (ratios[i] as number) * (state.thrusts[i] as number));
  });
  const [rollScale, pitchScale, yawScale] = balance.scales;
  const right = [1, -roll / (total * rollScale), -pitch / (total * pitchScale)];
  if (!servo) right.push(-yaw / (total * yawScale));
  const found = leastThrusts(balance.rows, right);
  if (found.ok) return { shares: found.value };
  const weightShare = (100 * Math.abs(pitch)) / (circuit.weight * pitchScale);
  const reason = `at ${withUnit(state.speed.toFixed(1), 'm/s')} the motors cannot balance the moments of the drag (${weightShare.toFixed(0)} % of weight times arm)`;
  return {
    shares: nearestShares(balance.rows, right) ?? known,
    whyNot: { ...noSolution(reason), because: 'moments' },
  };
}

/**
 * A reaction torque is taken to follow its thrust in proportion [m]. Where a rotor hardly pulls, that is as if it did pull some, with
 * what its torque then lacks as a moment from outside: the same balance, and no ratio without end.
 */
export function torquePerThrust({ model, circuit }: ForwardCraft, state: ForwardTrim, i: number): number {
  const least = (LEAST_PULL * leastTotal(state, circuit.weight)) / model.stations.length;
  return Math.max(state.load.torque[i] as number, 0) / Math.max(state.thrusts[i] as number, least);
}

/** A body without drag that lies flat needs no thrust at all. */
const leastTotal = (state: ForwardTrim, weight: number): number => Math.max(state.thrust, 1e-6 * weight);

/** Roll, pitch, yaw of the body's drag at its centre [N m]: forces backward (-x) and down (+z) at a lever r. */
export function bodyMoments(
  { model, dragCentre }: ForwardCraft,
  { bodyDrag, download }: ForwardTrim,
): readonly [number, number, number] {
  const [x, y, z] = subtract3(dragCentre, model.centreOfGravity);
  return [y * download, -z * bodyDrag - x * download, y * bodyDrag];
}

/** Roll, pitch, yaw of one rotor beside those of its thrust and torque [N m]: hub moments, in-plane and side force at their levers. */
export function besideThrust(
  { model }: ForwardCraft,
  { rotors }: ForwardTrim,
  i: number,
): readonly [number, number, number] {
  const station = model.stations[i];
  const rotor = rotors[i];
  if (station === undefined || rotor === undefined) return [0, 0, 0];
  const { inPlaneForce: force, sideForce, momentAdvancingUp, momentAftUp } = rotor;
  const [x, y, z] = subtract3(station.position, model.centreOfGravity);
  // The advancing side of a rotor that turns clockwise seen from above is its left.
  const right = -station.spin * sideForce;
  return [station.spin * momentAdvancingUp - z * right, -momentAftUp - z * force, y * force + x * right];
}

/** With the largest part of the moments that some thrusts balance. */
function nearestShares(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): Float64Array | undefined {
  const count = rows[0]?.length ?? 0;
  const part = linearProgram({
    objective: [...new Array<number>(count).fill(0), 1],
    rows: rows.map((row, r) => [...row, r === 0 ? 0 : -(right[r] ?? 0)]),
    right: right.map((_, r) => (r === 0 ? 1 : 0)),
    upper: [...new Array<number>(count).fill(Number.POSITIVE_INFINITY), 1],
  });
  return part.ok ? part.value.slice(0, count) : undefined;
}
