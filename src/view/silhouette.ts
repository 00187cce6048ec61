import type { Solid } from './solid.ts';
import type { ViewFrame } from './viewFrame.ts';

/**
 * What an eye sees of a convex solid: a convex polygon of directions in camera axes, x y z one after
 * another, its edges great circles; `everything` when the eye is inside.
 */
export type Silhouette = readonly number[] | 'everything';

/** A solid seen from nearer than this to a face's plane counts as seen from inside or edge-on [m]. */
const NEAR = 1e-7;

/** Share of the distance to a solid that the eye stands outside an end of it to make that end's plane serve. */
const CLEARLY = 0.05;

/**
 * The spherical convex hull of the solid's corners. A face whose plane has the eye on its outer side
 * gives a direction that all corners have a positive part along; on the plane square to it the hull
 * is a plane one, found by Andrew's monotone chain (Andrew 1979, Inf. Proc. Letters 9(5)).
 */
export function silhouette(solid: Solid, view: ViewFrame): Silhouette {
  const points = cornersSeen(solid, view);
  const pole = separatingDirection(points, solid.sides);
  if (pole === undefined) return isFlat(points, solid.sides) ? [] : 'everything';
  const [px, py, pz] = pole;
  // Any two directions square to the pole.
  const [ax, ay, az] = Math.abs(px) < 0.6 ? [0, pz, -py] : [-pz, 0, px];
  const [bx, by, bz] = [py * az - pz * ay, pz * ax - px * az, px * ay - py * ax];
  const count = points.length / 3;
  const u = new Float64Array(count);
  const v = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const x = points[3 * i] as number;
    const y = points[3 * i + 1] as number;
    const z = points[3 * i + 2] as number;
    const depth = x * px + y * py + z * pz;
    u[i] = (x * ax + y * ay + z * az) / depth;
    v[i] = (x * bx + y * by + z * bz) / depth;
  }
  const directions: number[] = [];
  for (const i of hull(u, v)) {
    directions.push(points[3 * i] as number, points[3 * i + 1] as number, points[3 * i + 2] as number);
  }
  return directions;
}

function cornersSeen({ corners }: Solid, { position, toCamera }: ViewFrame): Float64Array {
  const seen = new Float64Array(corners.length);
  const [rowX, rowY, rowZ] = toCamera;
  for (let i = 0; i < corners.length; i += 3) {
    const dx = (corners[i] as number) - position[0];
    const dy = (corners[i + 1] as number) - position[1];
    const dz = (corners[i + 2] as number) - position[2];
    seen[i] = rowX[0] * dx + rowX[1] * dy + rowX[2] * dz;
    seen[i + 1] = rowY[0] * dx + rowY[1] * dy + rowY[2] * dz;
    seen[i + 2] = rowZ[0] * dx + rowZ[1] * dy + rowZ[2] * dz;
  }
  return seen;
}

type Triple = [number, number, number];

const pointAt = (points: Float64Array, i: number): Triple => [
  points[3 * i] as number,
  points[3 * i + 1] as number,
  points[3 * i + 2] as number,
];

/** Inward normal of the face that the eye is furthest outside of, or nothing when it is inside all. */
function separatingDirection(points: Float64Array, sides: number): Triple | undefined {
  const count = points.length / 3;
  let [cx, cy, cz] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    cx += (points[3 * i] as number) / count;
    cy += (points[3 * i + 1] as number) / count;
    cz += (points[3 * i + 2] as number) / count;
  }
  let best: Triple | undefined;
  let furthest = NEAR;
  const consider = (a: number, b: number, c: number) => {
    const [x0, y0, z0] = pointAt(points, a);
    const [x1, y1, z1] = pointAt(points, b);
    const [x2, y2, z2] = pointAt(points, c);
    let nx = (y1 - y0) * (z2 - z0) - (z1 - z0) * (y2 - y0);
    let ny = (z1 - z0) * (x2 - x0) - (x1 - x0) * (z2 - z0);
    let nz = (x1 - x0) * (y2 - y0) - (y1 - y0) * (x2 - x0);
    const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (size < 1e-14) return;
    nx /= size;
    ny /= size;
    nz /= size;
    const plane = nx * x0 + ny * y0 + nz * z0;
    const depth = nx * cx + ny * cy + nz * cz - plane;
    // A flat solid has no inside: its normal is taken away from the eye.
    const inward = Math.abs(depth) > 1e-12 ? Math.sign(depth) : Math.sign(plane);
    if (inward * plane > furthest) {
      furthest = inward * plane;
      best = [inward * nx, inward * ny, inward * nz];
    }
  };
  const third = Math.floor(sides / 3);
  consider(0, third, 2 * third);
  consider(sides, sides + third, sides + 2 * third);
  // An end seen clearly from its outer side does; the many sides are looked at when the eye is beside.
  if (furthest > CLEARLY * Math.sqrt(cx * cx + cy * cy + cz * cz)) return best;
  for (let i = 0; i < sides; i++) {
    const j = (i + 1) % sides;
    // Three corners that stay apart when an end of the solid is narrow.
    consider(i, j, sides + i);
  }
  return best;
}

