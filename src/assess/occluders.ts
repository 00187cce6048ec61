import type { ArmGeometry, FrameGeometry } from '../airframe/types.ts';
import type { Craft, CraftMotor } from '../build/craft.ts';
import type { Box } from '../build/schema/fields.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import type { Blade } from '../rotor/types.ts';
import type { Bar, Occluder, Rod, SweptDisc } from '../view/types.ts';

export const COVER_GROUPS = ['discs', 'arms', 'guards', 'frame', 'antenna', 'load'] as const;

/** Kinds of thing that stand in a picture; `load` is motors, stack, pack and the other cameras. */
export type CoverGroup = (typeof COVER_GROUPS)[number];

export interface CraftOccluder {
  readonly group: CoverGroup;
  readonly occluder: Occluder;
}

/**
 * Everything of a craft that can stand in one of its cameras' pictures, that camera itself left out.
 * Mounts, straps and wires are not in it: nobody tells their shape.
 *
 * @param camera index into `craft.cameras`
 * @param angularSpeed of the propellers [rad/s]; it decides how a disc looks, not how much it hides
 */
export function occludersOf(craft: Craft, camera: number, angularSpeed: number): readonly CraftOccluder[] {
  const { frame, motors, cameras, pack, stack } = craft;
  const list: CraftOccluder[] = [];
  const add = (group: CoverGroup, occluder: Occluder): void => {
    list.push({ group, occluder });
  };
  for (const motor of motors) {
    add('discs', discOf(craft, motor, angularSpeed));
    add('load', motorRod(motor, frame));
  }
  for (const arm of frame.arms) for (const piece of armPieces(arm)) add('arms', piece);
  for (const guard of frame.guards) {
    const [x, y] = placeOf(motors, guard.motor);
    add('guards', {
      kind: 'ring',
      id: `${guard.motor} guard`,
      centre: [x, y, guard.z],
      axis: [0, 0, 1],
      innerRadius: guard.innerRadius,
      outerRadius: guard.innerRadius + guard.wallThickness,
      height: guard.height,
    });
  }
  for (const { name, outline, z, thickness } of frame.plates) {
    add('frame', { kind: 'plate', id: name, outline, z, thickness });
  }
  for (const [i, post] of frame.standoffs.entries()) {
    const [x, y] = post.place;
    const radius = post.outerDiameter / 2;
    add('frame', uprightRod(`standoff ${i + 1}`, x, y, post.topZ, post.bottomZ, radius));
  }
  add('load', block('pack', pack.place, pack.size));
  for (const layer of stack) add('load', block(layer.partId, layer.place, layer.size));
  for (const [i, other] of cameras.entries()) {
    if (i === camera) continue;
    const turned = { pitch: other.camera.pitch, roll: 0, yaw: 0 };
    add('load', { ...block(`${other.role} camera ${i + 1}`, other.place, other.size), turned });
  }
  for (const item of craft.massItems) {
    if (!item.part.startsWith('antennas') || item.primitive.kind !== 'box') continue;
    const [x, y, z] = item.place;
    const { length, width, height } = item.primitive;
    const radius = Math.min(length, width) / 2;
    add('antenna', uprightRod(item.part, x, y, z - height / 2, z + height / 2, radius));
  }
  return list;
}

function discOf(craft: Craft, motor: CraftMotor, angularSpeed: number): SweptDisc {
  const rotor = craft.rotors[motor.rotor];
  if (rotor === undefined) throw new RangeError(`rotors: none for the ${motor.place.name} motor`);
  const { chord, depth } = meanBlade(rotor.blade);
  return {
    kind: 'sweptDisc',
    id: `${motor.place.name} propeller`,
    centre: motor.discPlace,
    axis: [0, 0, 1],
    radius: rotor.blade.diameter / 2,
    hubRadius: rotor.hubDiameter / 2,
    thickness: Math.max(depth, rotor.hubThickness),
    blades: rotor.blade.bladeCount,
    chord,
    angularSpeed,
  };
}

/** Mean chord as seen along the shaft, and mean depth along it [m], by the trapezium rule over the span. */
function meanBlade({ radiusRatio, chordRatio, twist, pitchOffset, diameter }: Blade): {
  readonly chord: number;
  readonly depth: number;
} {
  let [chord, depth, span] = [0, 0, 0];
  for (let i = 1; i < radiusRatio.length; i++) {
    const step = (radiusRatio[i] ?? 0) - (radiusRatio[i - 1] ?? 0);
    for (const k of [i - 1, i]) {
      const angle = (twist[k] ?? 0) + pitchOffset;
      chord += 0.5 * step * (chordRatio[k] ?? 0) * Math.abs(Math.cos(angle));
      depth += 0.5 * step * (chordRatio[k] ?? 0) * Math.abs(Math.sin(angle));
    }
    span += step;
  }
  const scale = diameter / 2 / span;
  return { chord: chord * scale, depth: depth * scale };
}

function motorRod(motor: CraftMotor, frame: FrameGeometry): Rod {
  const { place, fit } = motor;
  const [x, y] = place.position;
  const half = (frame.arms[place.armIndex]?.thickness ?? 0) / 2;
  const [from, to] = place.propSide === 'above' ? [-half - fit.height, -half] : [half, half + fit.height];
  return uprightRod(`${place.name} motor`, x, y, from, to, fit.bellDiameter / 2);
}

/** The arm's tapered pieces between the stations of its outline, and its round end. */
function armPieces(arm: ArmGeometry): readonly Occluder[] {
  const at = (share: number): Vector3 => [
    arm.root[0] + share * (arm.tip[0] - arm.root[0]),
    arm.root[1] + share * (arm.tip[1] - arm.root[1]),
    arm.root[2] + share * (arm.tip[2] - arm.root[2]),
  ];
  const bars = arm.outline.slice(1).flatMap((station, i): readonly Bar[] => {
    const before = arm.outline[i];
    if (before === undefined || before.at === station.at) return [];
    return [
      {
        kind: 'bar',
        id: `${arm.name} ${i + 1}`,
        from: at(before.at),
        to: at(station.at),
        widthFrom: before.width,
        widthTo: station.width,
        thickness: arm.thickness,
      },
    ];
  });
  if (arm.padDiameter <= 0) return bars;
  const [x, y, z] = arm.tip;
  const half = arm.thickness / 2;
  return [...bars, uprightRod(`${arm.name} end`, x, y, z - half, z + half, arm.padDiameter / 2)];
}

const uprightRod = (id: string, x: number, y: number, top: number, bottom: number, radius: number): Rod => ({
  kind: 'rod',
  id,
  from: [x, y, top],
  to: [x, y, bottom],
  radius,
});

const block = (id: string, centre: Vector3, size: Box) =>
  ({ kind: 'box', id, centre, size: [size.length, size.width, size.height] }) as const;

function placeOf(motors: readonly CraftMotor[], name: string): Vector3 {
  const motor = motors.find(({ place }) => place.name === name);
  if (motor === undefined) throw new RangeError(`guards: no motor is named ${name}`);
  return motor.place.position;
}
