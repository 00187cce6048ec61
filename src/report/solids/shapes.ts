import earcut from 'earcut';
import type { Axis, Point2 } from '../../airframe/types.ts';
import type { Matrix3 } from '../../numerics/vector3.ts';
import { closedMesh, joinedMesh, type Mesh, placedMesh } from './mesh.ts';

/** Straight sides of a circle: its area comes out 0.16 % small. */
export const ROUND = 64;

/** A plan outline between two heights. Corners on a straight line with their neighbours fall away. */
export function prismMesh(outline: readonly Point2[], topZ: number, bottomZ: number): Mesh {
  const corners = withoutStraight(outline);
  const n = corners.length;
  const whole = signedArea(corners);
  const ring = whole > 0 ? corners : corners.toReversed();
  const positions = [...ring.flatMap(([x, y]) => [x, y, topZ]), ...ring.flatMap(([x, y]) => [x, y, bottomZ])];
  const triangles: number[] = [];
  const face = earcut(ring.flat());
  for (let i = 0; i < face.length; i += 3) {
    const [a = 0, b = 0, c = 0] = face.slice(i, i + 3);
    const up = signedArea([ring[a] ?? [0, 0], ring[b] ?? [0, 0], ring[c] ?? [0, 0]]) > 0;
    const [p, q] = up ? [b, c] : [c, b];
    triangles.push(n + a, n + p, n + q, a, q, p);
  }
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    triangles.push(i, j, n + j, i, n + j, n + i);
  }
  return closedMesh(positions, triangles);
}

/**
 * A flat bar along x by its half widths, closed at both ends: what `prismMesh` makes of the same outline,
 * but with corners all along it, so that it can bend and carry colours.
 *
 * @param stations distance and half width, rising; a last half width of 0 ends it in an edge
 * @param step longest piece between two stations [m]
 */
export function barMesh(
  stations: readonly (readonly [x: number, half: number])[],
  thickness: number,
  step: number,
): Mesh {
  const along = refined(stations, step);
  const positions: number[] = [];
  const triangles: number[] = [];
  const rings = along.map(([x, half]): readonly number[] => {
    const first = positions.length / 3;
    const [up, down] = [-thickness / 2, thickness / 2];
    if (half === 0) {
      positions.push(x, 0, up, x, 0, down);
      return [first, first, first + 1, first + 1];
    }
    positions.push(x, -half, up, x, half, up, x, half, down, x, -half, down);
    return [first, first + 1, first + 2, first + 3];
  });
  const quad = (a: number, b: number, c: number, d: number): void => {
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c);
    if (a !== c && c !== d && d !== a) triangles.push(a, c, d);
  };
  for (let k = 1; k < rings.length; k++) {
    const [from, to] = [rings[k - 1] ?? [], rings[k] ?? []];
    for (let i = 0; i < 4; i++) {
      const j = (i + 1) % 4;
      quad(from[i] ?? 0, to[i] ?? 0, to[j] ?? 0, from[j] ?? 0);
    }
  }
  const [a = 0, b = 0, c = 0, d = 0] = rings[0] ?? [];
  quad(a, b, c, d);
  const [e = 0, f = 0, g = 0, h = 0] = rings.at(-1) ?? [];
  quad(h, g, f, e);
  return closedMesh(positions, triangles);
}

function refined(
  stations: readonly (readonly [x: number, half: number])[],
  step: number,
): readonly (readonly [number, number])[] {
  return stations.flatMap(([x, half], i): (readonly [number, number])[] => {
    const before = stations[i - 1];
    if (before === undefined) return [[x, half]];
    const pieces = Math.max(1, Math.ceil((x - before[0]) / step));
    return Array.from({ length: pieces }, (_, k) => {
      const share = (k + 1) / pieces;
      return [before[0] + share * (x - before[0]), before[1] + share * (half - before[1])];
    });
  });
}

/**
 * A closed profile turned round the z axis.
 *
 * @param profile radius and height of its corners in order; both ends may lie on the axis
 */
export function turnedMesh(profile: readonly (readonly [radius: number, z: number])[], sides = ROUND): Mesh {
  const positions: number[] = [];
  const rings = profile.map(([radius, z]): readonly number[] => {
    const first = positions.length / 3;
    if (radius === 0) {
      positions.push(0, 0, z);
      return Array.from({ length: sides }, () => first);
    }
    return Array.from({ length: sides }, (_, k) => {
      const angle = (2 * Math.PI * k) / sides;
      positions.push(radius * Math.cos(angle), radius * Math.sin(angle), z);
      return first + k;
    });
  });
  const triangles: number[] = [];
  for (let i = 0; i < rings.length; i++) {
    const [from, to] = [rings[i] ?? [], rings[(i + 1) % rings.length] ?? []];
    for (let k = 0; k < sides; k++) {
      const next = (k + 1) % sides;
      const [a = 0, b = 0, c = 0, d = 0] = [from[k], from[next], to[next], to[k]];
      if (a !== b && b !== c && a !== c) triangles.push(a, b, c);
      if (a !== c && c !== d && a !== d) triangles.push(a, c, d);
    }
  }
  return closedMesh(positions, triangles);
}

/** A tube, or with no inner diameter a full cylinder, about its own middle along an axis. */
export function tubeMesh(outer: number, inner: number, height: number, axis: Axis = 'z'): Mesh {
  const [top, bottom] = [-height / 2, height / 2];
  const [r, hole] = [outer / 2, inner / 2];
  const upright = turnedMesh([
    [hole, top],
    [r, top],
    [r, bottom],
    [hole, bottom],
  ]);
  return axis === 'z' ? upright : placedMesh(upright, [0, 0, 0], axis === 'x' ? ALONG_X : ALONG_Y);
}

/** Turns an upright part forward: its top, at -z, comes to the front. */
export const ALONG_X: Matrix3 = [
  [0, 0, -1],
  [0, 1, 0],
  [1, 0, 0],
];
const ALONG_Y: Matrix3 = [
  [1, 0, 0],
  [0, 0, 1],
  [0, -1, 0],
];

/** About its own middle. */
export function boxMesh(length: number, width: number, height: number): Mesh {
  const [l, w] = [length / 2, width / 2];
  const outline: readonly Point2[] = [
    [-l, -w],
    [l, -w],
    [l, w],
    [-l, w],
  ];
  return prismMesh(outline, -height / 2, height / 2);
}

/** Boxes by their middles and sizes, as one mesh. */
export const boxesMesh = (
  boxes: readonly { readonly at: readonly [number, number, number]; readonly size: readonly number[] }[],
): Mesh =>
  joinedMesh(
    boxes.map(({ at, size: [length = 0, width = 0, height = 0] }) =>
      placedMesh(boxMesh(length, width, height), at),
    ),
  );

function withoutStraight(outline: readonly Point2[]): readonly Point2[] {
  return outline.filter((point, i) => {
    const before = outline[(i + outline.length - 1) % outline.length] ?? point;
    const after = outline[(i + 1) % outline.length] ?? point;
    return Math.abs(signedArea([before, point, after])) > 1e-14;
  });
}

function signedArea(corners: readonly Point2[]): number {
  return corners.reduce((sum, [x, y], i) => {
    const [nx, ny] = corners[(i + 1) % corners.length] ?? [0, 0];
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}
