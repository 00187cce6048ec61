import { add3, apply3, type Matrix3, subtract3, transpose3, type Vector3 } from '../numerics/vector3.ts';
import { dragAreas } from './dragAreas.ts';
import { orientationMatrix } from './massProperties.ts';
import { barOutline } from './primitives.ts';
import type { DragArea, DragAreas, MassItem, Primitive } from './types.ts';

/** Drag of many parts together, and where it acts. */
export interface ShelteredDrag {
  /** Of all. */
  readonly areas: DragAreas;
  /** What each part adds to it, in the order given. */
  readonly each: readonly DragAreas[];
  /** x of the drag from above, y and z of the drag from ahead [m]. */
  readonly centre: Vector3;
}

/** Share of its drag in the open that a body keeps behind another: gap and breadth of the one ahead [m]. */
export type Shelter = (gap: number, breadth: number) => number;

/** Drag comes back in a straight line over five breadths (two discs in tandem, Hoerner 1965 ch. 8, from memory). */
export const tandemShelter: Shelter = (gap, breadth) => Math.min(1, gap / (5 * breadth));

/** Of every part as if it were alone: an upper bound. */
export const noShelter: Shelter = () => 1;

/**
 * Drag areas of many parts together, from ahead, from the side and from above. What is inside another part counts not at
 * all, what stands close behind one counts in part: each part is asked at 16 points how much of it lies open to the
 * wind, the others taken as blocks of their outer size. No interference otherwise.
 *
 * @param items without the turning propellers, whose drag is the rotor's
 */
export function shelteredDrag(items: readonly MassItem[], shelter: Shelter = tandemShelter): ShelteredDrag {
  const bodies = items.map(bodyOf);
  const along = (face: keyof DragAreas, upstream: Vector3): readonly DragArea[] =>
    bodies.map((body, index) => {
      const { area, coefficient } = body.drag[face];
      if (area <= 0) return NO_DRAG;
      const share = openShare(bodies, index, face, upstream, shelter);
      return { area: area * share, coefficient };
    });
  const front = along('front', [1, 0, 0]);
  const side = along('side', [0, 1, 0]);
  const top = along('top', [0, 0, -1]);
  const each = bodies.map(
    (_, i): DragAreas => ({
      front: front[i] ?? NO_DRAG,
      side: side[i] ?? NO_DRAG,
      top: top[i] ?? NO_DRAG,
    }),
  );
  return {
    areas: addDrag(each),
    each,
    centre: [centreOf(bodies, top, 0), centreOf(bodies, front, 1), centreOf(bodies, front, 2)],
  };
}

const NO_DRAG: DragArea = { area: 0, coefficient: 0 };

/** Drag areas together, each direction with its mean coefficient. */
export function addDrag(each: readonly DragAreas[]): DragAreas {
  const sum = (face: keyof DragAreas): DragArea => {
    const area = each.reduce((total, one) => total + one[face].area, 0);
    const drag = each.reduce((total, one) => total + one[face].area * one[face].coefficient, 0);
    return { area, coefficient: area > 0 ? drag / area : 0 };
  };
  return { front: sum('front'), side: sum('side'), top: sum('top') };
}

interface Body {
  readonly drag: DragAreas;
  readonly toOwn: Matrix3;
  readonly toCraft: Matrix3;
  readonly centre: Vector3;
  /** Half the outer size along its own axes [m]. */
  readonly half: Vector3;
  /** Rings and points hide nothing. */
  readonly hides: boolean;
  readonly volume: number;
}

function bodyOf(item: MassItem): Body {
  const { middle, half } = blockOf(item.primitive);
  const toCraft = orientationMatrix(item.orientation);
  return {
    drag: dragAreas(item),
    toCraft,
    toOwn: transpose3(toCraft),
    centre: add3(item.place, apply3(toCraft, middle)),
    half,
    hides: item.primitive.kind !== 'tube' && item.primitive.kind !== 'point',
    volume: half[0] * half[1] * half[2],
  };
}

