import type { Vector3 } from '../../numerics/vector3.ts';
import type { Effector } from './types.ts';

/**
 * How fast a craft ends up turning about its vertical axis when yaw is let go: the rate at which the rotors' in-plane
 * drag takes up the yaw moment that is left over,
 *
 *     |yaw| = r sum_i c T_i l_i^2,
 *
 * c in-plane drag over thrust and edgewise speed, l_i the way from the axis to the hub. The same balance with a measured yaw
 * drag for the sum is Mueller and D'Andrea's (2014, Stability and control of a quadrocopter despite the complete loss of
 * one, two, or three propellers, IEEE ICRA). The drag of turning arms and motors is left out: the true rate is some tenth
 * less. Valid while c does not change with speed.
 *
 * @param thrusts of each effector [N]
 * @param yawMoment left over at them [N m]
 * @param inPlaneDragPerThrust c [s/m], > 0
 * @returns [rad/s], >= 0; Infinity when no thrust stands away from the axis to hold against it
 */
export function steadyTurn(
  effectors: readonly Pick<Effector, 'position'>[],
  centreOfGravity: Vector3,
  thrusts: readonly number[],
  yawMoment: number,
  inPlaneDragPerThrust: number,
): number {
  if (!(inPlaneDragPerThrust > 0)) {
    throw new RangeError(`inPlaneDragPerThrust must be over 0 s/m; found ${inPlaneDragPerThrust} s/m`);
  }
  const drag = effectors.reduce((sum, { position }, i) => {
    const lever = Math.hypot(position[0] - centreOfGravity[0], position[1] - centreOfGravity[1]);
    return sum + inPlaneDragPerThrust * (thrusts[i] ?? 0) * lever * lever;
  }, 0);
  return yawMoment === 0 ? 0 : Math.abs(yawMoment) / drag;
}
