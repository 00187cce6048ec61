import { apply3, cross3, rotation3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import { offset3, type Solid, solid, unit3 } from './solid.ts';
import { triangulate } from './triangulate.ts';
import type { Bar, Box, Plate } from './types.ts';

/** The corners of a rectangle in units of its half sides, in order round it. */
const CORNERS = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const;

export function barSolid(bar: Bar): Solid {
  const along = unit3(subtract3(bar.to, bar.from));
  const across = unit3(cross3(bar.normal ?? [0, 0, 1], along));
  const up = cross3(along, across);
  const end = (centre: Vector3, width: number) =>
    CORNERS.map(([a, b]) => offset3(centre, [(a * width) / 2, across], [(b * bar.thickness) / 2, up]));
  return solid(end(bar.from, bar.widthFrom), end(bar.to, bar.widthTo));
}

export function boxSolid({ centre, size, turned }: Box): Solid {
  const rotation = rotation3(turned?.yaw ?? 0, turned?.pitch ?? 0, turned?.roll ?? 0);
  const face = (c: number) =>
    CORNERS.map(([a, b]) =>
      offset3(centre, [0.5, apply3(rotation, [a * size[0], b * size[1], c * size[2]])]),
    );
  return solid(face(-1), face(1));
}

export function plateSolids({ outline, z, thickness }: Plate): Solid[] {
  return triangulate(outline).map((triangle) => {
    const face = (height: number) => triangle.map(([x, y]): Vector3 => [x, y, height]);
    return solid(face(z - thickness / 2), face(z + thickness / 2));
  });
}
