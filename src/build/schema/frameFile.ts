import { z } from 'zod';
import type { FrameQuestion, HubQuestion, PlacedArm } from '../../airframe/askFrame.ts';
import type { Point2 } from '../../airframe/types.ts';
import { armFields, armQuestion, moduliOf, sheetMaterial } from './armFile.ts';
import { count } from './common.ts';
import { plainQuantity } from './fields.ts';

const place = z.strictObject({
  forward: plainQuantity('length', ['-2 m', '2 m'], 'Towards the nose'),
  right: plainQuantity('length', ['-2 m', '2 m'], 'To the right'),
});
const radius = (says: string) => plainQuantity('length', ['0.5 mm', '2 m'], says);
const inertia = (says: string) => plainQuantity('inertia', ['0 g mm2', '1 kg m2'], says);

const frameArm = z.strictObject({
  name: z.string().min(1).max(40).optional(),
  motor: place.optional().describe("The motor's axis"),
  root: place.optional().describe('Where the arm leaves the hub'),
  angles: z
    .array(plainQuantity('angle', ['-360 deg', '360 deg'], 'From the nose to the right'))
    .min(1)
    .max(12)
    .optional()
    .describe('Several equal arms at once, with motorRadius and rootRadius, instead of motor and root'),
  motorRadius: radius('From the middle to the motor axes').optional(),
  rootRadius: radius('From the middle to where the arms leave the hub').optional(),
  ...armFields,
});

const hub = z.strictObject({
  kind: z.enum(['rigid', 'one plate']),
  mass: plainQuantity('mass', ['0.1 g', '25 kg'], 'Of all that is not arms and motors'),
  height: plainQuantity(
    'length',
    ['-1 m', '1 m'],
    "Of its centre of gravity above the arms' mid-plane",
  ).default(0),
  forward: plainQuantity('length', ['-1 m', '1 m'], 'Of its centre of gravity').default(0),
  right: plainQuantity('length', ['-1 m', '1 m'], 'Of its centre of gravity').default(0),
  inertiaForward: inertia('About its centre of gravity, about the fore-and-aft axis'),
  inertiaRight: inertia('About the athwart axis'),
  inertiaUp: inertia('About the upright axis'),
  square: radius('Side of a square plate').optional(),
  outline: z.array(place).min(3).max(60).optional().describe('Of the plate, convex round the middle'),
  heldRadius: radius('The middle that stack and pack hold stiff').optional(),
  thickness: radius('Of the plate').optional(),
  material: sheetMaterial.optional(),
  fibreAngle: plainQuantity('angle', ['-180 deg', '180 deg'], "Of the plate's E1 from the nose").default(0),
});

export const frameFile = z.strictObject({
  arms: z.array(frameArm).min(1).max(12),
  hub,
  modes: count(1, 40).default(10),
});

type FrameFile = z.output<typeof frameFile>;

/** The question a frame's file asks. @throws RangeError in words when its fields contradict each other */
export function frameQuestionOf(file: FrameFile): FrameQuestion {
  return { arms: file.arms.flatMap(placedArms), hub: hubQuestion(file.hub), modes: file.modes };
}

function placedArms(arm: FrameFile['arms'][number], index: number): readonly PlacedArm[] {
  const where = `arms[${index}]`;
  const { name, motor, root, angles, motorRadius, rootRadius, ...fields } = arm;
  if (angles !== undefined) {
    if (motorRadius === undefined || rootRadius === undefined) {
      throw new RangeError(`${where}.angles: wants motorRadius and rootRadius beside it`);
    }
    return angles.map((yaw, k) =>
      placedArm(
        `${name ?? 'arm'} ${k + 1}`,
        { forward: rootRadius * Math.cos(yaw), right: rootRadius * Math.sin(yaw) },
        { forward: motorRadius * Math.cos(yaw), right: motorRadius * Math.sin(yaw) },
        fields,
      ),
    );
  }
  if (motor === undefined || root === undefined) {
    throw new RangeError(`${where}: give motor and root, or angles with motorRadius and rootRadius`);
  }
  return [placedArm(name ?? `arm ${index + 1}`, root, motor, fields)];
}

type Place = z.output<typeof place>;

function placedArm(
  name: string,
  root: Place,
  motor: Place,
  fields: Parameters<typeof armQuestion>[0],
): PlacedArm {
  const [dx, dy] = [motor.forward - root.forward, motor.right - root.right];
  const length = Math.hypot(dx, dy);
  if (length < 1e-3) throw new RangeError(`${name}: motor and root stand on one place`);
  return {
    name,
    root: [root.forward, root.right, 0],
    yaw: Math.atan2(dy, dx),
    arm: armQuestion(fields, length),
  };
}

function hubQuestion(file: FrameFile['hub']): HubQuestion {
  const body = {
    mass: file.mass,
    centreOfGravity: [file.forward, file.right, -file.height] as const,
    inertia: [
      [file.inertiaForward, 0, 0],
      [0, file.inertiaRight, 0],
      [0, 0, file.inertiaUp],
    ] as const,
  };
  if (file.kind === 'rigid') return { kind: 'rigid', body };
  const { heldRadius, thickness, material, square, outline, fibreAngle } = file;
  if (heldRadius === undefined || thickness === undefined || material === undefined) {
    throw new RangeError('hub: one plate wants heldRadius, thickness and material');
  }
  if ((square === undefined) === (outline === undefined)) {
    throw new RangeError('hub: one plate wants either square or outline');
  }
  const half = (square ?? 0) / 2;
  const edge: readonly Point2[] =
    outline?.map(({ forward, right }) => [forward, right] as const) ??
    ([
      [half, half],
      [-half, half],
      [-half, -half],
      [half, -half],
    ] as const);
  return {
    kind: 'one plate',
    body,
    outline: edge,
    heldRadius,
    thickness,
    moduli: moduliOf(material),
    fibreYaw: fibreAngle,
    density: material.density,
  };
}
