import type { Vector3 } from '../numerics/vector3.ts';

/**
 * A convex solid between two rings of `sides` corners each, joined side by side: a block, a prism, a
 * cylinder. Flat where both rings are the same. Places [m] in build axes, x y z one after another,
 * first ring then second.
 */
export interface Solid {
  readonly sides: number;
  readonly corners: Float64Array;
}

export function solid(first: readonly Vector3[], second: readonly Vector3[]): Solid {
  return { sides: first.length, corners: Float64Array.from([...first, ...second].flat()) };
}

export const length3 = (a: Vector3): number => Math.hypot(a[0], a[1], a[2]);

/** @throws RangeError for a direction without length */
export function unit3(v: Vector3): Vector3 {
  const size = length3(v);
  if (!(size > 0)) throw new RangeError('a direction must have a length above 0; found 0');
  return [v[0] / size, v[1] / size, v[2] / size];
}

/** A place plus multiples of directions. */
export function offset3(place: Vector3, ...steps: readonly (readonly [number, Vector3])[]): Vector3 {
  let [x, y, z] = place;
  for (const [amount, direction] of steps) {
    x += amount * direction[0];
    y += amount * direction[1];
    z += amount * direction[2];
  }
  return [x, y, z];
}
