import { beamKey, type TipGive, tipGive } from '../../../airframe/armBeam.ts';
import type { FrameArm } from '../../../airframe/frameModel.ts';
import {
  type HitAnswer,
  hitHeading,
  landBlow,
  pushBlow,
  type ReadyBlow,
  readyBlow,
  SURFACES,
  type Surface,
} from '../../../airframe/hits.ts';
import { swingingArm } from '../../../airframe/swingingArm.ts';
import type { Craft, CraftMotor } from '../../../build/craft.ts';
import type { Purpose } from '../../../build/schema/brief.ts';
import { normalShare } from '../../../numerics/normalShare.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';
import type { Vector3 } from '../../../numerics/vector3.ts';
import type { HitReport, HitWay } from '../airframeData.ts';
import { bladeForce } from './bladeForce.ts';
import { type LandsFirst, landsFirst } from './leading.ts';
import { looseParts, PACK_STIFFNESS } from './looseParts.ts';

/** Clearance hole over its screw [m]. */
const CLEARANCE = 2e-4;
/** A hard landing on the pack shakes the arms by this over a slow push (common practice, no source). */
const SUDDEN = 1.5;
/** A bell on its shaft and bearings, struck from aside: a 5 mm steel shaft 12 mm long gives some 1e7, the bell's ring and the arm's pad the rest (common practice, no source) [N/m]. */
const BELL_STIFFNESS = 2e6;
/** A guard's hoop in front of the motor gives way as this [N/m] (common practice, no source). */
const GUARD_STIFFNESS = 2e4;
/** Load put on at once over the same put on slowly. */
const AT_ONCE = 2;
/** A pack that hangs lower than the arms by this takes the drop. */
const CLEAR_LEAD = 0.008;

/** Typical speed of a hit [m/s] by purpose and way, as the forecast of knocks has it (common practice, no source). */
export function usualHitSpeed(purpose: Purpose, way: HitWay): number {
  if (way === 'flat') return 6;
  const ahead = { race: 13, freestyle: 9, 'guarded filming': 4, cruising: 9, micro: 4 }[purpose];
  switch (way) {
    case 'side-on':
      return 0.8 * ahead;
    case 'prop strike':
      return 0.6 * ahead;
    case 'end-on':
    case 'from ahead':
      return ahead;
  }
}

/** A craft's arms ready to be struck: every way of striking each, whatever is hit. */
export interface StruckCraft {
  readonly craft: Craft;
  readonly purpose: Purpose;
  readonly arms: readonly StruckArm[];
}

interface StruckArm {
  readonly arm: FrameArm;
  readonly motor: CraftMotor;
  readonly blows: readonly (readonly [way: HitWay, ready: ReadyBlow])[];
  readonly strike: ReadyBlow;
}

/** What the tip of each arm gives way; arms that are alike are solved once. */
export function tipGives(arms: readonly FrameArm[]): Outcome<readonly TipGive[]> {
  const solvedBeams = new Map<string, TipGive>();
  const all: TipGive[] = [];
  for (const { beam } of arms) {
    const key = beamKey(beam);
    const known = solvedBeams.get(key);
    const give = known === undefined ? tipGive(beam) : solved(known);
    if (!give.ok) return give;
    solvedBeams.set(key, give.value);
    all.push(give.value);
  }
  return solved(all);
}

/**
 * @param arms in the order of `craft.frame.arms`
 * @param gives of their tips, in the same order
 */
export function struckCraft(
  craft: Craft,
  purpose: Purpose,
  arms: readonly FrameArm[],
  gives: Outcome<readonly TipGive[]> = tipGives(arms),
): Outcome<StruckCraft> {
  if (!gives.ok) return gives;
  const loose = looseParts(craft);
  const list: StruckArm[] = [];
  for (const [index, arm] of arms.entries()) {
    const motor = craft.motors.find(({ place }) => place.armIndex === index);
    if (motor === undefined) continue;
    const give = gives.value[index];
    if (give === undefined) throw new RangeError(`gives: none for ${arm.name}`);
    const swinging = swingingArm({
      arm,
      craft: craft.massProperties,
      rootHole: rootHole(craft),
      give,
      ...(loose === undefined ? {} : { loose }),
    });
    if (!swinging.ok) return swinging;
    const ready = (way: HitWay, contactHeight: number): Outcome<ReadyBlow> =>
      readyBlow({
        arm,
        material: craft.frame.material,
        craft: craft.massProperties,
        heading: headingOf(arm, way),
        contactHeight,
        rootHole: rootHole(craft),
        swinging: swinging.value,
        ...(loose === undefined ? {} : { loose }),
      });
    const blows: (readonly [HitWay, ReadyBlow])[] = [];
    for (const way of waysOf(motor)) {
      // From below the arm's own end lands; else the middle of the bell is struck.
      const blow = ready(way, way === 'flat' ? 0 : bellHeight(craft, motor));
      if (!blow.ok) return blow;
      blows.push([way, blow.value]);
    }
    const strike = ready('prop strike', arm.root[2] - motor.discPlace[2]);
    if (!strike.ok) return strike;
    list.push({ arm, motor, blows, strike: strike.value });
  }
  return solved({ craft, purpose, arms: list });
}

