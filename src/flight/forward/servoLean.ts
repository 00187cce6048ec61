import type { Station } from '../types.ts';
import { besideThrust, bodyMoments } from './momentShares.ts';
import type { ForwardCraft, ForwardTrim } from './types.ts';

/** How far a tail servo leans its motor to hold the yaw. */
export interface ServoLean {
  /** Index of the station it tilts. */
  readonly station: number;
  /** Its sine, positive to the right; beyond 1 no lean would hold it. */
  readonly sine: number;
  /** As far as it goes, either way [rad]. */
  readonly limit: number;
}

/**
 * The lean at which the tail's thrust pushes against all that turns the craft about its upright axis: reaction torques, in-plane
 * forces and drag beside the balance,
 *
 *   (x_tail - x_cg) T sin(lean) + yaw(lean) = 0
 *
 * where the tail's own reaction turns the craft by its cosine alone. Absent without a servo.
 */
export function servoLean(craft: ForwardCraft, trim: ForwardTrim): ServoLean | undefined {
  const { stations, centreOfGravity } = craft.model;
  const station = stations.findIndex(({ servoTilt }) => servoTilt !== undefined);
  if (station < 0) return undefined;
  const { position, spin, servoTilt = 0 } = stations[station] as Station;
  const torque = trim.load.torque[station] as number;
  const others =
    bodyMoments(craft, trim)[2] +
    stations.reduce(
      (sum, each, i) =>
        sum +
        besideThrust(craft, trim, i)[2] -
        (i === station ? 0 : each.spin * (trim.load.torque[i] as number)),
      0,
    );
  const push = (position[0] - centreOfGravity[0]) * (trim.thrusts[station] as number);
  let sine = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const cosine = Math.sqrt(Math.max(1 - sine * sine, 0));
    sine = -(others - spin * torque * cosine) / push;
  }
  return { station, sine, limit: servoTilt };
}

/** The tail's own torque is a tenth of its push: each round is that much nearer, and its cosine moves less still. */
const ROUNDS = 8;
