import { armDirection, armLength, armOutline } from '../../airframe/armOutline.ts';
import { orientationMatrix } from '../../airframe/massProperties.ts';
import { barOutline } from '../../airframe/primitives.ts';
import type { ArmGeometry, MassItem, Primitive } from '../../airframe/types.ts';

import type { Craft } from '../../build/craft.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import { cornersOf } from './axonometric.ts';
import { propellerMesh } from './bladeMesh.ts';
import { type Bounds, boundsOf, joinedMesh, type Mesh, placedMesh } from './mesh.ts';
import { antennaMesh, boardMesh, cameraMesh, canMesh, motorMesh, strapMesh } from './partMeshes.ts';
import { barMesh, boxMesh, prismMesh, tubeMesh } from './shapes.ts';

/** What a solid is made of, for its shade. */
export type Look = 'carbon' | 'metal' | 'blade' | 'body' | 'board' | 'guard' | 'soft';

/** What a solid moves with when the frame rings. */
export type Rides =
  | { readonly on: 'hub' }
  | { readonly on: 'arm'; readonly arm: string }
  | { readonly on: 'tip'; readonly arm: string };

/** One part of the aircraft as a closed mesh in the aircraft's axes [m]. */
export interface Solid {
  /** In words, unique in a craft. */
  readonly name: string;
  /** As the schedule of parts and findings name it: `frame`, `motors`, `cameras[0]`. */
  readonly part: string;
  readonly look: Look;
  readonly rides: Rides;
  readonly mesh: Mesh;
}

/** An arm's axis, for its stresses and its modes. */
export interface ArmAxis {
  readonly name: string;
  readonly root: Vector3;
  /** From x towards y [rad]. */
  readonly yaw: number;
  /** Root to motor axis [m]. */
  readonly length: number;
}

export interface Disc {
  /** The motor's name. */
  readonly name: string;
  readonly centre: Vector3;
  readonly radius: number;
  readonly spin: 1 | -1;
}

/** An aircraft in the round, as plain data: meshes, and the places that marks stand at. SI, the aircraft's axes. */
export interface CraftSolids {
  readonly name: string;
  readonly solids: readonly Solid[];
  readonly arms: readonly ArmAxis[];
  readonly discs: readonly Disc[];
  readonly centreOfGravity: Vector3;
  /** Middle of the discs: where equal thrusts act. */
  readonly thrustCentre: Vector3;
  /** Of all but antennas and leads, swept discs included. */
  readonly bounds: Bounds;
  /** Places enough to fit a window round all of it from anywhere: corners of every solid's box, edges of the discs. */
  readonly reach: readonly Vector3[];
}

/** A resolved build in the round. Every mesh comes from the solid that weighs, or the part that flies. */
export function solidsOf(craft: Craft): CraftSolids {
  const solids = craft.massItems.flatMap((item): Solid[] => {
    const made = solidFrom(craft, item);
    return made === undefined
      ? []
      : [{ name: item.name, part: item.part, rides: ridesOf(craft, item), ...made }];
  });
  const discs = craft.motors.map(
    ({ place, discPlace, rotor }): Disc => ({
      name: place.name,
      centre: discPlace,
      radius: (craft.rotors[rotor]?.blade.diameter ?? 0) / 2,
      spin: place.spin,
    }),
  );
  const fixed = solids.filter(({ part }) => part !== 'wiring' && !part.startsWith('antennas'));
  const swept = discs.map(({ centre, radius }) => placedMesh(tubeMesh(2 * radius, 0, 1e-6), centre));
  const bounds = boundsOf([...fixed.map(({ mesh }) => mesh), ...swept]);
  return {
    name: craft.build.name,
    solids: withOwnNames(solids),
    arms: craft.frame.arms.map((arm) => ({
      name: arm.name,
      root: arm.root,
      yaw: armDirection(arm),
      length: armLength(arm),
    })),
    discs,
    centreOfGravity: craft.massProperties.centreOfGravity,
    thrustCentre: middleOf(discs.map(({ centre }) => centre)),
    bounds,
    reach: [
      ...solids.flatMap(({ mesh }) => cornersOf(boundsOf([mesh]))),
      ...discs.flatMap(edgeOf),
      // Lines of measure run along the foot of the whole.
      ...cornersOf(bounds).filter(([, , z]) => z === bounds.high[2]),
    ],
  };
}

function edgeOf({ centre: [x, y, z], radius }: Disc): readonly Vector3[] {
  return Array.from({ length: 16 }, (_, i): Vector3 => {
    const angle = (i * Math.PI) / 8;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle), z];
  });
}

type Made = Pick<Solid, 'look' | 'mesh'>;

