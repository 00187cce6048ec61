import type { FrameGeometry, MassItem, MotorPlace } from '../../airframe/types.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import type { Craft, CraftMotor, CraftParts, CraftRotor, StackLayer } from '../craft.ts';
import type { FrameSizes } from '../infer/frameSizes.ts';
import { sizeOf } from '../infer/sizes.ts';
import type { Build } from '../schema/build.ts';
import type { Box } from '../schema/fields.ts';
import type { Part } from '../schema/part.ts';
import { guardItems, isGuard } from './guardItems.ts';

/** Rubber feet or standoffs under each board of the stack, and the pad under the pack [m] (common practice). */
const UNDER_BOARD = 0.004;
const PACK_PAD = 0.002;

/** A placed part with its box. */
export interface Placed {
  readonly place: Vector3;
  readonly size: Box;
}

/** Middle of the prop disc: on the motor's seat, above or below the arm [m]. */
export function discPlace(motor: MotorPlace, seatHeight: number, hub: number, armThickness: number): Vector3 {
  const [x, y, z] = motor.position;
  if (motor.coaxialWith !== undefined) return [x, y, z]; // the layout tells its discs' heights itself
  const height = armThickness / 2 + seatHeight + hub / 2;
  return [x, y, z + (motor.propSide === 'above' ? -height : height)];
}

/** Controllers below, flight controller over them, the video link on top when its holes and the height agree. */
export function stackLayers(parts: CraftParts, frame: FrameGeometry): readonly StackLayer[] {
  const layers: StackLayer[] = [];
  let z = frame.stack.faceZ;
  const add = (seat: StackLayer['seat'], part: Part & { readonly pattern?: number | undefined }): void => {
    const { size } = sizeOf(part);
    const [x, y] = frame.stack.place;
    const middle: Vector3 = [x, y, z - UNDER_BOARD - size.height / 2];
    const pattern = part.pattern === undefined ? {} : { pattern: part.pattern };
    layers.push({ seat, partId: part.id, place: middle, size, ...pattern });
    z -= UNDER_BOARD + size.height;
  };
  if (parts.controllers?.form === 'four in one') add('controllers', parts.controllers);
  add('flightController', parts.flightController);
  const link = parts.videoLink;
  if (link?.pattern !== undefined && link.pattern === parts.flightController.pattern) {
    const left = frame.stack.headroom - (frame.stack.faceZ - z);
    if (left >= UNDER_BOARD + sizeOf(link).size.height) add('videoLink', link);
  }
  return layers;
}

/** The pack on its face, moved forward by the build's offset. */
export function packPlace(build: Build, parts: CraftParts, frame: FrameGeometry): Placed {
  const { size } = sizeOf(parts.pack);
  const side = build.pack.side ?? frame.pack.side;
  const tops = frame.plates.map(({ z, thickness }) => z - thickness / 2);
  const bottoms = frame.plates.map(({ z, thickness }) => z + thickness / 2);
  const away = PACK_PAD + size.height / 2;
  const z = side === 'above' ? Math.min(...tops) - away : Math.max(...bottoms) + away;
  return { place: [build.pack.offset, 0, z], size };
}

/**
 * Cameras where the build puts them; else the flying one between the cheeks, a recording one on the top
 * plate's nose.
 */
export function cameraPlaces(
  build: Build,
  parts: CraftParts,
  frame: FrameGeometry,
  sizes: FrameSizes,
  pack: Placed,
): readonly Placed[] {
  const nose = sizes.bodyLength / 2;
  const topZ = Math.min(...frame.plates.map(({ z, thickness }) => z - thickness / 2));
  const between = frame.stack.faceZ - frame.stack.headroom / 2;
  const flying = frame.camera?.place ?? ([nose, 0, between] as const);
  const flyingLens = parts.cameras.flatMap((camera, index) => {
    const seat = build.cameras[index];
    if (seat === undefined || seat.role === 'recording') return [];
    return (seat.place?.x ?? flying[0]) + (Math.cos(seat.tilt) * sizeOf(camera).size.length) / 2;
  });
  const front = Math.max(nose, ...flyingLens);
  return parts.cameras.map((camera, index) => {
    const seat = build.cameras[index];
    const { size } = sizeOf(camera);
    const told = seat?.place;
    if (told) return { place: [told.x, told.y, told.z], size };
    if (seat?.role !== 'recording') return { place: flying, size };
    return { place: recordingPlace(seat.tilt, size, { nose, front, topZ }, pack), size };
  });
}

