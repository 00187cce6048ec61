import { armDirection, armOutline } from '../airframe/armOutline.ts';
import type { ArmGeometry } from '../airframe/types.ts';
import type { Craft, CraftCamera, CraftMotor } from '../build/craft.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import type { AircraftPicture, BoxPicture, Place, RotorPicture, SlabPicture } from './aircraftPicture.ts';

/** What is written by each motor, in the order of the layout. */
export type MotorLabels = readonly (RotorPicture['label'] | undefined)[];

/** A resolved build as its drawings need it. */
export function pictureOfCraft(craft: Craft, labels: MotorLabels = []): AircraftPicture {
  const { frame, layout } = craft;
  return {
    name: craft.build.name,
    rotors: craft.motors.map((motor, i) => rotorPicture(craft, motor, labels[i])),
    arms: frame.arms.map(armSlab),
    plates: frame.plates.map(({ outline, z, thickness }) => ({
      outline: outline.map(([x, y]) => ({ x, y })),
      z: z - thickness / 2,
      thickness,
    })),
    posts: frame.standoffs.map(({ place: [x, y], outerDiameter, topZ, bottomZ }) => ({
      x,
      y,
      radius: outerDiameter / 2,
      topZ,
      bottomZ,
    })),
    boxes: [
      ...craft.stack.map((layer) => box('stack', layer.place, layer.size)),
      box('pack', craft.pack.place, craft.pack.size),
      ...craft.cameras.map(cameraBox),
    ],
    guards: frame.guards.flatMap((guard) => {
      const motor = layout.motors.find((each) => each.name === guard.motor);
      if (motor === undefined) return [];
      const at = { x: motor.position[0], y: motor.position[1], z: guard.z };
      return [{ at, radius: guard.innerRadius, thickness: guard.wallThickness, height: guard.height }];
    }),
    centreOfGravity: spot(craft.massProperties.centreOfGravity),
    thrustCentre: {
      x: mean(layout.motors.map((motor) => motor.position[0])),
      y: mean(layout.motors.map((motor) => motor.position[1])),
    },
  };
}

const spot = ([x, y, z]: Vector3): Place => ({ x, y, z });

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(values.length, 1);

function rotorPicture(craft: Craft, motor: CraftMotor, label: RotorPicture['label']): RotorPicture {
  const arm = craft.frame.arms[motor.place.armIndex];
  const below = motor.place.propSide === 'below';
  const foot = (arm?.tip[2] ?? 0) + ((below ? 1 : -1) * (arm?.thickness ?? 0)) / 2;
  const blade = craft.rotors[motor.rotor]?.blade;
  return {
    at: { x: motor.place.position[0], y: motor.place.position[1], z: foot },
    motorRadius: motor.fit.bellDiameter / 2,
    motorHeight: motor.fit.height,
    propellerRadius: (blade?.diameter ?? 0) / 2,
    discZ: motor.discPlace[2],
    blades: blade?.bladeCount ?? 0,
    blade: Array.from(blade?.radiusRatio ?? [], (at, i) => ({
      at,
      width: (blade?.chordRatio[i] ?? 0) * Math.cos(blade?.twist[i] ?? 0),
    })),
    spin: motor.place.spin === 1 ? 'clockwise' : 'anticlockwise',
    inverted: below,
    ...(label === undefined ? {} : { label }),
  };
}

function armSlab(arm: ArmGeometry): SlabPicture {
  const turn = armDirection(arm);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return {
    outline: armOutline(arm).map(([along, across]) => ({
      x: arm.root[0] + along * c - across * s,
      y: arm.root[1] + along * s + across * c,
    })),
    z: arm.root[2] - arm.thickness / 2,
    thickness: arm.thickness,
  };
}

const box = (
  part: BoxPicture['part'],
  at: Vector3,
  size: { readonly length: number; readonly width: number; readonly height: number },
): BoxPicture => ({ part, at: spot(at), size: { x: size.length, y: size.width, z: size.height } });

function cameraBox({ role, camera, place, size }: CraftCamera): BoxPicture {
  const part = role === 'flying' ? 'camera' : 'recording';
  return { ...box(part, place, size), tilt: camera.pitch, view: viewAcross(camera) };
}

/** Angle of view across the picture's width, by the lens's own law [rad]. */
function viewAcross({ field, lensLaw, width, height }: CraftCamera['camera']): number {
  if (field.across === 'width') return field.angle;
  const share = width / Math.hypot(width, height);
  switch (lensLaw) {
    case 'rectilinear':
      return 2 * Math.atan(share * Math.tan(field.angle / 2));
    case 'equidistant':
      return share * field.angle;
    case 'equisolid':
      return 4 * Math.asin(share * Math.sin(field.angle / 4));
  }
}
