import { dragAreas } from '../../airframe/dragAreas.ts';
import { orientationMatrix } from '../../airframe/massProperties.ts';
import type { DragArea, DragAreas, MassItem } from '../../airframe/types.ts';
import { type Matrix3, transpose3, type Vector3 } from '../../numerics/vector3.ts';

/** One slender bar in the wind: an arm, a boom, an antenna. */
export interface BarDrag {
  /** Unit vectors, in the aircraft's axes: along the bar, then the two across it. */
  readonly axes: Matrix3;
  /** Drag coefficient times area seen along each of `axes` [m2]: end, flank, face. */
  readonly areas: Vector3;
}

/** A craft's parts by how their drag goes with the angle of the wind. */
export interface BodyDrag {
  /** Boxes, plates, packs, cameras, motors, hoops, summed. */
  readonly bluff: DragAreas;
  /** Bars and rods, one by one. */
  readonly bars: readonly BarDrag[];
}

/** Sorts parts by kind and adds up the bluff ones, with no shielding or interference. Coefficients: `dragAreas`. */
export function bodyDragOf(items: readonly MassItem[]): BodyDrag {
  const bars: BarDrag[] = [];
  const bluff: DragAreas[] = [];
  for (const item of items) {
    const axes = barAxes(item);
    if (axes === undefined) {
      bluff.push(dragAreas(item));
      continue;
    }
    const own = dragAreas({ ...item, orientation: {} });
    const faces = [own.front, own.side, own.top].map((face) => face.area * face.coefficient);
    const [first, second, third] = axes.order;
    bars.push({
      axes: axes.axes,
      areas: [faces[first] ?? 0, faces[second] ?? 0, faces[third] ?? 0],
    });
  }
  const sum = (face: keyof DragAreas): DragArea => {
    const area = bluff.reduce((total, one) => total + one[face].area, 0);
    const drag = bluff.reduce((total, one) => total + one[face].area * one[face].coefficient, 0);
    return { area, coefficient: area > 0 ? drag / area : 0 };
  };
  return { bluff: { front: sum('front'), side: sum('side'), top: sum('top') }, bars };
}

type Order = readonly [along: number, across: number, over: number];

function barAxes(item: MassItem): { readonly axes: Matrix3; readonly order: Order } | undefined {
  const { primitive } = item;
  if (primitive.kind !== 'taperedBar' && primitive.kind !== 'rod') return undefined;
  const long = primitive.kind === 'rod' ? (primitive.axis ?? 'x') : 'x';
  const order: Order = long === 'x' ? [0, 1, 2] : long === 'y' ? [1, 2, 0] : [2, 0, 1];
  const own = transpose3(orientationMatrix(item.orientation));
  return { axes: [own[order[0]] as Vector3, own[order[1]] as Vector3, own[order[2]] as Vector3], order };
}

/** Drag coefficient times area along the aircraft's axes [m2]. */
export const bluffAreas = (drag: DragAreas): Vector3 => [
  drag.front.area * drag.front.coefficient,
  drag.side.area * drag.side.coefficient,
  drag.top.area * drag.top.coefficient,
];

/**
 * Force of the air on a body moving through it, along the body's axes [N].
 *
 *   bluff   F_i = -1/2 rho |V| V_i CdA_i
 *   bar     F_i = -1/2 rho |V_n| V_i CdA_i across it, V_n the wind without its part along the bar;
 *           F   = -1/2 rho |V_a| V_a CdA_end along it
 *
 * The first makes the drag of a cube the same face-on and edge-on (Hoerner, Fluid-Dynamic Drag, 1965, ch. 3: 1.05 on one
 * face, 0.80 on the 1.41 times wider edge view, from memory); the second is his cross-flow principle, C_N = 1.1 sin2 for
 * inclined cylinders (ch. 3), with the section across the bar a bluff body in its own plane (square section: 2.05
 * face-on, 1.55 on the 1.41 times wider edge view, from memory). No lift of plates at small angles, no skin friction.
 *
 * @param bluff CdA along x, y, z [m2]
 * @param u velocity through the air along x, `v` along y, `w` along z [m/s]
 * @param airDensity [kg/m3]
 */
export function writeBodyForce(
  bluff: Vector3,
  bars: readonly BarDrag[],
  u: number,
  v: number,
  w: number,
  airDensity: number,
  out: Float64Array,
): void {
  const half = -0.5 * airDensity;
  const past = half * Math.sqrt(u * u + v * v + w * w);
  let x = past * u * bluff[0];
  let y = past * v * bluff[1];
  let z = past * w * bluff[2];
  for (const { axes, areas } of bars) {
    const [a, b, c] = axes;
    const along = u * a[0] + v * a[1] + w * a[2];
    const across = u * b[0] + v * b[1] + w * b[2];
    const over = u * c[0] + v * c[1] + w * c[2];
    const normal = half * Math.sqrt(across * across + over * over);
    const fa = half * Math.abs(along) * along * areas[0];
    const fb = normal * across * areas[1];
    const fc = normal * over * areas[2];
    x += fa * a[0] + fb * b[0] + fc * c[0];
    y += fa * a[1] + fb * b[1] + fc * c[1];
    z += fa * a[2] + fb * b[2] + fc * c[2];
  }
  out[0] = x;
  out[1] = y;
  out[2] = z;
}