/** The wall of a printed camera mount, and the room its screen needs before the pack [m] (common practice). */
const MOUNT_WALL = 0.004;
const BEFORE_PACK = 0.002;
/** A wide lens below looks up past a block over it that stands out by no more than this [m] (common practice). */
const OVERHANG = 0.008;

/**
 * A recording camera stands in its mount on the top plate's nose, its tilted block clear of the plate and in
 * front of the pack. It may not stand far out before the flying camera, whose picture it would fill: where
 * the pack leaves no room between, a taller mount lifts it until its leaning back clears the pack's edge.
 */
function recordingPlace(
  tilt: number,
  size: Box,
  { nose, front, topZ }: { readonly nose: number; readonly front: number; readonly topZ: number },
  pack: Placed,
): Vector3 {
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const reachX = (size.length * c + size.height * Math.abs(s)) / 2;
  const reachZ = (size.length * Math.abs(s) + size.height * c) / 2;
  const low = topZ - MOUNT_WALL - reachZ;
  const [packX, , packZ] = pack.place;
  const usual = nose - size.length / 2;
  if (Math.abs(low - packZ) >= reachZ + pack.size.height / 2) return [usual, 0, low];
  const edgeX = packX + pack.size.length / 2 + BEFORE_PACK;
  const edgeZ = packZ - pack.size.height / 2 - BEFORE_PACK;
  const beside = Math.max(usual, edgeX + reachX);
  const x = Math.min(beside, Math.max(usual, front + OVERHANG - reachX));
  if (x === beside) return [x, 0, low];
  const over = edgeZ - reachZ;
  const leaning = s > 0 ? edgeZ - (size.length / 2 - (x - edgeX) * c) / s : over;
  return [x, 0, Math.min(low, Math.max(over, leaning))];
}

/** Everything on board but the frame's own solids, each part as a block, disc or can with its mass. */
export function partItems(input: {
  readonly build: Build;
  readonly parts: CraftParts;
  readonly frame: FrameGeometry;
  readonly sizes: FrameSizes;
  readonly motors: readonly CraftMotor[];
  readonly rotors: readonly CraftRotor[];
  readonly stack: readonly StackLayer[];
  readonly pack: Placed;
  readonly cameras: readonly Placed[];
}): readonly MassItem[] {
  const { build, parts, frame, sizes, motors, rotors, stack, pack, cameras } = input;
  const items: MassItem[] = [];
  const block = (name: string, key: string, part: Part, { place, size }: Placed, pitch = 0): void => {
    const orientation = pitch === 0 ? {} : { orientation: { pitch } };
    items.push({
      name,
      part: key,
      primitive: { kind: 'box', ...size },
      place,
      amount: { mass: part.mass.value },
      ...orientation,
    });
  };
  for (const [index, motor] of motors.entries()) {
    items.push(...motorItems(motor, parts, index, rotors[motor.rotor], frame));
  }
  const rear = -sizes.bodyLength / 2;
  const topZ = Math.min(...frame.plates.map(({ z, thickness }) => z - thickness / 2));
  const inside = frame.stack.faceZ - frame.stack.headroom / 2;
  const stacked = new Map(stack.map((layer) => [layer.seat, layer]));
  const fourInOne = stacked.get('controllers');
  if (parts.controllers && fourInOne) block('controllers', 'controllers', parts.controllers, fourInOne);
  const brain = stacked.get('flightController');
  if (brain) block('flight controller', 'flightController', parts.flightController, brain);
  block('pack', 'pack', parts.pack, pack);
  for (const [index, camera] of parts.cameras.entries()) {
    const placed = cameras[index];
    const seat = build.cameras[index];
    if (placed && seat) block(`${seat.role} camera`, `cameras[${index}]`, camera, placed, seat.tilt);
  }
  const beside = (
    told: { readonly x: number; readonly y: number; readonly z: number } | undefined,
    place: Vector3,
  ): Vector3 => (told ? [told.x, told.y, told.z] : place);
  if (parts.videoLink) {
    const { size } = sizeOf(parts.videoLink);
    const behind: Vector3 = [rear + size.length / 2, 0, inside];
    const place = stacked.get('videoLink')?.place ?? behind;
    block('video link', 'videoLink', parts.videoLink, { place: beside(build.videoLink?.place, place), size });
  }
  if (parts.receiver) {
    const place = beside(build.receiver?.place, [rear + 0.012, 0.008, inside]);
    block('receiver', 'receiver', parts.receiver, { place, size: sizeOf(parts.receiver).size });
  }
  for (const [index, antenna] of parts.antennas.entries()) {
    const { size } = sizeOf(antenna);
    const place = beside(build.antennas[index]?.place, [rear - 0.006, 0, topZ - size.height / 2]);
    block(`${antenna.for} antenna`, `antennas[${index}]`, antenna, { place, size });
  }
  for (const [index, { part, count }] of parts.extras.entries()) {
    if (isGuard(part)) {
      items.push(...guardItems(part, `extras[${index}]`, part.mass.value * count, motors));
      continue;
    }
    const { size } = sizeOf(part);
    const place = beside(
      build.extras[index]?.place,
      extraPlace(part, { rear, topZ, inside, pack, cameras, build }),
    );
    const placed: MassItem = {
      name: part.name,
      part: `extras[${index}]`,
      primitive: { kind: 'box', ...size },
      place,
      amount: { mass: part.mass.value * count },
    };
    items.push(placed);
  }
  if (parts.connector) {
    const place: Vector3 = [rear - 0.03, 0, inside];
    block('connector', 'wiring', parts.connector, { place, size: sizeOf(parts.connector).size });
  }
  return items;
}

