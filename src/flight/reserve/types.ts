import type { Matrix3, Vector3 } from '../../numerics/vector3.ts';

/**
 * Axes x forward, y right, z down. Moments [N m] about the centre of gravity: roll to the right,
 * pitch nose up, yaw to the right are positive. Thrusts [N], positive along the thrust axis.
 */

/** A lift motor as the reserve sees it: a force of known place, direction and limits. */
export interface Effector {
  /** In words: `front left`. */
  readonly name: string;
  /** Centre of the prop disc [m], in the aircraft's axes. */
  readonly position: Vector3;
  /** Unit vector of the thrust; straight up (0, 0, -1) when absent. */
  readonly thrustAxis?: Vector3;
  /** +1 turns clockwise seen from above, -1 counterclockwise. The airframe feels the opposite. */
  readonly spin: 1 | -1;
  /** Shaft torque over net thrust [m], >= 0, taken at hover. */
  readonly torquePerThrust: number;
  /** Net thrust at the lowest throttle in flight [N], >= 0. */
  readonly minimumThrust: number;
  /** Net thrust at full throttle on the bus as loaded [N], >= minimumThrust. */
  readonly maximumThrust: number;
  /** A servo tilts it about the x axis up to this angle either way [rad], 0 to pi/3. */
  readonly servoTilt?: number;
}

/** What the reserve needs to know of one aircraft. */
export interface ReserveModel {
  readonly effectors: readonly Effector[];
  /** [m] */
  readonly centreOfGravity: Vector3;
  /** All-up [kg]. */
  readonly mass: number;
  /** [m/s2] */
  readonly gravity: number;
  /** About the centre of gravity [kg m2]. */
  readonly inertia: Matrix3;
}

export type ControlAxis = 'roll' | 'pitch' | 'yaw';

export const controlAxes: readonly ControlAxis[] = ['roll', 'pitch', 'yaw'];

/** Largest either way about one axis, the others held at nothing. */
export interface Reach {
  /** Largest in the negative direction, as a positive number. */
  readonly negative: number;
  readonly positive: number;
}

export type MomentReach = Readonly<Record<ControlAxis, Reach>>;

/**
 * What can be held after a motor is lost, best first. 'Of use' is at least a tenth of the moments of the whole craft either
 * way, and lift for a tenth over the weight.
 *
 * - full hover control: roll, pitch and yaw are of use;
 * - hover without yaw: roll and pitch are, and the yaw moment left over turns the craft about twice a second at most;
 * - on the edge: it balances, but roll and pitch, or the lift, are not of use;
 * - only spinning fast: yaw is out of balance and turns it faster, which levels the axis it spins about (Mueller and
 *   D'Andrea 2014): a flight controller made for that can keep its place, common ones can't;
 * - nothing: it falls.
 */
export const degreesHeld = [
  'full hover control',
  'hover without yaw',
  'on the edge',
  'only spinning fast',
  'nothing',
] as const;

export type Held = (typeof degreesHeld)[number];
