/**
 * Induced velocity at the disc in axial flow [m/s]: momentum theory, v2 + V v = T / (2 rho A).
 * For climb and hover (axialSpeed >= 0) with positive thrust; 0 for none.
 *
 * @param axialSpeed [m/s]
 */
export function inducedSpeed(
  thrust: number,
  axialSpeed: number,
  airDensity: number,
  discArea: number,
): number {
  if (!(thrust > 0)) return 0;
  const half = 0.5 * Math.max(axialSpeed, 0);
  return Math.sqrt(half * half + thrust / (2 * airDensity * discArea)) - half;
}

/**
 * Axial speed that stands for the upper rotor's wake at the lower disc of a coaxial pair, over the upper
 * rotor's induced speed. The fully contracted wake covers half the lower disc at twice that speed; momentum
 * theory with equal thrusts then gives the lower rotor a power of (1 + sqrt 17)/4 x 2 - 1 = 1.5616 of its
 * own (Leishman and Syal 2008, case 'lower rotor in the contracted wake'). A rotor climbing at V = x - 1/x,
 * x = 1.5616, asks the same.
 */
export const COAXIAL_WAKE = ((): number => {
  const x = (1 + Math.sqrt(17)) / 2 - 1;
  return x - 1 / x;
})();

/**
 * Share of `COAXIAL_WAKE` that is left in flight along the discs, 1 in hover: the upper wake is blown back on its way down
 * and lands beside the lower disc. Contracted to half its area it is swept at the mean speed that it has on that way, the
 * induced speed growing along the axis as 1 + h/sqrt(1 + h2) of that at its disc (the semi-infinite vortex cylinder;
 * Leishman 2006 section 2.3, from memory); what covers the lower disc is the area two circles share.
 *
 * @param drop between the discs over the upper one's radius, >= 0
 * @param size of the lower radius over the upper one
 * @param inducedSpeed of the upper rotor at its disc [m/s]
 * @param axialSpeed of both through the air, from above [m/s]
 * @param edgewiseSpeed along the discs [m/s], >= 0
 */
export function coaxialCover(
  drop: number,
  size: number,
  inducedSpeed: number,
  axialSpeed: number,
  edgewiseSpeed: number,
): number {
  if (!(edgewiseSpeed > 0)) return 1;
  const growth = drop > 0 ? 1 + (Math.hypot(1, drop) - 1) / drop : 1;
  const down = axialSpeed + growth * inducedSpeed;
  const swept = (drop * edgewiseSpeed) / down;
  if (!(down > 0 && swept < CONTRACTED + size)) return 0;
  return sharedArea(swept, CONTRACTED, size) / sharedArea(0, CONTRACTED, size);
}

/** Radius of a fully contracted wake over its disc's. */
const CONTRACTED = Math.SQRT1_2;

/** Area that two circles share, their centres `apart`. */
function sharedArea(apart: number, a: number, b: number): number {
  if (apart >= a + b) return 0;
  const smaller = Math.min(a, b);
  if (apart <= Math.abs(a - b)) return Math.PI * smaller * smaller;
  const toChord = (apart * apart + a * a - b * b) / (2 * apart);
  const segment = (radius: number, distance: number): number =>
    radius * radius * Math.acos(distance / radius) -
    distance * Math.sqrt(radius * radius - distance * distance);
  return segment(a, toChord) + segment(b, apart - toChord);
}