/** Every arm struck every way against every surface. */
export function hitAll(struck: StruckCraft, surfaces: readonly Surface[] = SURFACES): readonly HitReport[] {
  const first = landsFirst(struck.craft);
  return struck.arms.flatMap((own) => [
    ...surfaces.flatMap((surface) =>
      own.blows.map(([way, ready]) => {
        const speed = usualHitSpeed(struck.purpose, way);
        const spared = way === 'flat' ? packTakes(struck, own.arm, surface, speed, first) : undefined;
        const met =
          way === 'flat' ? surface : behindGuard(struck.craft, own.motor, softer(surface, BELL_STIFFNESS));
        const answer = spared === undefined ? landBlow(ready, speed, met) : pushBlow(ready, spared, speed);
        return reportOf(answer, own.arm, surface, way, speed);
      }),
    ),
    propStrike(struck, own),
  ]);
}

const waysOf = ({ place }: CraftMotor): readonly HitWay[] =>
  place.position[0] > 0 ? ['flat', 'end-on', 'side-on', 'from ahead'] : ['flat', 'end-on', 'side-on'];

/** What meets a guarded motor in its plane meets the guard first: the two give way one after the other. */
function behindGuard({ frame }: Craft, motor: CraftMotor, surface: Surface): Surface {
  if (!frame.guards.some((guard) => guard.motor === motor.place.name)) return surface;
  return softer(surface, GUARD_STIFFNESS);
}

/** A surface met through something that gives way itself [N/m]. */
const softer = (surface: Surface, stiffness: number): Surface => ({
  ...surface,
  contactStiffness: 1 / (1 / surface.contactStiffness + 1 / stiffness),
});

function headingOf(arm: FrameArm, way: HitWay): Vector3 {
  switch (way) {
    case 'from ahead':
      return [1, 0, 0];
    case 'prop strike':
      return hitHeading(arm, 'side-on');
    case 'flat':
    case 'end-on':
    case 'side-on':
      return hitHeading(arm, way);
  }
}

/** Height of the bell's middle above the arm's mid-plane, negative under it [m]. */
function bellHeight({ frame }: Craft, { place, fit }: CraftMotor): number {
  const half = ((frame.arms[place.armIndex]?.thickness ?? 0) + fit.height) / 2;
  return place.propSide === 'above' ? half : -half;
}

/** Screw holes where separate arms are clamped, as wide as for the motors' screws. A sheet has none there. */
function rootHole({ frame, motors }: Craft): number {
  if (frame.construction === 'one-piece plate') return 0;
  const screw = Number.parseFloat(motors[0]?.fit.mountScrew.slice(1) ?? '3') / 1000;
  return screw + CLEARANCE;
}

/**
 * A level drop that the pack takes: the craft stops on pack and surface in series, and the arm feels only
 * its own end's inertia. Undefined where the arms land themselves.
 */
function packTakes(
  { craft }: StruckCraft,
  arm: FrameArm,
  surface: Surface,
  speed: number,
  first: LandsFirst,
): number | undefined {
  if (first.what !== 'pack' || first.lead < CLEAR_LEAD) return undefined;
  const stiffness = 1 / (1 / PACK_STIFFNESS + 1 / surface.contactStiffness);
  const deceleration = speed * Math.sqrt(stiffness / craft.massProperties.mass);
  return Math.max(1e-6, SUDDEN * (arm.beam.tipBody?.mass ?? 0) * deceleration);
}

/**
 * A blade that meets something hard pushes the arm aside, at the height of its disc, by no more than it takes to break
 * the blade; put on at once, that bends the arm up to twice as far as a slow push would (Timoshenko, Vibration Problems).
 */
function propStrike({ craft, purpose }: StruckCraft, { arm, motor, strike }: StruckArm): HitReport {
  const rotor = craft.rotors[motor.rotor];
  const propeller = craft.parts.propellers.find(({ id }) => id === rotor?.partId);
  if (rotor === undefined || propeller === undefined) {
    throw new RangeError('motors: each needs a propeller');
  }
  const speed = usualHitSpeed(purpose, 'prop strike');
  const force = bladeForce(rotor.blade, propeller.material);
  const loaded = pushBlow(strike, AT_ONCE * force.median, speed);
  const logDeviation = Math.hypot(loaded.logDeviation, force.logDeviation);
  const { breakingSpeed: _, ...report } = reportOf(
    loaded,
    arm,
    { name: 'anything hard' },
    'prop strike',
    speed,
  );
  return { ...report, logDeviation, chance: chanceOf(loaded.reserve, logDeviation) };
}

const chanceOf = (reserve: number, logDeviation: number): number =>
  logDeviation > 0 ? normalShare(-Math.log(reserve) / logDeviation) : Number(reserve < 1);

function reportOf(
  answer: HitAnswer,
  arm: FrameArm,
  surface: Pick<Surface, 'name'>,
  way: HitWay,
  speed: number,
): HitReport & { readonly breakingSpeed: number } {
  const { peakForce, reserve, weakest, place, chance, breakingSpeed, logDeviation, stress } = answer;
  return {
    arm: arm.name,
    way,
    surface: surface.name,
    speed,
    peakForce,
    reserve,
    weakest,
    place,
    chance,
    breakingSpeed,
    logDeviation,
    stress,
  };
}
