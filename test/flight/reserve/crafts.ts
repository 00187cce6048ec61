import { layoutMotors } from '../../../src/airframe/layout.ts';
import type { LayoutParameters } from '../../../src/airframe/types.ts';
import type { Effector, ReserveModel } from '../../../src/flight/reserve/types.ts';

/** Plain numbers near a 5 inch craft of 0.7 kg; every motor alike. */
export interface CraftOptions {
  readonly maximumThrust?: number;
  readonly minimumThrust?: number;
  readonly mass?: number;
  readonly torquePerThrust?: number;
  readonly servoTilt?: number;
}

export function craft(layout: LayoutParameters, options: CraftOptions = {}): ReserveModel {
  const { maximumThrust = 12, minimumThrust = 0.2, mass = 0.7, torquePerThrust = 0.014, servoTilt } = options;
  const effectors = layoutMotors(layout).motors.map(
    ({ name, position, spin, tilts }): Effector => ({
      name,
      position,
      spin,
      torquePerThrust,
      minimumThrust,
      maximumThrust,
      ...(tilts && servoTilt !== undefined ? { servoTilt } : {}),
    }),
  );
  return {
    effectors,
    centreOfGravity: [0, 0, 0],
    mass,
    gravity: 9.80665,
    inertia: [
      [0.003, 0, 0],
      [0, 0.0035, 0],
      [0, 0, 0.006],
    ],
  };
}

/** A hexacopter with given spins round from the nose, for the published cases. */
export function ring(spins: readonly (1 | -1)[], radius: number, firstDegrees = 0): Effector[] {
  return spins.map((spin, i) => {
    const angle = (firstDegrees / 180) * Math.PI + (2 * Math.PI * i) / spins.length;
    return {
      name: `motor ${i + 1}`,
      position: [radius * Math.cos(angle), radius * Math.sin(angle), 0],
      spin,
      torquePerThrust: 0.014,
      minimumThrust: 0,
      maximumThrust: 12,
    };
  });
}