function isFlat(points: Float64Array, sides: number): boolean {
  for (let i = 0; i < 3 * sides; i++) {
    if (Math.abs((points[i] as number) - (points[3 * sides + i] as number)) > NEAR) return false;
  }
  return true;
}

/** Indices of the convex hull's corners in order, of two convex rings of half the points each. */
function hull(u: Float64Array, v: Float64Array): Int32Array {
  const count = u.length;
  const sides = count / 2;
  const rings = new Int32Array(count);
  sortRing(u, v, 0, sides, rings);
  sortRing(u, v, sides, sides, rings);
  const order = new Int32Array(count);
  merge(u, v, rings.subarray(0, sides), rings.subarray(sides), order);
  const kept = new Int32Array(2 * count);
  const lower = chain(u, v, order, kept, 0);
  const all = chain(u, v, order.reverse(), kept, lower);
  return kept.subarray(0, all);
}

/** Corners of one convex ring from left to right: from its first corner both ways round, merged. */
function sortRing(u: Float64Array, v: Float64Array, start: number, sides: number, out: Int32Array): void {
  let [first, last] = [start, start];
  for (let i = start + 1; i < start + sides; i++) {
    if (before(u, v, i, first)) first = i;
    if (before(u, v, last, i)) last = i;
  }
  const onwards = (last - first + sides) % sides;
  const forth = new Int32Array(onwards + 1);
  const back = new Int32Array(sides - onwards - 1);
  for (let k = 0; k <= onwards; k++) forth[k] = start + ((first - start + k) % sides);
  for (let k = 0; k < back.length; k++) back[k] = start + ((first - start - k - 1 + sides) % sides);
  merge(u, v, forth, back, out.subarray(start, start + sides));
}

function merge(u: Float64Array, v: Float64Array, a: Int32Array, b: Int32Array, out: Int32Array): void {
  let [i, j] = [0, 0];
  for (let k = 0; k < out.length; k++) {
    const left = a[i] as number;
    const right = b[j] as number;
    const takesLeft = j >= b.length || (i < a.length && !before(u, v, right, left));
    out[k] = takesLeft ? left : right;
    if (takesLeft) i++;
    else j++;
  }
}

const before = (u: Float64Array, v: Float64Array, i: number, j: number): boolean => {
  const [a, b] = [u[i] as number, u[j] as number];
  return a < b || (a === b && (v[i] as number) < (v[j] as number));
};

/** One half of Andrew's hull, its last corner left to the other half; returns where `kept` ends. */
function chain(u: Float64Array, v: Float64Array, order: Int32Array, kept: Int32Array, from: number): number {
  let end = from;
  for (const i of order) {
    while (end - from >= 2 && turn(u, v, kept[end - 2] as number, kept[end - 1] as number, i) <= 0) end--;
    kept[end++] = i;
  }
  return end - 1;
}

const turn = (u: Float64Array, v: Float64Array, a: number, b: number, c: number): number =>
  ((u[b] as number) - (u[a] as number)) * ((v[c] as number) - (v[a] as number)) -
  ((v[b] as number) - (v[a] as number)) * ((u[c] as number) - (u[a] as number));
