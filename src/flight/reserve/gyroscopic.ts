import type { Vector3 } from '../../numerics/vector3.ts';

/** A turning rotor, its axis upright. */
export interface TurningRotor {
  /** +1 clockwise seen from above, -1 counterclockwise. */
  readonly spin: 1 | -1;
  /** [rad/s], >= 0 */
  readonly angularSpeed: number;
  /** [kg m2] */
  readonly rotatingInertia: number;
}

export interface GyroscopicCoupling {
  /** Angular momentum of all rotors about z, down [N m s]; nothing when they turn in equal pairs. */
  readonly momentum: number;
  /** Moment that the turning rotors put on the airframe at the given rates [N m], about x, y, z. */
  readonly moment: Vector3;
  /** Largest moment that a single rotor bends its arm with [N m], which pairs do not cancel. */
  readonly largestOnArm: number;
}

/**
 * Propeller-gyroscopic coupling: rotors of angular momentum h about z turned with the body at
 * (p, q, r) push back with -omega x h = (-q h, p h, 0).
 *
 * @param rates of the body [rad/s]
 */
export function gyroscopicCoupling(rotors: readonly TurningRotor[], rates: Vector3): GyroscopicCoupling {
  let momentum = 0;
  let largest = 0;
  for (const { spin, angularSpeed, rotatingInertia } of rotors) {
    momentum += spin * angularSpeed * rotatingInertia;
    largest = Math.max(largest, angularSpeed * rotatingInertia);
  }
  const [p, q] = rates;
  return {
    momentum,
    moment: [-q * momentum, p * momentum, 0],
    largestOnArm: largest * Math.hypot(p, q),
  };
}
