import { denseSolve } from '../numerics/denseSolve.ts';
import { normalShare } from '../numerics/normalShare.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { cross3, dot3, type Matrix3, scale3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import { type TipGive, type TipLoad, tipGive } from './armBeam.ts';
import { armForce } from './blowChain.ts';
import type { FrameArm } from './frameModel.ts';
import { stressAlong } from './stressAlong.ts';
import { swayingMass } from './swayingMass.ts';
import type { FrameMaterial, MassProperties } from './types.ts';
import { type StruckArm, type Weakest, weakestPlace } from './weakestPlace.ts';

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
  /** The craft without it. */
  readonly rest: MassProperties;
  /** [kg] */
  readonly mass: number;
  /** Of what holds it, along the blow [N/m]. */
  readonly stiffness: number;
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
  /** The pack on its straps; everything is rigid when absent. */
  readonly loose?: LooseMass;
}

export interface Hit extends Blow {
  /** [m/s], over 0 */
  readonly speed: number;
  readonly surface: Surface;
}

/** A blow worked out for a force of 1 N: all is linear, so speed and surface only scale it. */
export interface ReadyBlow extends StruckArm {
  /** Mass that the struck point feels [kg]. */
  readonly effectiveMass: number;
  /** Of that, what stops at the contact itself, what the arm has to stop, and what follows loosely [kg]. */
  readonly tipMass: number;
  readonly behindMass: number;
  readonly looseMass: number;
  /** Of what holds the loose mass, as felt at the struck point [N/m]. */
  readonly strapStiffness: number;
  /** Of the struck point along the heading [m/N]. */
  readonly armGive: number;
  readonly logDeviation: number;
}

export interface HitAnswer extends Weakest {
  /** Mass that the struck point feels [kg]. */
  readonly effectiveMass: number;
  /** Of arm and contact in series along the heading [N/m]. */
  readonly stiffness: number;
  /** [N] */
  readonly peakForce: number;
  /** Along the arm from its root: place [m], largest tension, compression and shear [Pa]. */
  readonly stress: readonly {
    readonly at: number;
    readonly tension: number;
    readonly compression: number;
    readonly shear: number;
  }[];
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
 * A motor's end against a surface, by the spring-mass energy balance (Abrate 1998, ch. 3): the
 * effective mass 1/(1/m + r2/I) stops on arm and contact in series, F = V sqrt(k m). The motor's own
 * inertia, which loads only the contact, and damping are left out, so the load on the arm is on the safe side.
 * Linear to failure. Bolt holes inside the root's grip by `openHoleFactor`; delamination only as interlaminar shear.
 * For one blow against many surfaces: `readyBlow`, then `landBlow` for each.
 *
 * @throws RangeError for a speed or contact stiffness that is not positive
 */
export function hit(question: Hit): Outcome<HitAnswer> {
  const ready = readyBlow(question);
  return ready.ok ? solved(landBlow(ready.value, question.speed, question.surface)) : ready;
}

/** What of a hit depends neither on its speed nor on what is hit. */
export function readyBlow({
  arm,
  craft,
  heading,
  contactHeight,
  material,
  rootHole,
  give,
  loose,
}: Blow): Outcome<ReadyBlow> {
  const direction = scale3(heading, 1 / Math.hypot(...heading));
  const tip: Vector3 = [
    arm.root[0] + arm.beam.length * Math.cos(arm.yaw),
    arm.root[1] + arm.beam.length * Math.sin(arm.yaw),
    arm.root[2] - contactHeight,
  ];
  const effective = effectiveMass(craft, tip, direction);
  if (!effective.ok) return effective;
  const without = loose === undefined ? effective : effectiveMass(loose.rest, tip, direction);
  if (!without.ok) return without;
  const tipMass = swayingMass(arm.beam);
  const looseMass = Math.max(0, effective.value - without.value);
  const load = tipLoadOf(arm, scale3(direction, -1), contactHeight);
  const known = give === undefined ? tipGive(arm.beam) : solved(give);
  if (!known.ok) return known;
  let armGive = 0;
  for (const [i, moved] of known.value.entries()) {
    for (let j = 0; j < 6; j++) armGive += (load[i] as number) * (moved[j] as number) * (load[j] as number);
  }
  const power = Math.abs(direction[2]) > 0.7 ? 2 : 1;
  return solved({
    effectiveMass: effective.value,
    tipMass,
    behindMass: Math.max(without.value - tipMass, LEAST_BEHIND * without.value),
    looseMass,
    strapStiffness: loose === undefined ? 0 : (looseMass * loose.stiffness) / loose.mass,
    armGive,
    beam: arm.beam,
    load,
    stress: stressAlong(arm.beam, load),
    material,
    rootHole,
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
  const { effectiveMass, armGive, logDeviation } = ready;
  const stiffness = 1 / (armGive + 1 / surface.contactStiffness);
  const chain = {
    contact: surface.contactStiffness,
    restitution: surface.restitution,
    tip: ready.tipMass,
    arm: 1 / armGive,
    craft: ready.behindMass,
    loose: ready.looseMass,
    strap: ready.strapStiffness,
  };
  const peakForce = speed * armForce(chain);
  const worst = weakestPlace(ready, peakForce, Math.PI * Math.sqrt(effectiveMass / stiffness));
  const chance =
    logDeviation > 0 ? normalShare(-Math.log(worst.reserve) / logDeviation) : Number(worst.reserve < 1);
  return {
    effectiveMass,
    stiffness,
    peakForce,
    stress: ready.stress.map(({ at, tension, compression, shear }) => ({
      at,
      tension: tension * peakForce,
      compression: compression * peakForce,
      shear: shear * peakForce,
    })),
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
  const [c, s] = [Math.cos(arm.yaw), Math.sin(arm.yaw)];
  const own: Vector3 = [c * force[0] + s * force[1], c * force[1] - s * force[0], force[2]];
  return [...own, ...cross3([0, 0, -height], own)] as unknown as TipLoad;
}

/** A motor heavier than all the craft that its blow feels leaves at least this share behind the arm. */
const LEAST_BEHIND = 0.05;

const flat = (m: Matrix3): Float64Array => Float64Array.from([...m[0], ...m[1], ...m[2]]);
