import { polygonMoments } from '../numerics/polygon.ts';
import { apply3, transpose3, type Vector3 } from '../numerics/vector3.ts';
import { orientationMatrix } from './massProperties.ts';
import { barOutline } from './primitives.ts';
import type { Axis, DragArea, DragAreas, MassItem, Point2, Primitive } from './types.ts';

/**
 * Drag areas of one part alone in the wind, from ahead, from the side and from above; sum them for a
 * craft (no shielding, no interference).
 *
 * Coefficients after Hoerner, Fluid-Dynamic Drag (1965), ch. 3, from memory: flat faces
 * 1.10 + 0.02 (a/b + b/a), lowered by their depth like a blunt cylinder's (1.15 at no depth, 0.90 at
 * one diameter, 0.85 at two); cylinders across the wind by fineness (0.64 at 1, 0.74 at 5, 0.82 at 10,
 * 1.20 endless). Reynolds numbers 1e3 to 2e5, sharp edges. A part turned out of the axes takes the
 * cross-flow pressure of each face, (cosine)2 of its normal velocity; slender rods (cosine)3 as
 * Hoerner has for yawed rods.
 */
export function dragAreas(item: MassItem): DragAreas {
  const toOwn = transpose3(orientationMatrix(item.orientation));
  const faces = facesOf(item.primitive);
  const from = (wind: Vector3): DragArea => {
    const own = apply3(toOwn, wind);
    return facing(faces, own);
  };
  return { front: from([1, 0, 0]), side: from([0, 1, 0]), top: from([0, 0, 1]) };
}

/** A body's face areas and coefficients to its own axes; `round` names the axis it is round about. */
interface Faces {
  readonly x: DragArea;
  readonly y: DragArea;
  readonly z: DragArea;
  readonly round?: Axis;
  readonly slender: boolean;
}

function facing(faces: Faces, direction: Vector3): DragArea {
  const [dx, dy, dz] = direction.map(Math.abs) as [number, number, number];
  const shares =
    faces.round === undefined
      ? ([
          [faces.x, dx],
          [faces.y, dy],
          [faces.z, dz],
        ] as const)
      : roundShares(faces, faces.round, dx, dy, dz);
  let area = 0;
  let drag = 0;
  for (const [face, cosine] of shares) {
    area += face.area * cosine;
    drag += face.area * face.coefficient * cosine ** (faces.slender ? 3 : 2);
  }
  return { area, coefficient: area > 0 ? drag / area : 0 };
}

function roundShares(faces: Faces, axis: Axis, dx: number, dy: number, dz: number) {
  switch (axis) {
    case 'x':
      return [
        [faces.x, dx],
        [faces.y, Math.hypot(dy, dz)],
      ] as const;
    case 'y':
      return [
        [faces.y, dy],
        [faces.x, Math.hypot(dx, dz)],
      ] as const;
    case 'z':
      return [
        [faces.z, dz],
        [faces.x, Math.hypot(dx, dy)],
      ] as const;
  }
}

function facesOf(p: Primitive): Faces {
  const none: DragArea = { area: 0, coefficient: 0 };
  switch (p.kind) {
    case 'point':
      return { x: none, y: none, z: none, slender: false };
    case 'box':
      return blockFaces(p.length, p.width, p.height, p.length * p.width, false);
    case 'plate':
      return outlineFaces(p.outline, p.thickness, false);
    case 'taperedBar':
      return outlineFaces(barOutline(p), p.thickness, true);
    case 'cylinder':
      return roundFaces(p.diameter, p.height, (Math.PI / 4) * p.diameter ** 2, p.axis ?? 'z', false);
    case 'tube':
      return tubeFaces(p.outerDiameter, p.innerDiameter, p.height, p.axis ?? 'z');
    case 'rod':
      return roundFaces(p.diameter, p.length, (Math.PI / 4) * p.diameter ** 2, p.axis ?? 'x', true);
  }
}

function outlineFaces(outline: readonly Point2[], thickness: number, slender: boolean): Faces {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const length = Math.max(...xs) - Math.min(...xs);
  const width = Math.max(...ys) - Math.min(...ys);
  return blockFaces(length, width, thickness, polygonMoments(outline).area, slender);
}

function blockFaces(length: number, width: number, height: number, topArea: number, slender: boolean): Faces {
  return {
    x: { area: width * height, coefficient: flatFace(width, height, length) },
    y: { area: length * height, coefficient: flatFace(length, height, width) },
    z: { area: topArea, coefficient: flatFace(length, width, height) },
    slender,
  };
}

function flatFace(a: number, b: number, depth: number): number {
  return (1.1 + 0.02 * (a / b + b / a)) * (bluntDepth(depth / Math.min(a, b)) / 1.15);
}

const bluntDepth = (fineness: number): number =>
  fineness < 1 ? 1.15 - 0.25 * fineness : Math.max(0.85, 0.9 - 0.05 * (fineness - 1));

function roundFaces(diameter: number, height: number, end: number, axis: Axis, slender: boolean): Faces {
  const across = { area: diameter * height, coefficient: crossCylinder(height / diameter) };
  const along = { area: end, coefficient: bluntDepth(height / diameter) };
  return {
    x: axis === 'x' ? along : across,
    y: axis === 'y' ? along : across,
    z: axis === 'z' ? along : across,
    round: axis,
    slender,
  };
}

/** A ring shows two walls to the wind across it, and only its rim along its axis. */
function tubeFaces(outer: number, inner: number, height: number, axis: Axis): Faces {
  const faces = roundFaces(outer, height, (Math.PI / 4) * (outer ** 2 - inner ** 2), axis, false);
  const open = height < outer && inner > 0.8 * outer;
  if (!open) return faces;
  const both = (face: DragArea): DragArea => ({ ...face, coefficient: face.coefficient * 2 });
  return {
    ...faces,
    x: axis === 'x' ? faces.x : both(faces.x),
    y: axis === 'y' ? faces.y : both(faces.y),
    z: axis === 'z' ? faces.z : both(faces.z),
  };
}

/** Finite cylinder across the wind, linear in log fineness between Hoerner's points. */
function crossCylinder(fineness: number): number {
  const points = [
    [1, 0.64],
    [5, 0.74],
    [10, 0.82],
    [40, 0.98],
    [400, 1.2],
  ] as const;
  let [x0, y0] = points[0] as readonly [number, number];
  for (const [x1, y1] of points) {
    if (fineness <= x1) {
      const share = x1 > x0 ? Math.log(Math.max(fineness, x0) / x0) / Math.log(x1 / x0) : 0;
      return y0 + (y1 - y0) * share;
    }
    [x0, y0] = [x1, y1];
  }
  return y0;
}
