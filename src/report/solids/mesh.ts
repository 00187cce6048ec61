import { add3, apply3, type Matrix3, type Vector3 } from '../../numerics/vector3.ts';

/**
 * A closed surface of triangles, as plain numbers. Corners are shared between neighbours, and a
 * triangle's corners run anticlockwise seen from outside (right-handed axes).
 */
export interface Mesh {
  /** Three a corner [m]. */
  readonly positions: Float32Array;
  /** Three corners a triangle. */
  readonly triangles: Uint32Array;
}

/** A mesh from loose numbers, turned outside out if it came inside out. */
export function closedMesh(positions: readonly number[], triangles: readonly number[]): Mesh {
  const mesh = { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
  if (meshVolume(mesh) >= 0) return mesh;
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const kept = mesh.triangles[i + 1] as number;
    mesh.triangles[i + 1] = mesh.triangles[i + 2] as number;
    mesh.triangles[i + 2] = kept;
  }
  return mesh;
}

/** What a closed mesh encloses, by the divergence theorem [m3]. */
export function meshVolume({ positions, triangles }: Mesh): number {
  const at = (corner: number, axis: number): number =>
    positions[3 * (triangles[corner] as number) + axis] as number;
  let six = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [ax, ay, az] = [at(i, 0), at(i, 1), at(i, 2)];
    const [bx, by, bz] = [at(i + 1, 0), at(i + 1, 1), at(i + 1, 2)];
    const [cx, cy, cz] = [at(i + 2, 0), at(i + 2, 1), at(i + 2, 2)];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** Turned, then moved. */
export function placedMesh(mesh: Mesh, place: Vector3, turn?: Matrix3): Mesh {
  const positions = new Float32Array(mesh.positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const own: Vector3 = [
      mesh.positions[i] as number,
      mesh.positions[i + 1] as number,
      mesh.positions[i + 2] as number,
    ];
    positions.set(add3(turn ? apply3(turn, own) : own, place), i);
  }
  return { positions, triangles: mesh.triangles };
}

/** Several closed meshes as one. */
export function joinedMesh(meshes: readonly Mesh[]): Mesh {
  const positions = meshes.flatMap((mesh) => Array.from(mesh.positions));
  let before = 0;
  const triangles = meshes.flatMap((mesh) => {
    const shift = before;
    before += mesh.positions.length / 3;
    return Array.from(mesh.triangles, (corner) => corner + shift);
  });
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Smallest and largest coordinate along each axis [m]. */
export interface Bounds {
  readonly low: Vector3;
  readonly high: Vector3;
}

export function boundsOf(meshes: readonly Mesh[]): Bounds {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const { positions } of meshes) {
    for (let i = 0; i < positions.length; i++) {
      low[i % 3] = Math.min(low[i % 3] as number, positions[i] as number);
      high[i % 3] = Math.max(high[i % 3] as number, positions[i] as number);
    }
  }
  const spot = ([x = 0, y = 0, z = 0]: readonly number[]): Vector3 => [x, y, z];
  return { low: spot(low), high: spot(high) };
}
