import { polygonMoments } from '../numerics/polygon.ts';
import type { Matrix3, Vector3 } from '../numerics/vector3.ts';
import type { Axis, Point2, Primitive } from './types.ts';

/** A solid of unit density in its own axes, about its own centre of mass. */
export interface Solid {
  /** [m3]; 0 for a point */
  readonly volume: number;
  /** Centre of mass from the primitive's reference point [m]. */
  readonly centre: Vector3;
  /** Inertia about the centre of mass over the mass [m2]. */
  readonly gyration: Matrix3;
}

/**
 * Volume, centre and inertia of a primitive of even density.
 *
 * Box (m/12)(b2 + c2), cylinder m r2/2 and m(3r2 + h2)/12, tube with R2 + r2, slender rod m l2/12:
 * Beer and Johnston, Vector Mechanics, table of mass moments of inertia (from memory). Plates and
 * bars from the outline's second moments plus thickness, exact for a flat prism.
 *
 * @throws RangeError for a size that is not positive and finite
 */
export function solidOf(primitive: Primitive): Solid {
  switch (primitive.kind) {
    case 'point':
      return { volume: 0, centre: [0, 0, 0], gyration: diagonal(0, 0, 0) };
    case 'box': {
      const { length, width, height } = checked(primitive, ['length', 'width', 'height']);
      const [a, b, c] = [length ** 2 / 12, width ** 2 / 12, height ** 2 / 12];
      return { volume: length * width * height, centre: [0, 0, 0], gyration: diagonal(b + c, a + c, a + b) };
    }
    case 'cylinder': {
      const { diameter, height } = checked(primitive, ['diameter', 'height']);
      return tubeSolid(diameter / 2, 0, height, primitive.axis ?? 'z');
    }
    case 'tube': {
      const { outerDiameter, innerDiameter, height } = checked(primitive, ['outerDiameter', 'height']);
      if (!(innerDiameter >= 0 && innerDiameter < outerDiameter)) {
        throw new RangeError(
          `innerDiameter: must be from 0 to under ${outerDiameter} m, got ${innerDiameter}`,
        );
      }
      return tubeSolid(outerDiameter / 2, innerDiameter / 2, height, primitive.axis ?? 'z');
    }
    case 'rod': {
      const { length, diameter } = checked(primitive, ['length', 'diameter']);
      return tubeSolid(diameter / 2, 0, length, primitive.axis ?? 'x');
    }
    case 'plate':
      return prism(primitive.outline, checked(primitive, ['thickness']).thickness);
    case 'taperedBar': {
      const { thickness } = checked(primitive, ['length', 'rootWidth', 'tipWidth', 'thickness']);
      return prism(barOutline(primitive), thickness);
    }
  }
}

/** Plan outline of a tapered bar from the middle of its root face along x [m]. */
export function barOutline(bar: {
  readonly length: number;
  readonly rootWidth: number;
  readonly tipWidth: number;
}): readonly Point2[] {
  const [l, r, t] = [bar.length, bar.rootWidth / 2, bar.tipWidth / 2];
  return [
    [0, -r],
    [l, -t],
    [l, t],
    [0, r],
  ];
}

function prism(outline: readonly Point2[], thickness: number): Solid {
  const { area, centroid, xx, yy, xy } = polygonMoments(outline);
  const [cx, cy] = centroid;
  const [gxx, gyy, gxy] = [xx / area - cx * cx, yy / area - cy * cy, xy / area - cx * cy];
  const gzz = thickness ** 2 / 12;
  return {
    volume: area * thickness,
    centre: [cx, cy, 0],
    gyration: [
      [gyy + gzz, -gxy, 0],
      [-gxy, gxx + gzz, 0],
      [0, 0, gxx + gyy],
    ],
  };
}

function tubeSolid(outer: number, inner: number, height: number, axis: Axis): Solid {
  const square = outer ** 2 + inner ** 2;
  const along = square / 2;
  const across = square / 4 + height ** 2 / 12;
  return {
    volume: Math.PI * (outer ** 2 - inner ** 2) * height,
    centre: [0, 0, 0],
    gyration: diagonal(
      axis === 'x' ? along : across,
      axis === 'y' ? along : across,
      axis === 'z' ? along : across,
    ),
  };
}

const diagonal = (x: number, y: number, z: number): Matrix3 => [
  [x, 0, 0],
  [0, y, 0],
  [0, 0, z],
];

function checked<P extends Primitive>(primitive: P, names: readonly (keyof P)[]): P {
  for (const name of names) {
    const size = primitive[name];
    if (!(typeof size === 'number' && size > 0 && Number.isFinite(size))) {
      throw new RangeError(`${String(name)}: a ${primitive.kind} needs it over 0 m, got ${String(size)}`);
    }
  }
  return primitive;
}
