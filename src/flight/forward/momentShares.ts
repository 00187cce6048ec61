import { linearProgram } from '../../numerics/linearProgram.ts';
import { noSolution } from '../../numerics/outcome.ts';
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
  const { model, circuit, dragCentre } = craft;
  const { stations, centreOfGravity } = model;
  // A body without drag that lies flat needs no thrust at all.
  const total = Math.max(state.thrust, 1e-6 * circuit.weight);
  const servo = stations.some((station) => station.servoTilt !== undefined);
  // A reaction torque is taken to follow its thrust in proportion. Where a rotor hardly pulls, that is as if it did pull some, with
  // what its torque then lacks as a moment from outside: the same balance, and no ratio without end.
  const least = (LEAST_PULL * total) / stations.length;
  const ratios = stations.map(
    (_, i) => Math.max(state.load.torque[i] as number, 0) / Math.max(state.thrusts[i] as number, least),
  );
  const balance = balanceOf(
    effectivenessOf(stations, centreOfGravity, ratios),
    stations,
    centreOfGravity,
    !servo,
  );
  // Forces backward (-x) and down (+z) at a lever r: roll = y F_z, pitch = z F_x - x F_z, yaw = -y F_x.
  const back = dragCentre[2] - centreOfGravity[2];
  let roll = (dragCentre[1] - centreOfGravity[1]) * state.download;
  let pitch = -back * state.bodyDrag - (dragCentre[0] - centreOfGravity[0]) * state.download;
  let yaw = (dragCentre[1] - centreOfGravity[1]) * state.bodyDrag;
  stations.forEach(({ position, spin }, i) => {
    const rotor = state.rotors[i];
    if (rotor === undefined) return;
    const { inPlaneForce: force, sideForce, momentAdvancingUp, momentAftUp } = rotor;
    // The advancing side of a rotor that turns clockwise seen from above is its left.
    const right = -spin * sideForce;
    roll += spin * momentAdvancingUp - (position[2] - centreOfGravity[2]) * right;
    pitch -= momentAftUp + (position[2] - centreOfGravity[2]) * force;
    yaw += (position[1] - centreOfGravity[1]) * force + (position[0] - centreOfGravity[0]) * right;
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
