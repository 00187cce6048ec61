import { denseSolve } from '../numerics/denseSolve.ts';
import { normalShare } from '../numerics/normalShare.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { cross3, dot3, type Matrix3, scale3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import type { ArmBeam, TipLoad } from './armBeam.ts';
import type { FrameArm } from './frameModel.ts';
import { type Section, stressAt, usedAt, type Weakest, weakestPlace } from './hitStress.ts';
import { followBlow, type StruckArm } from './struckArm.ts';
import { endOf, inArmAxes, type SwingingArm, type SwingingQuestion, swingingArm } from './swingingArm.ts';
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

/** One way of striking one arm, whatever the speed and what is hit. */
export interface Blow extends Omit<SwingingQuestion, 'give'> {
  readonly material: FrameMaterial;
  /** Unit vector of the craft's velocity against the surface, the aircraft's axes. */
  readonly heading: Vector3;
  /** Where the motor is struck above the arm's mid-plane [m]. */
  readonly contactHeight: number;
  /** From `swingingArm`; worked out when absent. */
  readonly swinging?: SwingingArm;
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
  readonly watched: readonly Section[];
  readonly sections: readonly Section[];
  readonly material: FrameMaterial;
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
  const { arm, craft, heading, contactHeight, material } = blow;
  const known = blow.swinging === undefined ? swingingArm(blow) : solved(blow.swinging);
  if (!known.ok) return known;
  const { give, watched, sections, ...swinging } = known.value;
  const direction = scale3(heading, 1 / Math.hypot(...heading));
  const end = endOf(arm);
  const effective = effectiveMass(craft, [end[0], end[1], end[2] - contactHeight], direction);
  if (!effective.ok) return effective;
  const push = tipLoadOf(arm, scale3(direction, -1), contactHeight);
  let armGive = 0;
  for (const [i, moved] of give.entries()) {
    for (let j = 0; j < 6; j++) armGive += (push[i] as number) * (moved[j] as number) * (push[j] as number);
  }
  const power = Math.abs(direction[2]) > 0.7 ? 2 : 1;
  return solved({
    effectiveMass: effective.value,
    armGive,
    beam: arm.beam,
    struck: { ...swinging, push, heading: inArmAxes(arm.yaw, direction) },
    watched,
    sections,
    material,
    logDeviation: Math.hypot(material.strength.scatter, power * material.thicknessScatter),
  });
}

/**
 * @param speed [m/s], over 0
 * @throws RangeError for a speed or contact stiffness that is not positive
 */
export function landBlow(ready: ReadyBlow, speed: number, surface: Surface): HitAnswer {
  if (!(speed > 0)) throw new RangeError(`speed: must be over 0 m/s, got ${speed}`);
  if (!(surface.contactStiffness > 0)) throw new RangeError(`surface: needs a stiffness over 0 N/m`);
  const { effectiveMass, armGive, watched } = ready;
  const stiffness = 1 / (armGive + 1 / surface.contactStiffness);
  const push = Math.PI * Math.sqrt(effectiveMass / stiffness);
  let most = 0;
  let along = 0;
  let peak = 0;
  const worst = new Float64Array(6);
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
        worst.set(load);
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
  const { effectiveMass, beam, logDeviation, material, sections } = ready;
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
  const turn = cross3(subtract3(point, craft.centreOfGravity), direction);
  const spin = denseSolve(flat(craft.inertia), Float64Array.from(turn), 3);
  if (spin === undefined) return noSolution('the craft has no inertia about some axis');
  return solved(1 / (1 / craft.mass + dot3(turn, [spin[0] as number, spin[1] as number, spin[2] as number])));
}

/** A unit force at the contact as a load on the tip's section, in the arm's axes. */
function tipLoadOf(arm: FrameArm, force: Vector3, height: number): TipLoad {
  const own = inArmAxes(arm.yaw, force);
  return [...own, ...cross3([0, 0, -height], own)] as unknown as TipLoad;
}

const flat = (m: Matrix3): Float64Array => Float64Array.from([...m[0], ...m[1], ...m[2]]);
