import type { FrameGeometry } from '../../airframe/types.ts';
import { distanceToPolygon } from '../../numerics/polygon.ts';
import type { Vector3 } from '../../numerics/vector3.ts';

/** From a point to the nearest plate of a frame [m]; 0 inside one. Arms lie within 20 mm of the plates or lower. */
export function carbonDistance(frame: FrameGeometry, [x, y, z]: Vector3): number {
  return frame.plates.reduce((least, plate) => {
    const beside = Math.max(0, distanceToPolygon([x, y], plate.outline).distance);
    const over = Math.max(0, Math.abs(z - plate.z) - plate.thickness / 2);
    return Math.min(least, Math.hypot(beside, over));
  }, Number.POSITIVE_INFINITY);
}
