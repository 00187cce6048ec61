import type { ArmBeam, TipLoad } from './armBeam.ts';
import { openHoleFactor } from './plyFailure.ts';
import { sectionStiffness } from './section.ts';
import type { UnitStress } from './stressAlong.ts';
import { swayingMass } from './swayingMass.ts';
import type { FrameMaterial } from './types.ts';

/** An arm with what a force of 1 N at its end does to it. */
export interface StruckArm {
  readonly beam: ArmBeam;
  readonly load: TipLoad;
  readonly stress: readonly UnitStress[];
  readonly material: FrameMaterial;
  /** Diameter of the screw holes at the root, 0 for none [m]. */
  readonly rootHole: number;
}

export interface Weakest {
  /** Strength over stress where it is least, strength being its median; under 1 it breaks. */
  readonly reserve: number;
  readonly weakest: 'tension' | 'compression' | 'shear' | 'interlaminar' | 'buckling';
  /** Where it breaks, from the root [m]. */
  readonly place: number;
}

/** From a clamp's edge to the middle of its first screw, in holes (edge distance: common practice, no source). */
const SCREW_INSIDE = 2;

/**
 * Share of the root's stress that reaches the near side of the first screw hole: inside the grip the moment dies
 * away over the length that the arm acts longer by, since that length is the integral of its dying.
 */
function atHole({ rootEnd }: ArmBeam, hole: number): number {
  const dying = Math.max(rootEnd.outOfPlane, rootEnd.inPlane);
  return dying > 0 ? Math.exp((-(SCREW_INSIDE - 0.5) * hole) / dying) : 0;
}

/**
 * Where an arm under a blow is nearest its strength, and by what it would break there.
 *
 * @param force at the struck point [N]
 * @param duration of the push [s]
 */
export function weakestPlace(
  { stress, load, beam, material, rootHole }: StruckArm,
  force: number,
  duration: number,
): Weakest {
  const { strength } = material;
  let worst: Weakest = {
    reserve: bucklingForce(beam, duration) / (Math.max(0, -load[0]) * force),
    weakest: 'buckling',
    place: 0,
  };
  const consider = (weakest: Weakest['weakest'], allowed: number, unit: number, place: number): void => {
    const reserve = allowed / (unit * force);
    if (unit > 0 && reserve < worst.reserve) worst = { reserve, weakest, place };
  };
  // Beside the hole less stress meets less strength.
  const hole = rootHole > 0 ? Math.max(1, atHole(beam, rootHole) / openHoleFactor(rootHole / 2)) : 1;
  for (const { at, tension, compression, evenShear, interlaminar } of stress) {
    const raised = at === 0 ? hole : 1;
    consider('tension', strength.tension, tension * raised, at);
    consider('compression', strength.compression, compression * raised, at);
    consider('shear', strength.shear, evenShear, at);
    consider('interlaminar', strength.interlaminar, interlaminar, at);
  }
  return worst;
}

/**
 * Load at which the arm buckles over the push along it. A push as short as a hit's has no time to bend the
 * arm far at Euler's load: crookedness grows as cosh(omega t sqrt(P/Pe - 1)) (Lindberg and Florence, Dynamic
 * Pulse Buckling, 1987), and the load that makes it grow tenfold (our limit) is the one taken.
 *
 * @param duration of the push [s]
 */
function bucklingForce(beam: ArmBeam, duration: number): number {
  const narrow = Math.min(...beam.outline.map(({ width }) => width));
  const { outOfPlane } = sectionStiffness(narrow, beam.thickness, beam.moduli);
  const euler = (Math.PI ** 2 * outOfPlane) / (4 * beam.length ** 2);
  const sway = Math.sqrt((3 * outOfPlane) / beam.length ** 3 / swayingMass(beam));
  return euler * (1 + (Math.acosh(10) / (sway * duration)) ** 2);
}
