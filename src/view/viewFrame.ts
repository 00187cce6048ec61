import { type Matrix3, rotation3, transpose3 } from '../numerics/vector3.ts';
import { lensAngle, lensRadius } from './lens.ts';
import type { Camera, LensLaw, PicturePoint } from './types.ts';

/** A camera made ready for projecting: where it is, which way round, and its focal length. */
export interface ViewFrame {
  readonly position: Camera['position'];
  /** Build axes to camera axes (x along the optical axis, y right, z down in the picture). */
  readonly toCamera: Matrix3;
  readonly law: LensLaw;
  /** [pixels] */
  readonly focal: number;
  readonly width: number;
  readonly height: number;
  /** Angle off the axis at the picture's corners [rad]. */
  readonly cornerAngle: number;
}

/** A rectilinear picture stretches without end towards 90 degrees off its axis. */
const RECTILINEAR_LIMIT = (85 * Math.PI) / 180;
/** Kept clear of the point straight behind, where a fisheye's picture tears. */
const FISHEYE_LIMIT = (150 * Math.PI) / 180;

/**
 * @throws RangeError when sizes or field of view are not positive, or the corners look further off
 * the axis than 85 degrees (rectilinear) or 150 degrees (fisheye)
 */
export function viewFrame(camera: Camera): ViewFrame {
  const { width, height, lensLaw: law, field } = camera;
  if (!(width > 0 && height > 0)) {
    throw new RangeError(`width and height must be above 0 pixels; found ${width} x ${height}`);
  }
  const diagonal = Math.hypot(width, height);
  const limit = law === 'rectilinear' ? RECTILINEAR_LIMIT : FISHEYE_LIMIT;
  if (!(field.angle > 0 && field.angle <= 2 * limit)) {
    throw new RangeError(`field.angle must be above 0 and at most ${2 * limit} rad; found ${field.angle}`);
  }
  const span = field.across === 'width' ? width : diagonal;
  const focal = span / 2 / lensRadius(law, field.angle / 2);
  const cornerRadius = diagonal / 2 / focal;
  const cornerAngle = law === 'equisolid' && cornerRadius > 2 ? Math.PI : lensAngle(law, cornerRadius);
  if (cornerAngle > limit + 1e-12) {
    throw new RangeError(
      `field.angle: the picture's corners must look at most ${limit} rad off the axis; found ${cornerAngle}`,
    );
  }
  return {
    position: camera.position,
    toCamera: transpose3(rotation3(camera.yaw, camera.pitch, camera.roll)),
    law,
    focal,
    width,
    height,
    cornerAngle,
  };
}

/**
 * Where a direction in camera axes (any length > 0) falls in the picture [pixels]; a rectilinear
 * lens needs x > 0.
 */
export function imageOf(view: ViewFrame, x: number, y: number, z: number): PicturePoint {
  const across = Math.sqrt(y * y + z * z);
  const scale =
    view.law === 'rectilinear'
      ? view.focal / x
      : across > 0
        ? (view.focal * lensRadius(view.law, Math.atan2(across, x))) / across
        : 0;
  return { x: view.width / 2 + y * scale, y: view.height / 2 + z * scale };
}
