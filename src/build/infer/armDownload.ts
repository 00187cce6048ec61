import type { ArmGeometry } from '../../airframe/types.ts';

/** Of a flat bar across the stream, rounded a little by the holes in it (Hoerner 1965, ch. 3, from memory). */
const BAR_DRAG = 1.8;
/** Slipstream speed a third of a radius behind the disc over the induced speed at it: 1 + z / sqrt(z2 + R2). */
const SPEED_UP = 1.3;

/**
 * Share of a rotor's thrust lost on the arm under it: drag of the covered strip in the slipstream,
 * over T = 2 rho A v2 (momentum theory), so share = C_D k2 S / (4 A). Good to about 40 %.
 *
 * @param propDiameter [m]
 */
export function armDownload(arm: ArmGeometry, propDiameter: number): number {
  const radius = propDiameter / 2;
  const length = Math.hypot(arm.tip[0] - arm.root[0], arm.tip[1] - arm.root[1]);
  const covered = Math.min(length, radius);
  const widths = arm.outline.map(({ width }) => width);
  const width = widths.reduce((sum, each) => sum + each, 0) / Math.max(1, widths.length);
  const discArea = Math.PI * radius * radius;
  return Math.min(0.3, (BAR_DRAG * SPEED_UP * SPEED_UP * width * covered) / (4 * discArea));
}
