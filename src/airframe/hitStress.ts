import { type ArmBeam, outlineWidth } from './armBeam.ts';
import { torsionPeak } from './armStress.ts';
import { openHoleFactor } from './plyFailure.ts';
import { sectionStiffness } from './section.ts';
import type { FrameMaterial } from './types.ts';

type Strength = FrameMaterial['strength'];

/** A section of the arm: what its stresses take of a load on the tip [Pa a N or N m]. */
export interface Section {
  /** From the root, and to the tip [m]. */
  readonly at: number;
  readonly lever: number;
  /** Of a force, and of either bending at the section's edge. */
  readonly even: number;
  readonly upright: number;
  readonly sideways: number;
  /** Of torque: its elastic peak, and evened out before it tears. */
  readonly torsion: number;
  readonly evenTorsion: number;
  /** By what screw holes raise the stress along the arm. */
  readonly raised: number;
  /** By how much more fibres bear in either bending than pressed evenly. */
  readonly bentUpright: number;
  readonly bentSideways: number;
}

/** Sections of an arm at shares of its length from the root. @param rootHole diameter of the screw holes there [m] */
export const sectionsOf = (beam: ArmBeam, shares: readonly number[], rootHole: number): readonly Section[] =>
  shares.map((share) => {
    const at = share * beam.length;
    const width = outlineWidth(beam.outline, share);
    const { thickness, length } = beam;
    const area = width * thickness;
    const [short, long] = width < thickness ? [width, thickness] : [thickness, width];
    return {
      at,
      lever: length - at,
      even: 1 / area,
      upright: 6 / (area * thickness),
      sideways: 6 / (area * width),
      torsion: torsionPeak(beam, width),
      // In the plane a weave yields: its shear curve runs on nearly level from some 2 to over 5 % (ASTM D3518 stops
      // there). It tears when the whole section carries its strength: V/A, and torsion by the sand heap,
      // T = tau t2 (3b - t)/6 with t the shorter side (Nadai, Theory of Flow and Fracture of Solids): two thirds of the peaks.
      evenTorsion: 6 / (short * short * (3 * long - short)),
      raised: share === 0 ? holeRaises(beam, rootHole) : 1,
      bentUpright: bentStrength(thickness),
      bentSideways: bentStrength(width),
    };
  });

/**
 * By how much more a fibre bears in bending than pressed evenly: its less pressed neighbours hold it straight, the more
 * the shallower the bar is. Up to 1.73 for thin bars, none for thick ones (Wisnom 1994, finite elements; from its abstract);
 * nearly gone at 20 mm (bending tests on IM7/8552, from their abstract). The law between is ours: 1.5 mm over the depth.
 */
const bentStrength = (depth: number): number => 1 + Math.min(0.73, 1.5e-3 / depth);

/** Largest stresses in one section [Pa]. */
export interface SectionStress {
  readonly tension: number;
  readonly compression: number;
  /** What compression comes to as even pressure that would use the fibres as much. */
  readonly evenCompression: number;
  /** Of tension and compression, what bending up and down adds. */
  readonly upright: number;
  readonly shear: number;
  /** What the shear comes to when it has evened out over the section, before it tears. */
  readonly evenShear: number;
  readonly interlaminar: number;
}

/** Along the arm at the section's corners, where both bendings add; shear in its middle (as `armStress`, under loads on the tip). */
export function stressAt(section: Section, load: Float64Array): SectionStress {
  const [fx = 0, fy = 0, fz = 0, mx = 0, my = 0, mz = 0] = load;
  const { lever, even } = section;
  const upright = section.upright * Math.abs(my - lever * fz);
  const sideways = section.sideways * Math.abs(mz + lever * fy);
  return {
    upright,
    tension: Math.max(0, fx * even + upright + sideways),
    compression: Math.max(0, upright + sideways - fx * even),
    evenCompression: Math.max(0, upright / section.bentUpright + sideways / section.bentSideways - fx * even),
    shear: 1.5 * even * Math.abs(fy) + section.torsion * Math.abs(mx),
    evenShear: even * Math.abs(fy) + section.evenTorsion * Math.abs(mx),
    interlaminar: 1.5 * even * Math.abs(fz),
  };
}

