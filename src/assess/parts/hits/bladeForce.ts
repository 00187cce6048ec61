import type { PartOf } from '../../../build/schema/part.ts';
import type { Blade } from '../../../rotor/types.ts';

/** Bending strength [Pa] by propeller material (data sheets, from memory). */
const STRENGTH: Readonly<Record<PartOf<'propeller'>['material'], number>> = {
  polycarbonate: 70e6,
  'glass-filled nylon': 140e6,
  carbon: 600e6,
  wood: 80e6,
};
/** Where a blade is struck and where it breaks, over the radius; thickness over chord there (common practice). */
export const STRUCK = 0.85;
const BREAKS = 0.25;
const THICKNESS = 0.11;
/** Section modulus edgewise of an aerofoil over that of its box (from memory). */
const FULLNESS = 0.6;

/** Force in its own plane at which a blade breaks near its root [N], with the deviation of its logarithm. */
export function bladeForce(
  blade: Blade,
  material: PartOf<'propeller'>['material'],
): { readonly median: number; readonly logDeviation: number } {
  const radius = blade.diameter / 2;
  const index = blade.radiusRatio.findIndex((ratio) => ratio >= BREAKS);
  const chord = (blade.chordRatio[Math.max(0, index)] ?? 0.15) * radius;
  const modulus = (FULLNESS * (THICKNESS * chord) * chord * chord) / 6;
  return { median: (STRENGTH[material] * modulus) / ((STRUCK - BREAKS) * radius), logDeviation: 0.3 };
}
