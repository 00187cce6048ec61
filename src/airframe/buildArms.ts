import type { Vector3 } from '../numerics/vector3.ts';
import type { ArmGeometry, Layout, MotorPlace } from './types.ts';

export interface ArmSizes {
  /** Half the plate's length and width where arms leave it [m]. */
  readonly bodyHalfLength: number;
  readonly bodyHalfWidth: number;
  readonly rootWidth: number;
  readonly tipWidth: number;
  /** Width at mid-length when the arm is necked or bulged; absent for a straight taper [m]. */
  readonly middleWidth?: number;
  readonly thickness: number;
  readonly padDiameter: number;
  readonly clampedLength: number;
}

/**
 * One arm to each motor (or coaxial pair) from the edge of a rectangular body round the origin.
 *
 * An arm points from the body's middle through the edge to its motor; in an H, and for the front pair
 * of a dead cat, it starts on the body's flank beside the motor, or at the corner nearest to it, and
 * so runs sideways.
 */
export function buildArms(layout: Layout, sizes: ArmSizes): readonly ArmGeometry[] {
  const shared = layout.motors.filter(
    ({ coaxialWith, propSide }) => coaxialWith === undefined || propSide === 'above',
  );
  return shared.map((motor) => {
    const motors = layout.motors
      .filter(({ armIndex }) => armIndex === motor.armIndex)
      .map(({ name }) => name);
    const middle = sizes.middleWidth === undefined ? [] : [{ at: 0.5, width: sizes.middleWidth }];
    return {
      name: `${motors.length > 1 ? motor.name.replace(/ above$/, '') : motor.name} arm`,
      motors,
      root: rootOf(layout, motor, sizes),
      tip: [motor.position[0], motor.position[1], 0],
      outline: [{ at: 0, width: sizes.rootWidth }, ...middle, { at: 1, width: sizes.tipWidth }],
      padDiameter: sizes.padDiameter,
      thickness: sizes.thickness,
      clampedLength: sizes.clampedLength,
    };
  });
}

function rootOf(layout: Layout, motor: MotorPlace, sizes: ArmSizes): Vector3 {
  const [x, y] = motor.position;
  const { bodyHalfLength, bodyHalfWidth } = sizes;
  if (Math.abs(x) <= bodyHalfLength && Math.abs(y) <= bodyHalfWidth) {
    throw new RangeError(`bodyHalfLength: the ${motor.name} motor stands inside the body`);
  }
  const sideways = layout.kind === 'H' || (layout.kind === 'dead cat' && x > 0);
  if (sideways && Math.abs(y) > bodyHalfWidth) {
    const along = Math.min(bodyHalfLength, Math.max(-bodyHalfLength, x));
    return [along, Math.sign(y) * bodyHalfWidth, 0];
  }
  const scale = Math.min(
    x === 0 ? Number.POSITIVE_INFINITY : bodyHalfLength / Math.abs(x),
    y === 0 ? Number.POSITIVE_INFINITY : bodyHalfWidth / Math.abs(y),
  );
  return [x * scale, y * scale, 0];
}
