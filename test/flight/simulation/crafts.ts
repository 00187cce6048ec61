import { layoutMotors } from '../../../src/airframe/layout.ts';
import type { LayoutParameters } from '../../../src/airframe/types.ts';
import type { RotorDrive, SimulationModel } from '../../../src/flight/simulation/types.ts';
import type { RotorRead } from '../../../src/flight/types.ts';

/** Near a 5 inch propeller: thrust 1.2e-6 w^2 at rest, falling with axial speed as over its pitch speed. */
export const plainRotor: RotorRead = (angularSpeed, axialSpeed, out) => {
  const square = angularSpeed * angularSpeed;
  out.thrust = 1.2e-6 * square - 3.2e-4 * angularSpeed * axialSpeed;
  out.torque = 1.6e-8 * square;
};

/** The same without any sense of the air's speed: closed forms hold exactly. */
export const numbRotor: RotorRead = (angularSpeed, _, out) => {
  out.thrust = 1.2e-6 * angularSpeed * angularSpeed;
  out.torque = 1.6e-8 * angularSpeed * angularSpeed;
};

export const noRotor: RotorRead = (_, __, out) => {
  out.thrust = 0;
  out.torque = 0;
};

export const lagDrive: RotorDrive = { kind: 'lag', timeConstant: 0.03, lowestSpeed: 300, highestSpeed: 3200 };

export interface SimulationOptions {
  readonly rotor?: RotorRead;
  readonly drive?: RotorDrive;
  readonly layout?: LayoutParameters;
}

export function flyer(options: SimulationOptions = {}): SimulationModel {
  const { rotor = numbRotor, drive = lagDrive, layout = { kind: 'true X', diagonal: 0.22 } } = options;
  return {
    rotors: layoutMotors(layout).motors.map(({ position, spin }) => ({
      position,
      spin,
      rotor,
      downloadShare: 0.05,
      rotatingInertia: 6e-6,
      drive,
    })),
    mass: 0.7,
    gravity: 9.80665,
    centreOfGravity: [0, 0, 0],
    inertia: [
      [0.003, 0, 0],
      [0, 0.0035, 0],
      [0, 0, 0.006],
    ],
    airDensity: 1.225,
    dragArea: [0.012, 0.014, 0.02],
    inPlaneDragPerThrust: 0.011,
  };
}
