import type { LensLaw } from './types.ts';

/**
 * Distance from the picture's centre in focal lengths for a ray at an angle off the axis, for drawing
 * and measuring pictures. Kannala and Brandt 2006 (IEEE PAMI 28(8)), eqs. (1), (3), (4), numbered from memory.
 *
 * @param angle off the optical axis [rad], 0 to below pi/2 for rectilinear, 0 to pi for the others
 */
export function lensRadius(law: LensLaw, angle: number): number {
  switch (law) {
    case 'rectilinear':
      return Math.tan(angle);
    case 'equidistant':
      return angle;
    case 'equisolid':
      return 2 * Math.sin(angle / 2);
  }
}

/** Inverse of `lensRadius`: angle off the axis [rad] for a distance in focal lengths (equisolid up to 2). */
export function lensAngle(law: LensLaw, radius: number): number {
  switch (law) {
    case 'rectilinear':
      return Math.atan(radius);
    case 'equidistant':
      return radius;
    case 'equisolid':
      return 2 * Math.asin(Math.min(1, radius / 2));
  }
}

/**
 * How fast the image moves along a radius of the picture per angle, in focal lengths per rad: the
 * derivative of `lensRadius`. One on the axis for every law.
 */
export function lensStretch(law: LensLaw, angle: number): number {
  switch (law) {
    case 'rectilinear':
      return 1 / Math.cos(angle) ** 2;
    case 'equidistant':
      return 1;
    case 'equisolid':
      return Math.cos(angle / 2);
  }
}
