/**
 * Corrections to two-dimensional sections, each a small function with a neutral value.
 */

/**
 * Rotational stall delay after Du and Selig 1998 (AIAA-98-0021), eqs (10) and (11) with a = b = d = 1:
 * the share of the gap to potential-flow lift that rotation closes. 0 is neutral.
 *
 * @param chordOverRadius local c/r
 * @param radiusRatio local r/R
 * @param tipRatio tip speed over the tip's helical speed, 0 to 1
 */
export function stallDelayLift(chordOverRadius: number, radiusRatio: number, tipRatio: number): number {
  return duSelig(chordOverRadius, 1 / (Math.max(tipRatio, 0.05) * radiusRatio));
}

/** The drag counterpart of `stallDelayLift`: the share of the drag rise that rotation takes away. */
export function stallDelayDrag(chordOverRadius: number, radiusRatio: number, tipRatio: number): number {
  return duSelig(chordOverRadius, 1 / (2 * Math.max(tipRatio, 0.05) * radiusRatio));
}

function duSelig(chordOverRadius: number, exponent: number): number {
  const power = chordOverRadius ** exponent;
  const share = (((1.6 * chordOverRadius) / 0.1267) * (1 - power)) / (1 + power) - 1;
  return Math.min(1, Math.max(0, share / (2 * Math.PI)));
}

/** Blasius' laminar plate, both sides: drag coefficient times the root of Reynolds number (Schlichting, Boundary-Layer Theory, ch. 7). */
const LAMINAR_PLATE = 2 * 1.328;

/**
 * Profile drag to add below the lowest computed Reynolds number: there only friction grows, as on a
 * laminar plate, while the drag of separation stays. 0 is neutral. Held below Re 500.
 */
export function lowReynoldsDrag(reynolds: number, lowest: number): number {
  if (reynolds >= lowest) return 0;
  return LAMINAR_PLATE * (1 / Math.sqrt(Math.max(reynolds, 500)) - 1 / Math.sqrt(lowest));
}

/**
 * Fastest helical tip Mach number that is answered. The corrections below are held or end near it, nothing was measured past
 * 0.3 at this size, and tips of large propellers near the speed of sound lose thrust that these laws do not take away (from memory).
 */
export const LARGEST_TIP_MACH = 0.9;

/** Words for a tip beyond `LARGEST_TIP_MACH`; undefined below. */
export function tooFastTip(tipMach: number): string | undefined {
  return tipMach > LARGEST_TIP_MACH
    ? `the tip runs at Mach ${tipMach.toFixed(2)}; beyond ${LARGEST_TIP_MACH} nothing is known of small propellers (an rpm with a digit too many, or that of the controller before the pole pairs are divided out?)`
    : undefined;
}

/**
 * Prandtl and Glauert's steepening of the lift slope, 1/sqrt(1 - M^2), held at its value at Mach 0.75
 * where the theory has long ended. 1 is neutral.
 */
export function prandtlGlauert(mach: number): number {
  const held = Math.min(mach, 0.75);
  return 1 / Math.sqrt(1 - held * held);
}

/** Thickness over chord of the shipped section, and Korn's technology factor for ordinary sections. */
const THICKNESS = 0.07;
const KORN = 0.87;

/**
 * Wave drag by Korn's drag-divergence Mach number and Lock's fourth-power law (Mason 1990,
 * AIAA 90-0404, eqs 1 to 3): added to c_d. 0 is neutral. A fourth power runs away: held at 0.15.
 */
export function waveDrag(mach: number, liftCoefficient: number): number {
  const critical = KORN - THICKNESS - 0.1 * Math.abs(liftCoefficient) - 0.1077;
  const over = mach - critical;
  return over <= 0 ? 0 : Math.min(0.15, 20 * over ** 4);
}
