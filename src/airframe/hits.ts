import { denseSolve } from '../numerics/denseSolve.ts';
import { normalShare } from '../numerics/normalShare.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { dot3, type Matrix3, scale3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import { type ArmBeam, outlineWidth, type TipGive, type TipLoad, tipGive } from './armBeam.ts';
import type { FrameArm } from './frameModel.ts';
import {
  beamMass,
  sectionsOf,
  stressAt,
  TIP_SHARE,
  usedAt,
  type Weakest,
  weakestPlace,
} from './hitStress.ts';
import { armStiffness, bodyMass, followBlow, inverse, type StruckArm } from './struckArm.ts';
import type { FrameMaterial, MassProperties } from './types.ts';

/** From which side the motor's end is struck: straight along the arm, across it, or from below. */
export type HitDirection = 'end-on' | 'side-on' | 'flat';

/** What is hit. */
export interface Surface {
  readonly name: string;
  /** [N/m] */
  readonly contactStiffness: number;
  /** Speed of a rebound over that of the hit, 0 to 1. */
  readonly restitution: number;
  readonly source: string;
}

const GUESS = 'common practice, no source';

/** A motor's bell against a surface: guesses of scale, made to be overridden. */
export const SURFACES: readonly Surface[] = [
  { name: 'grass', contactStiffness: 2e4, restitution: 0.1, source: GUESS },
  { name: 'wood', contactStiffness: 3e5, restitution: 0.3, source: GUESS },
  { name: 'concrete', contactStiffness: 3e6, restitution: 0.3, source: GUESS },
];

/** Something heavy that the craft carries on straps. */
export interface LooseMass {
  /** [kg] */
  readonly mass: number;
  /** Its middle, the aircraft's axes [m]. */
  readonly place: Vector3;
  /** Of what holds it in the plane of the arms, and up and down [N/m]. */
  readonly stiffness: { readonly along: number; readonly upright: number };
}

/** One way of striking one arm, whatever the speed and what is hit. */
export interface Blow {
  readonly arm: FrameArm;
  readonly material: FrameMaterial;
  /** Of the whole craft. */
  readonly craft: MassProperties;
  /** Unit vector of the craft's velocity against the surface, the aircraft's axes. */
  readonly heading: Vector3;
  /** Where the motor is struck above the arm's mid-plane [m]. */
  readonly contactHeight: number;
  /** Diameter of the screw holes at the root, 0 for none [m]. */
  readonly rootHole: number;
  /** Of the arm's tip, from `tipGive`; worked out when absent. */
  readonly give?: TipGive;
  /** The pack on its straps and the like, and the craft without them; everything is rigid when absent. */
  readonly loose?: { readonly parts: readonly LooseMass[]; readonly rest: MassProperties };
}

export interface Hit extends Blow {
  /** [m/s], over 0 */
  readonly speed: number;
  readonly surface: Surface;
}

/** One way of striking one arm, made ready: only speed and ground are missing. */
export interface ReadyBlow {
  /** Mass that the struck point feels [kg]. */
  readonly effectiveMass: number;
  /** Of the struck point along the heading [m/N]. */
  readonly armGive: number;
  readonly beam: ArmBeam;
  readonly struck: StruckArm;
  readonly material: FrameMaterial;
  readonly rootHole: number;
  readonly logDeviation: number;
}

export interface HitAnswer {
  /** Mass that the struck point feels [kg]. */
  readonly effectiveMass: number;
  /** Of arm and contact in series along the heading [N/m]. */
  readonly stiffness: number;
  /** Largest on the arm [N]. */
  readonly peakForce: number;
  /** Along the arm from its root: place [m], largest tension, compression and shear [Pa]. */
  readonly stress: readonly {
    readonly at: number;
    readonly tension: number;
    readonly compression: number;
    readonly shear: number;
  }[];
  /** Strength over stress where it is least, strength being its median; under 1 it breaks. */
  readonly reserve: number;
  readonly weakest: Weakest['weakest'];
  /** Where it breaks, from the root [m]. */
  readonly place: number;
  /** Chance of breaking from the scatter of strength and thickness, 0 to 1. */
  readonly chance: number;
  /** Speed at which half of such arms break [m/s], and the standard deviation of its logarithm. */
  readonly breakingSpeed: number;
  readonly logDeviation: number;
}

/** Heading of a hit on an arm from the named side, the aircraft's axes. */
export function hitHeading(arm: FrameArm, direction: HitDirection): Vector3 {
  switch (direction) {
    case 'end-on':
      return [Math.cos(arm.yaw), Math.sin(arm.yaw), 0];
    case 'side-on':
      return [-Math.sin(arm.yaw), Math.cos(arm.yaw), 0];
    case 'flat':
      return [0, 0, 1];
  }
}

