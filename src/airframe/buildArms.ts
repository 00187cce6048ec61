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
    const root = rootOf(layout, motor, sizes);
    const middle = sizes.middleWidth === undefined ? [] : [{ at: 0.5, width: sizes.middleWidth }];
    return {
      name: `${motors.length > 1 ? motor.name.replace(/ above$/, '') : motor.name} arm`,
      motors,
      root,
      tip: [motor.position[0], motor.position[1], 0],
      outline: [{ at: 0, width: sizes.rootWidth }, ...middle, { at: 1, width: sizes.tipWidth }],
      padDiameter: sizes.padDiameter,
      thickness: sizes.thickness,
      clampedLength: Math.min(sizes.clampedLength, roomInside(root, motor.position, sizes.rootWidth)),
    };
  });
}

/**
 * How far an arm can run on inside the body before it meets its mirror image or its neighbours [m]: one
 * that points at the middle stops half its width short of it, one that runs sideways at the centre line.
 */
function roomInside(root: Vector3, motor: Vector3, width: number): number {
  const [dx, dy] = [motor[0] - root[0], motor[1] - root[1]];
  const length = Math.hypot(dx, dy);
  const offMiddle = Math.abs(root[0] * dy - root[1] * dx) / length;
  const toMiddle = Math.hypot(root[0], root[1]) - width / 2;
  if (offMiddle < width / 2 || dy === 0) return Math.max(0, toMiddle);
  // Its inner corner that lies nearer the centre line is the one that arrives there first.
  const toCentreLine = (Math.abs(root[1]) - ((width / 2) * Math.abs(dx)) / length) / (Math.abs(dy) / length);
  return Math.max(0, toCentreLine);
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
