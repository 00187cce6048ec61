/** Three components; axes and unit are told where it is used. */
export type Vector3 = readonly [x: number, y: number, z: number];

/** Rows of a 3 x 3 matrix. */
export type Matrix3 = readonly [Vector3, Vector3, Vector3];

export const add3 = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

export const subtract3 = (a: Vector3, b: Vector3): Vector3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const scale3 = (a: Vector3, factor: number): Vector3 => [a[0] * factor, a[1] * factor, a[2] * factor];

export const dot3 = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross3 = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Matrix times column vector. */
export const apply3 = (m: Matrix3, v: Vector3): Vector3 => [dot3(m[0], v), dot3(m[1], v), dot3(m[2], v)];

export const transpose3 = (m: Matrix3): Matrix3 => [
  [m[0][0], m[1][0], m[2][0]],
  [m[0][1], m[1][1], m[2][1]],
  [m[0][2], m[1][2], m[2][2]],
];

export const multiply3 = (a: Matrix3, b: Matrix3): Matrix3 => {
  const columns = transpose3(b);
  return [apply3(columns, a[0]), apply3(columns, a[1]), apply3(columns, a[2])];
};

/**
 * Rotation of body axes into the aircraft's axes (x forward, y right, z down): roll about x first,
 * then pitch about y (positive nose up), then yaw about z (positive to the right). Angles [rad].
 */
export function rotation3(yaw: number, pitch: number, roll: number): Matrix3 {
  const [cy, sy] = [Math.cos(yaw), Math.sin(yaw)];
  const [cp, sp] = [Math.cos(pitch), Math.sin(pitch)];
  const [cr, sr] = [Math.cos(roll), Math.sin(roll)];
  return [
    [cy * cp, cy * sp * sr - sy * cr, cy * sp * cr + sy * sr],
    [sy * cp, sy * sp * sr + cy * cr, sy * sp * cr - cy * sr],
    [-sp, cp * sr, cp * cr],
  ];
}
