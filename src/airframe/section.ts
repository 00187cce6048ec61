import type { ElasticConstants } from './types.ts';

/** Stiffness of a rectangular cross-section, width across (2) and thickness through (3); twisting apart. */
export interface SectionStiffness {
  /** EA [N] */
  readonly axial: number;
  /** EI for bending out of the plate's plane [N m2] */
  readonly outOfPlane: number;
  /** EI for bending in the plate's plane [N m2] */
  readonly inPlane: number;
  /** k G A through the thickness [N] */
  readonly shearOutOfPlane: number;
  /** k G A across the width [N] */
  readonly shearInPlane: number;
}

/** Timoshenko's shear correction of a rectangle for a load through its depth. */
const SHEAR_CORRECTION = 5 / 6;

/** A laminate bends out of its plane and twists by its own moduli; the plain ones are its in-plane ones. */
export interface PlateModuli extends ElasticConstants {
  /** Along the arm in out-of-plane bending [Pa]; E1 when absent. */
  readonly E1Bending?: number;
  /** In twisting of the plate [Pa]; G12 when absent. */
  readonly G12Twist?: number;
}

export function sectionStiffness(width: number, thickness: number, moduli: PlateModuli): SectionStiffness {
  const area = width * thickness;
  const { E1, G12, G13 } = moduli;
  return {
    axial: E1 * area,
    outOfPlane: ((moduli.E1Bending ?? E1) * width * thickness ** 3) / 12,
    inPlane: (E1 * thickness * width ** 3) / 12,
    shearOutOfPlane: SHEAR_CORRECTION * G13 * area,
    shearInPlane: SHEAR_CORRECTION * G12 * area,
  };
}

/**
 * G J of an orthotropic rectangle [N m2]: that of an isotropic one of G12 with its width over thickness
 * scaled by sqrt(G13/G12) (Lekhnitskii, Theory of Elasticity of an Anisotropic Body, ch. 6).
 */
export function torsionStiffness(width: number, thickness: number, moduli: PlateModuli): number {
  const twist = moduli.G12Twist ?? moduli.G12;
  const ratio = (width / thickness) * Math.sqrt(moduli.G13 / twist);
  return twist * torsionCoefficient(ratio) * width * thickness ** 3;
}

/** Sum of 1/n5 over odd n. */
const ODD_FIFTHS = 1.0045237627951384;

/**
 * Torsion coefficient of a rectangle, J = coefficient x width x thickness3 (Timoshenko and Goodier,
 * Theory of Elasticity, art. 109): 1/3 - (64/pi5)(t/b) sum of tanh(n pi b/2t)/n5 over odd n, summed as
 * what tanh lacks to 1 so that a few terms do.
 *
 * @param ratio width over thickness, over 0; either may be the longer
 */
export function torsionCoefficient(ratio: number): number {
  if (!(ratio > 0)) throw new RangeError(`ratio: width over thickness must be over 0, got ${ratio}`);
  if (ratio < 1) return ratio * ratio * torsionCoefficient(1 / ratio);
  let sum = ODD_FIFTHS;
  for (let n = 1; n <= 13; n += 2) sum -= 2 / (Math.exp(n * Math.PI * ratio) + 1) / n ** 5;
  return 1 / 3 - ((64 / Math.PI ** 5) * sum) / ratio;
}
