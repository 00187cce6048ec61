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
