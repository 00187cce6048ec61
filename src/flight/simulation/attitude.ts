import type { Vector3 } from '../../numerics/vector3.ts';

/** Unit quaternion w x y z, turning vectors of the craft into the world. */
export type Quaternion = readonly [w: number, x: number, y: number, z: number];

/** Yaw about z, then pitch about y, then roll about x [rad]: the aircraft's usual order (ISO 1151-1). */
export function quaternionOf([roll, pitch, yaw]: Vector3): Quaternion {
  const [cr, sr] = [Math.cos(roll / 2), Math.sin(roll / 2)];
  const [cp, sp] = [Math.cos(pitch / 2), Math.sin(pitch / 2)];
  const [cy, sy] = [Math.cos(yaw / 2), Math.sin(yaw / 2)];
  return [
    cr * cp * cy + sr * sp * sy,
    sr * cp * cy - cr * sp * sy,
    cr * sp * cy + sr * cp * sy,
    cr * cp * sy - sr * sp * cy,
  ];
}

/** Roll, pitch, yaw [rad]; at pitch +-90 degrees roll and yaw run together and only their sum or difference means anything. */
export function anglesOf(state: Readonly<Float64Array>, offset: number): Vector3 {
  const w = state[offset] as number;
  const x = state[offset + 1] as number;
  const y = state[offset + 2] as number;
  const z = state[offset + 3] as number;
  return [
    Math.atan2(2 * (w * x + y * z), 1 - 2 * (x * x + y * y)),
    Math.asin(Math.max(-1, Math.min(1, 2 * (w * y - z * x)))),
    Math.atan2(2 * (w * z + x * y), 1 - 2 * (y * y + z * z)),
  ];
}

/** Rows of the rotation of the quaternion at `offset`, craft into world, written into `out` (9). */
export function writeRotation(state: Readonly<Float64Array>, offset: number, out: Float64Array): void {
  const w = state[offset] as number;
  const x = state[offset + 1] as number;
  const y = state[offset + 2] as number;
  const z = state[offset + 3] as number;
  out[0] = 1 - 2 * (y * y + z * z);
  out[1] = 2 * (x * y - w * z);
  out[2] = 2 * (x * z + w * y);
  out[3] = 2 * (x * y + w * z);
  out[4] = 1 - 2 * (x * x + z * z);
  out[5] = 2 * (y * z - w * x);
  out[6] = 2 * (x * z - w * y);
  out[7] = 2 * (y * z + w * x);
  out[8] = 1 - 2 * (x * x + y * y);
}
