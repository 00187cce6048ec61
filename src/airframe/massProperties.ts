import {
  add3,
  apply3,
  type Matrix3,
  multiply3,
  rotation3,
  scale3,
  subtract3,
  transpose3,
  type Vector3,
} from '../numerics/vector3.ts';
import { solidOf } from './primitives.ts';
import type { MassItem, MassProperties, Orientation } from './types.ts';

/**
 * Total mass, centre of gravity and the full inertia tensor about it, of placed solids: each turned
 * into the aircraft's axes and moved by the parallel-axis theorem.
 *
 * @throws RangeError when nothing has mass, or an item's mass or density is negative or not finite
 */
export function massProperties(items: readonly MassItem[]): MassProperties {
  const bodies = items.map(bodyOf);
  const mass = bodies.reduce((sum, body) => sum + body.mass, 0);
  if (!(mass > 0)) throw new RangeError(`items: together they need a mass over 0 kg, got ${mass}`);
  const moment = bodies.reduce<Vector3>((sum, body) => add3(sum, scale3(body.centre, body.mass)), [0, 0, 0]);
  const centreOfGravity = scale3(moment, 1 / mass);
  let inertia: Matrix3 = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (const body of bodies) {
    inertia = addMatrix(inertia, body.inertia);
    inertia = addMatrix(inertia, pointInertia(body.mass, subtract3(body.centre, centreOfGravity)));
  }
  return { mass, centreOfGravity, inertia };
}

/** Mass of one item [kg]: as told, or density times volume. */
export function itemMass(item: MassItem): number {
  const told = 'mass' in item.amount ? item.amount.mass : item.amount.density;
  if (!(told >= 0 && Number.isFinite(told))) {
    throw new RangeError(`${item.name}: mass or density must be 0 or more, got ${told}`);
  }
  return 'mass' in item.amount ? told : told * solidOf(item.primitive).volume;
}

/**
 * The items with those of one part scaled alike so that together they weigh what a scale said.
 *
 * @param measuredMass [kg], over 0
 * @throws RangeError when the part has no item with mass
 */
export function withMeasuredMass(
  items: readonly MassItem[],
  part: string,
  measuredMass: number,
): readonly MassItem[] {
  if (!(measuredMass > 0)) throw new RangeError(`measuredMass: must be over 0 kg, got ${measuredMass}`);
  const reckoned = items.reduce((sum, item) => (item.part === part ? sum + itemMass(item) : sum), 0);
  if (!(reckoned > 0)) throw new RangeError(`part: no item of '${part}' has mass to scale`);
  const factor = measuredMass / reckoned;
  return items.map((item) =>
    item.part === part ? { ...item, amount: { mass: itemMass(item) * factor } } : item,
  );
}

/**
 * Where the middle of the movable items (the pack) must go along x so that the whole balances under
 * `targetX`, and the nearest place inside the allowed range.
 *
 * @param parts keys of what slides, as `slidesWithPack` tells; all their items move together
 * @param targetX where the centre of gravity should be, usually 0, the thrust centre [m]
 * @param range how far it may be moved from where it is now [m]
 * @returns slide [m, forward positive] inside the range, and the imbalance left (cg x - target) [m]
 */
export function slideToBalance(
  items: readonly MassItem[],
  parts: readonly string[],
  targetX: number,
  range: readonly [rearmost: number, foremost: number],
): { readonly slide: number; readonly wanted: number; readonly imbalance: number } {
  const share = massShare(items, parts);
  if (!(share > 0)) throw new RangeError(`parts: no item of '${parts.join(', ')}' has mass to slide`);
  const from = massProperties(items).centreOfGravity[0];
  const wanted = (targetX - from) / share;
  const slide = Math.min(range[1], Math.max(range[0], wanted));
  const imbalance = from + slide * share - targetX;
  return { slide, wanted, imbalance };
}

/** What the balance moves by when these parts are slid, over how far they are: their share of the mass. */
export function massShare(items: readonly MassItem[], parts: readonly string[]): number {
  const massOf = (some: readonly MassItem[]): number => some.reduce((sum, item) => sum + itemMass(item), 0);
  return massOf(items.filter(({ part }) => parts.includes(part))) / massOf(items);
}

/** Turns an item's own axes into the aircraft's. */
export const orientationMatrix = (orientation: Orientation = {}): Matrix3 =>
  rotation3(orientation.yaw ?? 0, orientation.pitch ?? 0, orientation.roll ?? 0);

/** Parallel-axis term of a point mass [kg m2]. */
export function pointInertia(mass: number, [x, y, z]: Vector3): Matrix3 {
  return [
    [mass * (y * y + z * z), -mass * x * y, -mass * x * z],
    [-mass * x * y, mass * (x * x + z * z), -mass * y * z],
    [-mass * x * z, -mass * y * z, mass * (x * x + y * y)],
  ];
}

function bodyOf(item: MassItem): { mass: number; centre: Vector3; inertia: Matrix3 } {
  const solid = solidOf(item.primitive);
  const mass = itemMass(item);
  const turn = orientationMatrix(item.orientation);
  const turned = multiply3(multiply3(turn, solid.gyration), transpose3(turn));
  return {
    mass,
    centre: add3(item.place, apply3(turn, solid.centre)),
    inertia: [scale3(turned[0], mass), scale3(turned[1], mass), scale3(turned[2], mass)],
  };
}

const addMatrix = (a: Matrix3, b: Matrix3): Matrix3 => [add3(a[0], b[0]), add3(a[1], b[1]), add3(a[2], b[2])];