function solidFrom(craft: Craft, item: MassItem): Made | undefined {
  const { part, name, place } = item;
  const turn = item.orientation === undefined ? undefined : orientationMatrix(item.orientation);
  const put = (look: Look, mesh: Mesh): Made => ({ look, mesh: placedMesh(mesh, place, turn) });
  const size = boxOf(item.primitive);
  if (part === 'frame') {
    const arm = craft.frame.arms.find((each) => each.name === name);
    if (arm) return put('carbon', armMesh(arm));
    const look = item.primitive.kind === 'plate' ? 'carbon' : name.endsWith('guard') ? 'guard' : 'metal';
    const mesh = primitiveMesh(item.primitive);
    return mesh && put(look, mesh);
  }
  const motor = craft.motors.find(
    (each) => name === `${each.place.name} motor` || name === `${each.place.name} propeller`,
  );
  if (part === 'motors' && motor) {
    const can = motorMesh(motor.fit.bellDiameter, motor.fit.height);
    const upright = motor.place.propSide === 'below' ? UPSIDE_DOWN : undefined;
    return { look: 'metal', mesh: placedMesh(can, place, upright) };
  }
  if (part === 'propellers' && motor) {
    const rotor = craft.rotors[motor.rotor];
    if (rotor === undefined) return undefined;
    const { position, spin } = motor.place;
    // Blades rest across their arms and a little on, neighbours the other way, as the plan has them.
    const rest = Math.atan2(position[1], position[0]) + Math.PI / 2;
    const index = craft.motors.indexOf(motor);
    return put('blade', propellerMesh(rotor.blade, rotor, spin, rest + (index % 2 === 0 ? 0.35 : -0.35)));
  }
  if (size === undefined) {
    const mesh = primitiveMesh(item.primitive);
    return mesh && put('soft', mesh);
  }
  if (part.startsWith('cameras')) return put('body', cameraMesh(size));
  if (part.startsWith('antennas')) return put('soft', antennaMesh(size));
  if (part.startsWith('extras')) return extraMesh(craft, item, put);
  if (part === 'controllers' || part === 'flightController' || part === 'videoLink' || part === 'receiver')
    return put('board', boardMesh(size));
  return put('body', boxMesh(size.length, size.width, size.height));
}

/** Mounts and guard sets have no shape of their own here: they lie round what they hold. */
function extraMesh(craft: Craft, item: MassItem, put: (look: Look, mesh: Mesh) => Made): Made | undefined {
  const extra = craft.parts.extras[Number(item.part.slice('extras['.length, -1))];
  const size = boxOf(item.primitive);
  if (size === undefined) return undefined;
  switch (extra?.part.kind) {
    case 'mount':
    case 'guardSet':
      return undefined;
    case 'strap': {
      const shares = extra.count > 1 ? [-0.25, 0.25] : [0];
      const { size: pack, place } = craft.pack;
      const bands = shares.map((share) => placedMesh(strapMesh(pack), [share * pack.length, 0, 0]));
      return { look: 'soft', mesh: placedMesh(joinedMesh(bands), place) };
    }
    case 'capacitor':
      return put('soft', canMesh(size));
    default:
      return put('board', boxMesh(size.length, size.width, size.height));
  }
}

/** Corners along an arm are no farther apart than this [m]. */
const ALONG_ARM = 0.002;

/** The outline that weighs, in the arm's own axes, with corners all along it. */
function armMesh(arm: ArmGeometry): Mesh {
  const halves = new Map(armOutline(arm).map(([x, y]) => [x, Math.abs(y)]));
  return barMesh(
    [...halves].toSorted((a, b) => a[0] - b[0]),
    arm.thickness,
    ALONG_ARM,
  );
}

const UPSIDE_DOWN = orientationMatrix({ roll: Math.PI });

function boxOf(primitive: Primitive) {
  return primitive.kind === 'box' ? primitive : undefined;
}

function primitiveMesh(primitive: Primitive): Mesh | undefined {
  switch (primitive.kind) {
    case 'point':
      return undefined;
    case 'box':
      return boxMesh(primitive.length, primitive.width, primitive.height);
    case 'cylinder':
      return tubeMesh(primitive.diameter, 0, primitive.height, primitive.axis);
    case 'tube':
      return tubeMesh(primitive.outerDiameter, primitive.innerDiameter, primitive.height, primitive.axis);
    case 'rod':
      return tubeMesh(primitive.diameter, 0, primitive.length, primitive.axis ?? 'x');
    case 'plate':
      return prismMesh(primitive.outline, -primitive.thickness / 2, primitive.thickness / 2);
    case 'taperedBar':
      return prismMesh(barOutline(primitive), -primitive.thickness / 2, primitive.thickness / 2);
  }
}

function ridesOf(craft: Craft, { name, part }: MassItem): Rides {
  const { arms } = craft.frame;
  if (part === 'frame' && arms.some((arm) => arm.name === name)) return { on: 'arm', arm: name };
  for (const arm of arms) {
    for (const motor of arm.motors) {
      if (name === `${motor} motor` || name === `${motor} propeller` || name === `${motor} guard`)
        return { on: 'tip', arm: arm.name };
      if (name === `${motor} controller`) return { on: 'arm', arm: arm.name };
    }
  }
  return { on: 'hub' };
}

function withOwnNames(solids: readonly Solid[]): readonly Solid[] {
  const seen = new Map<string, number>();
  return solids.map((solid) => {
    const times = (seen.get(solid.name) ?? 0) + 1;
    seen.set(solid.name, times);
    return times === 1 ? solid : { ...solid, name: `${solid.name} ${times}` };
  });
}

function middleOf(places: readonly Vector3[]): Vector3 {
  const mean = (axis: 0 | 1 | 2): number =>
    places.reduce((sum, place) => sum + place[axis], 0) / Math.max(1, places.length);
  return [mean(0), mean(1), mean(2)];
}