/**
 * A motor's end against a surface: motor, arm and craft swing against each other while the ground pushes (`followBlow`), and
 * the load on the arm's tip runs through the beam. Linear to failure. Bolt holes inside the root's grip by `openHoleFactor`;
 * delamination only as interlaminar shear. For one blow against many surfaces: `readyBlow`, then `landBlow` for each.
 *
 * @throws RangeError for a speed or contact stiffness that is not positive
 */
export function hit(question: Hit): Outcome<HitAnswer> {
  const ready = readyBlow(question);
  return ready.ok ? solved(landBlow(ready.value, question.speed, question.surface)) : ready;
}

/** What of a hit depends neither on its speed nor on what is hit. */
export function readyBlow(blow: Blow): Outcome<ReadyBlow> {
  const { arm, craft, heading, contactHeight, material, rootHole, give, loose } = blow;
  const direction = scale3(heading, 1 / Math.hypot(...heading));
  const end: Vector3 = [
    arm.root[0] + arm.beam.length * Math.cos(arm.yaw),
    arm.root[1] + arm.beam.length * Math.sin(arm.yaw),
    arm.root[2],
  ];
  const effective = effectiveMass(craft, [end[0], end[1], end[2] - contactHeight], direction);
  if (!effective.ok) return effective;
  const known = give === undefined ? tipGive(arm.beam) : solved(give);
  if (!known.ok) return known;
  const stiffness = armStiffness(known.value);
  if (stiffness === undefined) return noSolution('the arm has no stiffness in some direction');
  const push = tipLoadOf(arm, scale3(direction, -1), contactHeight);
  let armGive = 0;
  for (const [i, moved] of known.value.entries()) {
    for (let j = 0; j < 6; j++) armGive += (push[i] as number) * (moved[j] as number) * (push[j] as number);
  }
  const into = (v: Vector3) => inArmAxes(arm.yaw, v);
  const tip = tipMass(arm.beam);
  const [freeTip, freeRest] = [tip, restMass(loose?.rest ?? craft, end, arm.yaw, tip)].map(inverse);
  if (freeTip === undefined || freeRest === undefined)
    return noSolution('the craft has no inertia about some axis');
  const power = Math.abs(direction[2]) > 0.7 ? 2 : 1;
  return solved({
    effectiveMass: effective.value,
    armGive,
    beam: arm.beam,
    struck: {
      tipMass: tip[0] as number,
      freeTip,
      freeRest,
      arm: stiffness,
      push,
      heading: into(direction),
      loose: (loose?.parts ?? []).map(({ mass, stiffness: { along, upright }, place }) => ({
        mass,
        stiffness: [along, along, upright] as const,
        place: into(subtract3(place, end)),
      })),
    },
    material,
    rootHole,
    logDeviation: Math.hypot(material.strength.scatter, power * material.thicknessScatter),
  });
}

/** Motor and propeller with the arm's own share, about the tip section's middle. */
function tipMass(beam: ArmBeam): Float64Array {
  const { mass = 0, height = 0, inertia = [0, 0, 0] } = beam.tipBody ?? {};
  const [x, y, z] = inertia;
  const own = bodyMass(
    mass,
    [0, 0, -height],
    [
      [x, 0, 0],
      [0, y, 0],
      [0, 0, z],
    ],
  );
  const share = TIP_SHARE * beamMass(beam);
  // What turns of the arm's end by itself: a piece as long as it is wide.
  const width = outlineWidth(beam.outline, 1);
  for (const [axis, part] of [
    share,
    share,
    share,
    ...[1, 1, 2].map((k) => (k * share * width ** 2) / 12),
  ].entries()) {
    own[axis * 7] = (own[axis * 7] as number) + part;
  }
  return own;
}

/** The craft about the end of an arm, in the arm's axes, less what moves with the tip. */
function restMass(craft: MassProperties, end: Vector3, yaw: number, tip: Float64Array): Float64Array {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  const turn = [
    [c, s, 0],
    [-s, c, 0],
    [0, 0, 1],
  ];
  const inertia = turn.map((row) =>
    turn.map((column) =>
      row.reduce(
        (sum, a, i) => sum + column.reduce((inner, b, j) => inner + a * (craft.inertia[i]?.[j] ?? 0) * b, 0),
        0,
      ),
    ),
  ) as unknown as Matrix3;
  const whole = bodyMass(craft.mass, inArmAxes(yaw, subtract3(craft.centreOfGravity, end)), inertia);
  const without = whole.map((value, i) => value - (tip[i] as number));
  // A craft that weighs less than it should for the motor told on the arm: then all of it stays behind the arm.
  return isPositive(without) ? without : whole;
}

/** Cholesky's test. */
function isPositive(matrix: Float64Array): boolean {
  const lower = new Float64Array(36);
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * 6 + j] as number;
      for (let k = 0; k < j; k++) sum -= (lower[i * 6 + k] as number) * (lower[j * 6 + k] as number);
      if (i === j) {
        if (!(sum > LEAST_BEHIND * Math.abs(matrix[i * 7] as number))) return false;
        lower[i * 7] = Math.sqrt(sum);
      } else lower[i * 6 + j] = sum / (lower[j * 7] as number);
    }
  }
  return true;
}