function blockOf(primitive: Primitive): { readonly middle: Vector3; readonly half: Vector3 } {
  const round = (diameter: number, height: number, axis: 'x' | 'y' | 'z') => {
    const [r, h] = [diameter / 2, height / 2];
    return {
      middle: NOWHERE,
      half: [axis === 'x' ? h : r, axis === 'y' ? h : r, axis === 'z' ? h : r] as const,
    };
  };
  const flat = (outline: readonly (readonly [number, number])[], thickness: number) => {
    const xs = outline.map(([x]) => x);
    const ys = outline.map(([, y]) => y);
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    return {
      middle: [(x0 + x1) / 2, (y0 + y1) / 2, 0] as const,
      half: [(x1 - x0) / 2, (y1 - y0) / 2, thickness / 2] as const,
    };
  };
  switch (primitive.kind) {
    case 'point':
      return { middle: NOWHERE, half: NOWHERE };
    case 'box':
      return { middle: NOWHERE, half: [primitive.length / 2, primitive.width / 2, primitive.height / 2] };
    case 'plate':
      return flat(primitive.outline, primitive.thickness);
    case 'taperedBar':
      return flat(barOutline(primitive), primitive.thickness);
    case 'cylinder':
      return round(primitive.diameter, primitive.height, primitive.axis ?? 'z');
    case 'tube':
      return round(primitive.outerDiameter, primitive.height, primitive.axis ?? 'z');
    case 'rod':
      return round(primitive.diameter, primitive.length, primitive.axis ?? 'x');
  }
}

const NOWHERE: Vector3 = [0, 0, 0];

/** Points spread evenly in the unit cube: additive recurrence by the plastic number's kin in three dimensions. */
const POINTS: readonly Vector3[] = Array.from({ length: 16 }, (_, k): Vector3 => {
  const at = (step: number): number => 2 * ((0.5 + step * (k + 1)) % 1) - 1;
  return [at(0.8191725134), at(0.6710436067), at(0.5497004779)];
});

function openShare(
  bodies: readonly Body[],
  index: number,
  face: keyof DragAreas,
  upstream: Vector3,
  shelter: Shelter,
): number {
  const body = bodies[index] as Body;
  let open = 0;
  for (const [a, b, c] of POINTS) {
    const { half } = body;
    const point = add3(body.centre, apply3(body.toCraft, [a * half[0], b * half[1], c * half[2]]));
    const own = crossing(body, point, upstream);
    const front = own === undefined ? 0 : own[1];
    let share = 1;
    for (const [k, other] of bodies.entries()) {
      if (k === index || !other.hides) continue;
      const met = crossing(other, point, upstream);
      if (met === undefined || met[1] <= front + 1e-9) continue;
      const gap = met[0] - front;
      if (gap >= -1e-6) share = Math.min(share, shelter(Math.max(gap, 0), Math.sqrt(other.drag[face].area)));
      // Of two that overlap the smaller is inside the larger.
      else if (other.volume > body.volume || (other.volume === body.volume && k < index)) share = 0;
    }
    open += share;
  }
  return open / POINTS.length;
}

/** Where a line upstream of a point enters and leaves a block, as distances [m]; undefined when it misses or lies behind. */
function crossing(
  body: Body,
  point: Vector3,
  upstream: Vector3,
): readonly [near: number, far: number] | undefined {
  const from = apply3(body.toOwn, subtract3(point, body.centre));
  const along = apply3(body.toOwn, upstream);
  let near = Number.NEGATIVE_INFINITY;
  let far = Number.POSITIVE_INFINITY;
  for (const axis of [0, 1, 2] as const) {
    const half = body.half[axis];
    if (Math.abs(along[axis]) < 1e-12) {
      if (Math.abs(from[axis]) > half) return undefined;
      continue;
    }
    const one = (-half - from[axis]) / along[axis];
    const other = (half - from[axis]) / along[axis];
    near = Math.max(near, Math.min(one, other));
    far = Math.min(far, Math.max(one, other));
  }
  return far < near || far <= 0 ? undefined : [near, far];
}

function centreOf(bodies: readonly Body[], parts: readonly DragArea[], axis: 0 | 1 | 2): number {
  let moment = 0;
  let drag = 0;
  for (const [i, { area, coefficient }] of parts.entries()) {
    moment += area * coefficient * (bodies[i] as Body).centre[axis];
    drag += area * coefficient;
  }
  return drag > 0 ? moment / drag : 0;
}
