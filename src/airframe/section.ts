import type { ElasticConstants } from './types.ts';

/** Stiffness of a rectangular cross-section, width across (2) and thickness through (3). */
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
  /** G J [N m2] */
  readonly torsion: number;
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
  const twist = moduli.G12Twist ?? G12;
  const ratio = (width / thickness) * Math.sqrt(G13 / twist);
  return {
    axial: E1 * area,
    outOfPlane: ((moduli.E1Bending ?? E1) * width * thickness ** 3) / 12,
    inPlane: (E1 * thickness * width ** 3) / 12,
    shearOutOfPlane: SHEAR_CORRECTION * G13 * area,
    shearInPlane: SHEAR_CORRECTION * G12 * area,
    torsion: twist * torsionCoefficient(ratio) * width * thickness ** 3,
  };
}

/**
 * Torsion coefficient of a rectangle, J = coefficient x width x thickness3 (Timoshenko and Goodier,
 * Theory of Elasticity, art. 109): 1/3 - (64/pi5)(t/b) sum of tanh(n pi b/2t)/n5 over odd n. An
 * orthotropic one has width over thickness scaled by sqrt(G13/G12) and G12 in front (Lekhnitskii,
 * Theory of Elasticity of an Anisotropic Body, ch. 6).
 *
 * @param ratio width over thickness, over 0; either may be the longer
 */
export function torsionCoefficient(ratio: number): number {
  if (!(ratio > 0)) throw new RangeError(`ratio: width over thickness must be over 0, got ${ratio}`);
  let sum = 0;
  for (let n = 1; n <= 99; n += 2) sum += Math.tanh((n * Math.PI * ratio) / 2) / n ** 5;
  return 1 / 3 - ((64 / Math.PI ** 5) * sum) / ratio;
}