/**
 * @param speed [m/s], over 0
 * @throws RangeError for a speed or contact stiffness that is not positive
 */
export function landBlow(ready: ReadyBlow, speed: number, surface: Surface): HitAnswer {
  if (!(speed > 0)) throw new RangeError(`speed: must be over 0 m/s, got ${speed}`);
  if (!(surface.contactStiffness > 0)) throw new RangeError(`surface: needs a stiffness over 0 N/m`);
  const { effectiveMass, armGive, beam } = ready;
  const stiffness = 1 / (armGive + 1 / surface.contactStiffness);
  const push = Math.PI * Math.sqrt(effectiveMass / stiffness);
  const watched = sectionsOf(beam, WATCHED, ready.rootHole);
  let most = 0;
  let along = 0;
  let peak = 0;
  let worst = new Float64Array(6);
  followBlow(
    ready.struck,
    { stiffness: surface.contactStiffness, restitution: surface.restitution },
    push,
    (load) => {
      along = Math.max(along, -(load[0] as number));
      peak = Math.max(peak, Math.hypot(load[0] as number, load[1] as number, load[2] as number));
      let used = 0;
      for (const section of watched) used = Math.max(used, usedAt(section, load, ready.material.strength));
      if (used > most) {
        most = used;
        worst = load.slice();
      }
    },
  );
  const load = worst.map((each) => each * speed);
  return answerTo(ready, { load, along: along * speed, peak: peak * speed, push, speed, stiffness });
}

/** The arm pushed slowly by so large a force at the struck point, as if it were a hit at `speed`. */
export function pushBlow(ready: ReadyBlow, force: number, speed: number): HitAnswer {
  const load = Float64Array.from(ready.struck.push, (each) => each * force);
  const along = Math.max(0, -(load[0] as number));
  const push = Math.PI * Math.sqrt(ready.effectiveMass * ready.armGive);
  return answerTo(ready, { load, along, peak: force, push, speed, stiffness: 1 / ready.armGive });
}

/** What a blow came to. */
interface Came {
  /** On the tip's section when the arm is nearest to breaking [N, N m]. */
  readonly load: Float64Array;
  /** Largest push along the arm, and largest force on it [N]. */
  readonly along: number;
  readonly peak: number;
  /** How long it lasts [s]. */
  readonly push: number;
  readonly speed: number;
  readonly stiffness: number;
}

function answerTo(ready: ReadyBlow, { load, along, peak, push, speed, stiffness }: Came): HitAnswer {
  const { effectiveMass, beam, logDeviation, material } = ready;
  const sections = sectionsOf(beam, EVERY, ready.rootHole);
  const worst = weakestPlace(beam, sections, load, material.strength, along, push);
  const chance =
    logDeviation > 0 ? normalShare(-Math.log(worst.reserve) / logDeviation) : Number(worst.reserve < 1);
  return {
    effectiveMass,
    stiffness,
    peakForce: peak,
    stress: sections.map((section) => {
      const { tension, compression, shear } = stressAt(section, load);
      return { at: section.at, tension, compression, shear };
    }),
    ...worst,
    chance,
    breakingSpeed: speed * worst.reserve,
    logDeviation,
  };
}

/** 1/(1/m + (r x n) . I^-1 (r x n)): the mass felt at a point of a free body struck along n [kg]. */
export function effectiveMass(craft: MassProperties, point: Vector3, direction: Vector3): Outcome<number> {
  const turn = cross(subtract3(point, craft.centreOfGravity), direction);
  const spin = denseSolve(flat(craft.inertia), Float64Array.from(turn), 3);
  if (spin === undefined) return noSolution('the craft has no inertia about some axis');
  return solved(1 / (1 / craft.mass + dot3(turn, [spin[0] as number, spin[1] as number, spin[2] as number])));
}

/** Places along the arm that are watched while it is struck, over its length. */
const WATCHED = [0, 0.2, 0.45, 0.7, 0.88];
/** Places told of. */
const EVERY = Array.from({ length: 21 }, (_, i) => i / 20);

/** A unit force at the contact as a load on the tip's section, in the arm's axes. */
function tipLoadOf(arm: FrameArm, force: Vector3, height: number): TipLoad {
  const own = inArmAxes(arm.yaw, force);
  return [...own, ...cross([0, 0, -height], own)] as unknown as TipLoad;
}

function inArmAxes(yaw: number, [x, y, z]: Vector3): Vector3 {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  return [c * x + s * y, c * y - s * x, z];
}

/** Less than this of a mass or inertia left behind the arm is none. */
const LEAST_BEHIND = 1e-5;

const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const flat = (m: Matrix3): Float64Array => Float64Array.from([...m[0], ...m[1], ...m[2]]);
