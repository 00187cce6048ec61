/**
 * Radius of an open rotor's slipstream in hover at a distance behind its disc [m]: the vortex tube's axial speed on
 * the axis, v (1 + z / sqrt(z2 + R2)), and the flow kept between the discs (McCormick, Aerodynamics of V/STOL
 * Flight, 1967, ch. 4, from memory). R at the disc, R / sqrt 2 far away.
 *
 * @param radius of the disc [m], over 0
 * @param behind [m], 0 or more
 */
export function slipstreamRadius(radius: number, behind: number): number {
  return radius / Math.sqrt(1 + behind / Math.hypot(behind, radius));
}
