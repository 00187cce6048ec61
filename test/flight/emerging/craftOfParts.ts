import { massProperties } from '../../../src/airframe/massProperties.ts';
import type { MassItem, MassProperties, Primitive } from '../../../src/airframe/types.ts';
import { type BodyDrag, bodyDragOf } from '../../../src/flight/forward/bodyDrag.ts';
import type { FlightModel } from '../../../src/flight/types.ts';
import type { Vector3 } from '../../../src/numerics/vector3.ts';
import { exampleQuad } from '../exampleModel.ts';
import { realPropeller } from '../realPropeller.ts';

/**
 * A 5 inch quad put together from solids, so that mass, balance, inertia and drag all follow from where things sit.
 * Invented sizes of a usual kind (common practice, no source).
 */
export interface Quad {
  /** Hub to motor [m]. */
  readonly armLength: number;
  /** Of front and rear arms off the nose [degrees]. */
  readonly frontAngle: number;
  readonly rearAngle: number;
  /** Middle of the pack ahead of the hub [m], and which side of the plates. */
  readonly packAhead?: number;
  readonly packSide?: 'above' | 'below';
  readonly packMass?: number;
  /** The nose camera, [kg]; on the nose, 75 mm ahead of the hub. */
  readonly cameraMass?: number;
  /** Rings of this height and wall round every propeller [m]. */
  readonly rings?: { readonly tipGap: number; readonly height: number; readonly wall: number };
}

const DIAMETER = realPropeller.propDiameter;
const DISC_HEIGHT = 0.022;
export interface Built {
  readonly items: readonly MassItem[];
  readonly massProperties: MassProperties;
  readonly drag: BodyDrag;
  readonly model: FlightModel;
}

/** Everything about the hub; the motors' middle is the origin, as everywhere. */
export function built(quad: Quad): Built {
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;
  const { armLength, packAhead = 0, packSide = 'above' } = quad;
  const angles = [-quad.frontAngle, quad.frontAngle, 180 - quad.rearAngle, 180 + quad.rearAngle].map(radians);
  const hub = (-armLength * (Math.cos(radians(quad.frontAngle)) - Math.cos(radians(quad.rearAngle)))) / 2;
  const motors = angles.map((angle): Vector3 => {
    return [hub + armLength * Math.cos(angle), armLength * Math.sin(angle), 0];
  });
  const item = (name: string, primitive: Primitive, place: Vector3, mass: number, yaw = 0): MassItem => ({
    name,
    part: name,
    primitive,
    place,
    orientation: { yaw },
    amount: { mass },
  });
  const bar = {
    kind: 'taperedBar',
    length: armLength,
    rootWidth: 0.016,
    tipWidth: 0.01,
    thickness: 0.005,
  } as const;
  const items = [
    ...motors.map((at) =>
      item('motor', { kind: 'cylinder', diameter: 0.028, height: 0.019 }, [at[0], at[1], -0.012], 0.038),
    ),
    ...angles.map((yaw) => item('arm', bar, [hub, 0, 0], armLength * 0.11, yaw)),
    item(
      'plates and stack',
      { kind: 'box', length: 0.15, width: 0.04, height: 0.026 },
      [hub, 0, -0.012],
      0.13,
    ),
    item(
      'camera',
      { kind: 'box', length: 0.025, width: 0.022, height: 0.022 },
      [hub + 0.075, 0, -0.015],
      quad.cameraMass ?? 0.01,
    ),
    item(
      'pack',
      { kind: 'box', length: 0.075, width: 0.037, height: 0.042 },
      [hub + packAhead, 0, packSide === 'above' ? -0.048 : 0.024],
      quad.packMass ?? 0.22,
    ),
    ...motors.flatMap((at) => rings(at, quad.rings)),
  ];
  const properties = massProperties(items);
  const example = exampleQuad();
  const model: FlightModel = {
    ...example,
    stations: example.stations.map((station, i) => ({
      ...station,
      ...realPropeller,
      position: [motors[i]![0], motors[i]![1], -DISC_HEIGHT] as const,
    })),
    mass: properties.mass,
    centreOfGravity: properties.centreOfGravity,
  };
  return { items, massProperties: properties, drag: bodyDragOf(items), model };
}

/** A hoop as two half rings' worth of wall, in nylon of 1150 kg/m3. */
function rings(at: Vector3, ring: Quad['rings']): MassItem[] {
  if (ring === undefined) return [];
  const innerDiameter = DIAMETER + 2 * ring.tipGap;
  const outerDiameter = innerDiameter + 2 * ring.wall;
  return [
    {
      name: 'ring',
      part: 'ring',
      primitive: { kind: 'tube', outerDiameter, innerDiameter, height: ring.height },
      place: [at[0], at[1], -DISC_HEIGHT],
      amount: { density: 1150 },
    },
  ];
}

/** Hub to motor of all the craft compared: a 226 mm true X. */
export const ARM = 0.113;
export const trueX: Quad = { armLength: ARM, frontAngle: 45, rearAngle: 45 };
/** Front arms swung out of the picture, the same length; the rear ones as they were. */
export const deadCat: Quad = { armLength: ARM, frontAngle: 68, rearAngle: 45 };
