import { add3, cross3, scale3, subtract3, type Vector3 } from '../../numerics/vector3.ts';
import type { Effector } from './types.ts';

/** Moments about the centre of gravity [N m] and lift, the force upwards along the aircraft's -z [N]. */
export type Wrench = readonly [roll: number, pitch: number, yaw: number, lift: number];

const UP: Vector3 = [0, 0, -1];

/** Steps in which a servo's arc is followed; the corners lie on it, so the set is never overstated there. */
const ARC_STEPS = 8;

/**
 * What one newton of an effector's thrust does: r x t about the true centre of gravity, and the
 * reaction of its shaft torque about its own axis (a rotor clockwise from above turns the craft
 * counterclockwise).
 *
 * @param centreOfGravity [m], in the aircraft's axes
 * @param torquePerThrust shaft torque over net thrust [m]
 * @param tilt of a servo about the x axis [rad]: positive leans the thrust to the right
 */
export function wrenchPerNewton(
  effector: Pick<Effector, 'position' | 'thrustAxis' | 'spin'>,
  centreOfGravity: Vector3,
  torquePerThrust: number,
  tilt = 0,
): Wrench {
  const upright = effector.thrustAxis ?? UP;
  const axis = tilt === 0 ? upright : tilted(upright, tilt);
  const moment = add3(
    cross3(subtract3(effector.position, centreOfGravity), axis),
    scale3(axis, effector.spin * torquePerThrust),
  );
  return [moment[0], moment[1], moment[2], -axis[2]];
}

/**
 * The corners of all wrenches that one effector can give: two for a fixed one, a sector for one that
 * a servo tilts. The sector's hollow at minimum thrust is filled in, an overstatement of at most
 * minimumThrust (1 - cos tilt).
 */
export function effectorCorners(effector: Effector, centreOfGravity: Vector3): readonly Wrench[] {
  const { minimumThrust, maximumThrust, torquePerThrust, servoTilt = 0 } = checked(effector);
  const at = (tilt: number, thrust: number): Wrench => {
    const [roll, pitch, yaw, lift] = wrenchPerNewton(effector, centreOfGravity, torquePerThrust, tilt);
    return [roll * thrust, pitch * thrust, yaw * thrust, lift * thrust];
  };
  if (servoTilt === 0) return [at(0, minimumThrust), at(0, maximumThrust)];
  const corners = [at(-servoTilt, minimumThrust), at(servoTilt, minimumThrust)];
  for (let i = 0; i <= ARC_STEPS; i++) corners.push(at(servoTilt * ((2 * i) / ARC_STEPS - 1), maximumThrust));
  return corners;
}

function checked(effector: Effector): Effector {
  const { name, minimumThrust, maximumThrust, torquePerThrust, servoTilt = 0 } = effector;
  if (!(minimumThrust >= 0 && maximumThrust >= minimumThrust && Number.isFinite(maximumThrust))) {
    throw new RangeError(
      `${name}: thrust limits must be 0 <= minimum <= maximum; found ${minimumThrust} and ${maximumThrust} N`,
    );
  }
  if (!(torquePerThrust >= 0 && Number.isFinite(torquePerThrust))) {
    throw new RangeError(`${name}: torquePerThrust must be 0 m or more; found ${torquePerThrust} m`);
  }
  if (!(servoTilt >= 0 && servoTilt <= Math.PI / 3)) {
    throw new RangeError(`${name}: servoTilt must be between 0 and pi/3; found ${servoTilt} rad`);
  }
  return effector;
}

/** Turned about the x axis, positive from z-up towards +y. */
function tilted([x, y, z]: Vector3, angle: number): Vector3 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [x, c * y - s * z, s * y + c * z];
}
