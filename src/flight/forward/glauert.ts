/**
 * Induced speed of a disc in forward flight [m/s]: Glauert's hypothesis (ARC R&M 1111, 1926),
 *
 *   v sqrt(Vx2 + (Vz + v)2) = vh2,   vh2 = T / (2 rho A)
 *
 * by Newton's method from above, where the left side is convex and rising, so it walks down to the one root.
 *
 * @param hoverSpeed vh, the induced speed of the same thrust in hover [m/s], >= 0
 * @param edgewise Vx, along the disc [m/s]
 * @param axial Vz, through the disc from above [m/s]; down to -vh/2, a slow descent such as in another rotor's upwash
 * @throws RangeError for faster descent, where momentum theory has no single answer
 */
export function glauertInducedSpeed(hoverSpeed: number, edgewise: number, axial: number): number {
  if (!(axial >= -0.5 * hoverSpeed)) {
    throw new RangeError(`axial must be at least ${-0.5 * hoverSpeed} m/s; found ${axial} m/s`);
  }
  if (!(hoverSpeed > 0)) return 0;
  const square = hoverSpeed * hoverSpeed;
  let v =
    axial < 0
      ? hoverSpeed - axial
      : Math.min(hoverSpeed, square / Math.max(Math.hypot(edgewise, axial), 1e-300));
  for (let iteration = 0; iteration < 60; iteration++) {
    const through = axial + v;
    const resultant = Math.hypot(edgewise, through);
    const excess = v * resultant - square;
    const next = v - excess / (resultant + (v * through) / resultant);
    if (Math.abs(next - v) <= 1e-14 * hoverSpeed) return next;
    v = next;
  }
  return v;
}
