import { type EndLength, PLAIN_END } from './endLength.ts';
import { heldEnd } from './heldEnd.ts';
import type { PlateModuli } from './section.ts';

/**
 * How much longer an arm acts that runs on between two clamping plates: its top and bottom faces are
 * held there but its core still strains, the more the softer it is in shear through the thickness.
 *
 * Fitted to our own CalculiX 2.20 runs of arms held over 25 mm on both faces (docs/method/airframe.md):
 * E1/G13 2.6 to 24, width 1.7 to 6.7 thicknesses, to 0.03 thicknesses.
 */
export function grippedEnd(width: number, thickness: number, moduli: PlateModuli): EndLength {
  const { E1, E2, G13, nu12 } = moduli;
  const softness = Math.sqrt(E1 / G13);
  const held = (nu12 ** 2 * E2) / E1;
  return {
    axial: thickness * (0.236 * softness - 0.126),
    outOfPlane: thickness * (0.091 * softness - 0.08),
    inPlane: thickness * (0.19 * softness - 0.95 * held),
    torsion: heldEnd(width, thickness, moduli).torsion + thickness * 0.055 * softness,
    shearOutOfPlane: 0,
    shearInPlane: 0,
  };
}

/**
 * How much longer an arm acts that is cut in one with its plate: its root section is not rigid where it
 * spreads into the plate, as `condenseHubPlate` has it. Fitted, with that mesh, to our CalculiX 2.20 runs
 * of whole one-piece frames (docs/method/airframe.md): three thicknesses-to-hub ratios, two materials.
 */
export const joinedEnd = (width: number, thickness: number): EndLength => ({
  ...PLAIN_END,
  outOfPlane: 0.25 * thickness,
  inPlane: 0.05 * width,
});
