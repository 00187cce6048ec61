import { cross3, dot3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import { length3, offset3, type Solid, unit3 } from './solid.ts';
import type { Ball, Ring } from './types.ts';

/** Where the eye is and how far a drawn edge may stray from a round one [rad]. */
export interface Roundness {
  readonly eye: Vector3;
  readonly tolerance: number;
}

/** A cylinder about an axis, or a flat disc when its height is 0. Lengths [m]. */
export function cylinder(
  centre: Vector3,
  axis: Vector3,
  radius: number,
  height: number,
  roundness: Roundness,
): Solid {
  const sides = sidesOf(centre, radius, roundness);
  const corners = new Float64Array(6 * sides);
  writeCircle(corners, 0, sides, centre, axis, radius, -height / 2);
  writeCircle(corners, 3 * sides, sides, centre, axis, radius, height / 2);
  return { sides, corners };
}

/** The tangent circle is what an eye outside sees of a ball. */
export function ballSolid({ centre, radius }: Ball, roundness: Roundness): Solid {
  const toBall = subtract3(centre, roundness.eye);
  const nearer = 1 - (radius / length3(toBall)) ** 2;
  if (!(nearer > 0)) return cylinder(centre, [0, 0, 1], 2 * radius, 4 * radius, roundness);
  const tangentCentre = offset3(roundness.eye, [nearer, toBall]);
  return cylinder(tangentCentre, toBall, radius * Math.sqrt(nearer), 0, roundness);
}

/** A hoop's outside as one solid, and the two ends of the bore in it. */
export function hoop(ring: Ring, roundness: Roundness): { outside: Solid; bore: Bore } {
  const { centre, axis, innerRadius, outerRadius, height } = ring;
  const along = unit3(axis);
  const end = (side: number) =>
    cylinder(offset3(centre, [(side * height) / 2, along]), axis, innerRadius, 0, roundness);
  const toEye = subtract3(roundness.eye, centre);
  const lift = dot3(toEye, along);
  const off = length3(offset3(toEye, [-lift, along]));
  const beside = Math.abs(lift) >= height / 2 || off >= outerRadius;
  return {
    outside: cylinder(centre, axis, outerRadius, height, roundness),
    bore: {
      ends: [end(-1), end(1)],
      eye: beside ? 'outside' : off < innerRadius ? 'in the bore' : 'in the wall',
    },
  };
}

/** A hole right through a solid. An eye outside looks through it where it sees both ends at once. */
export interface Bore {
  readonly ends: readonly [Solid, Solid];
  readonly eye: 'outside' | 'in the bore' | 'in the wall';
}

/** Enough sides that one's sagitta, radius (pi / n)^2 / 2, stays small as the eye sees it. */
function sidesOf(centre: Vector3, radius: number, { eye, tolerance }: Roundness): number {
  const distance = Math.max(length3(subtract3(centre, eye)) - radius, radius / 8);
  const wanted = Math.ceil(Math.PI * Math.sqrt(radius / (2 * tolerance * distance)));
  return Math.min(96, Math.max(12, wanted));
}

/** A polygon of the circle's area: its corners lie a little outside the circle. */
function writeCircle(
  corners: Float64Array,
  start: number,
  sides: number,
  centre: Vector3,
  axis: Vector3,
  radius: number,
  lift: number,
): void {
  const along = unit3(axis);
  const first = unit3(cross3(along, Math.abs(along[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]));
  const second = cross3(along, first);
  const step = (2 * Math.PI) / sides;
  const reach = radius * Math.sqrt(step / Math.sin(step));
  const [x, y, z] = offset3(centre, [lift, along]);
  for (let i = 0; i < sides; i++) {
    const [c, s] = [reach * Math.cos(i * step), reach * Math.sin(i * step)];
    corners[start + 3 * i] = x + c * first[0] + s * second[0];
    corners[start + 3 * i + 1] = y + c * first[1] + s * second[1];
    corners[start + 3 * i + 2] = z + c * first[2] + s * second[2];
  }
}
