import type { Craft } from '../../../build/craft.ts';
import type { HitsReport } from '../airframeData.ts';
import { bladeForce, STRUCK } from './bladeForce.ts';

/** Four screws share a motor's base; a pattern told by one circle stands evenly on it. */
const SCREWS = 4;
/** Where a pattern's circle is not known, over the bell's diameter (common practice, no source). */
const USUAL_CIRCLE = 0.6;

/**
 * What stops a propeller whose blade holds: its turning momentum J omega goes into what is struck at a lever of
 * 0.85 of the radius, by no more than the force that breaks the blade. The arm takes the same push aside; the
 * base's screws take it in shear, with its moment from disc to base as a pull, M over the circle's diameter on the
 * worst one. Undefined without motors.
 *
 * @param angularSpeed of the propellers [rad/s]
 */
export function stoppingOf(craft: Craft, angularSpeed: number): HitsReport['stopping'] {
  const motor = craft.motors[0];
  const rotor = motor && craft.rotors[motor.rotor];
  const propeller = craft.parts.propellers.find(({ id }) => id === rotor?.partId);
  if (motor === undefined || rotor === undefined || propeller === undefined) return undefined;
  const { median: force } = bladeForce(rotor.blade, propeller.material);
  const lever = (STRUCK * rotor.blade.diameter) / 2;
  const momentum = motor.rotatingInertia * angularSpeed;
  const circle = Math.max(...motor.fit.mountCircles, 0) || USUAL_CIRCLE * motor.fit.bellDiameter;
  const arm = craft.frame.arms[motor.place.armIndex];
  const base = (arm?.thickness ?? 0) / 2;
  const height = Math.max(0, Math.abs((arm?.tip[2] ?? 0) - motor.discPlace[2]) - base);
  return {
    angularSpeed,
    bladeForce: force,
    torque: force * lever,
    impulse: momentum / lever,
    time: momentum / (force * lever),
    screwPull: (force * height) / circle,
    screwShear: force / SCREWS,
  };
}