/** Largest share of a strength that a load on the tip uses a section to: `stressAt` without a record, for every step of a blow. */
export function usedAt(section: Section, load: Float64Array, strength: Strength): number {
  const [fx, fy, fz] = [load[0] as number, load[1] as number, load[2] as number];
  const [mx, my, mz] = [load[3] as number, load[4] as number, load[5] as number];
  const { lever, even, raised } = section;
  const upright = section.upright * Math.abs(my - lever * fz);
  const sideways = section.sideways * Math.abs(mz + lever * fy);
  const along = fx * even;
  return Math.max(
    (raised * (along + upright + sideways)) / strength.tension,
    (raised * (upright / section.bentUpright + sideways / section.bentSideways - along)) /
      strength.compression,
    (even * Math.abs(fy) + section.evenTorsion * Math.abs(mx)) / strength.shear,
    (1.5 * even * Math.abs(fz)) / strength.interlaminar,
  );
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

/** Beside the hole less stress meets less strength. */
const holeRaises = (beam: ArmBeam, rootHole: number): number =>
  rootHole > 0 ? Math.max(1, atHole(beam, rootHole) / openHoleFactor(rootHole / 2)) : 1;

export interface Weakest {
  /** Strength over stress where it is least; under 1 it breaks. */
  readonly reserve: number;
  readonly weakest: 'tension' | 'compression' | 'shear' | 'interlaminar' | 'buckling';
  /** From the root [m]. */
  readonly place: number;
}

/**
 * Where an arm under a load on its tip is nearest to breaking. A push along the arm bends it on the more the nearer it is to
 * buckling: what it bears up and down and what it bears along join as springs in a row do, 1/r = 1/r1 + 1/r2 (Merchant 1954,
 * after Rankine), in the measure that bending up and down is the stress.
 *
 * @param along largest push along the arm [N], for a time [s]
 */
export function weakestPlace(
  beam: ArmBeam,
  sections: readonly Section[],
  load: Float64Array,
  strength: Strength,
  along: number,
  duration: number,
): Weakest {
  const buckles = along > 0 ? bucklingForce(beam, duration) / along : Number.POSITIVE_INFINITY;
  let worst: Weakest = { reserve: buckles, weakest: 'buckling', place: 0 };
  for (const section of sections) {
    const { at, raised } = section;
    const stress = stressAt(section, load);
    const consider = (weakest: Weakest['weakest'], allowed: number, found: number, upright = 0): void => {
      if (!(found > 0)) return;
      const reserve = 1 / (found / allowed + Math.min(1, upright / found) / buckles);
      if (reserve < worst.reserve) worst = { reserve, weakest, place: at };
    };
    consider('tension', strength.tension, raised * stress.tension, raised * stress.upright);
    const pressed = stress.upright / section.bentUpright;
    consider('compression', strength.compression, raised * stress.evenCompression, raised * pressed);
    consider('shear', strength.shear, stress.evenShear);
    consider('interlaminar', strength.interlaminar, stress.interlaminar);
  }
  return worst;
}

/**
 * Push at which the arm gives way sideways: Euler's for one that lasts, more for one too short to bend it far. The weight of
 * the push's length over the arm's swing is ours, set by our own runs with large deflections
 * (docs/decisions/breaking-speeds.md): a push of a third of a swing adds nothing to the bending, one of two swings all.
 *
 * @param duration of the push [s]
 */
function bucklingForce(beam: ArmBeam, duration: number): number {
  const narrow = Math.min(...beam.outline.map(({ width }) => width));
  const { outOfPlane } = sectionStiffness(narrow, beam.thickness, beam.moduli);
  const euler = (Math.PI ** 2 * outOfPlane) / (4 * beam.length ** 2);
  const swaying = (beam.tipBody?.mass ?? 0) + TIP_SHARE * beamMass(beam);
  const swing = 2 * Math.PI * Math.sqrt((swaying * beam.length ** 3) / (3 * outOfPlane));
  return euler * (1 + (swing / duration) ** 4);
}

/** Share of a cantilever's mass that moves with its tip (33/140, Rayleigh). */
export const TIP_SHARE = 0.24;

/** Of an arm at its narrowest, which is what most of its length is [kg]. */
export const beamMass = ({ outline, density, thickness, length }: ArmBeam): number =>
  density * Math.min(...outline.map(({ width }) => width)) * thickness * length;