function motorItems(
  motor: CraftMotor,
  parts: CraftParts,
  index: number,
  rotor: CraftRotor | undefined,
  frame: FrameGeometry,
): readonly MassItem[] {
  const part = parts.motors[index];
  const propeller = parts.propellers[index];
  if (!part || !propeller || !rotor) return [];
  const { name, position, propSide } = motor.place;
  const [x, y] = position;
  const arm = frame.arms[0]?.thickness ?? 0;
  const up = propSide === 'above' ? -1 : 1;
  const can: MassItem = {
    name: `${name} motor`,
    part: 'motors',
    primitive: { kind: 'cylinder', diameter: motor.fit.bellDiameter, height: motor.fit.height },
    place: [x, y, up * (arm / 2 + motor.fit.height / 2)],
    amount: { mass: part.mass.value },
  };
  // A disc of the propeller's own inertia: blades are heavier near the hub than an even disc is.
  const gyration = Math.sqrt(rotor.inertia / propeller.mass.value);
  const disc: MassItem = {
    name: `${name} propeller`,
    part: 'propellers',
    primitive: { kind: 'cylinder', diameter: 2 * Math.SQRT2 * gyration, height: rotor.hubThickness },
    place: motor.discPlace,
    amount: { mass: propeller.mass.value },
  };
  if (parts.controllers?.form !== 'single') return [can, disc];
  const { size } = sizeOf(parts.controllers);
  const single: MassItem = {
    name: `${name} controller`,
    part: 'controllers',
    primitive: { kind: 'box', ...size },
    place: [0.55 * x, 0.55 * y, -(arm / 2 + size.height / 2)],
    orientation: { yaw: Math.atan2(y, x) },
    amount: { mass: parts.controllers.mass.value },
  };
  return [can, disc, single];
}

/** Keys of what goes along when the pack is slid: itself, and straps that the build gives no other place. */
export const slidesWithPack = ({ build, parts }: Pick<Craft, 'build' | 'parts'>): readonly string[] => [
  'pack',
  ...parts.extras.flatMap(({ part: { kind } }, index) =>
    kind === 'strap' && build.extras[index]?.place === undefined ? [`extras[${index}]`] : [],
  ),
];

/** Where a thing usually sits when the build does not say (common practice, no source). */
function extraPlace(
  part: Part,
  at: {
    readonly rear: number;
    readonly topZ: number;
    readonly inside: number;
    readonly pack: Placed;
    readonly cameras: readonly Placed[];
    readonly build: Build;
  },
): Vector3 {
  const [packX, , packZ] = at.pack.place;
  switch (part.kind) {
    case 'strap':
      return [packX, 0, packZ];
    case 'positionReceiver':
      return [at.rear + 0.01, 0, at.topZ - 0.006];
    case 'capacitor':
      return [at.rear + 0.005, 0, at.inside];
    case 'mount': {
      const role =
        part.holds === 'recording camera'
          ? 'recording'
          : part.holds === 'flying camera'
            ? 'flying'
            : undefined;
      const index = at.build.cameras.findIndex((camera) => camera.role === role);
      const camera = at.cameras[index];
      if (camera) return camera.place;
      return [at.rear, 0, at.topZ - 0.006];
    }
    default:
      return [at.rear + 0.015, 0, at.inside];
  }
}
