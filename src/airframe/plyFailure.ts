import { type Outcome, solved } from '../numerics/outcome.ts';
import {
  laminateStiffness,
  laminateStrain,
  type Ply,
  type PlyStrength,
  reducedStiffness,
} from './laminate.ts';

/** Stress in a ply's own axes: along, across, shear [Pa]. */
export type PlyStress = readonly [s1: number, s2: number, s12: number];

/** By how much a stress state may grow before a ply fails; over 1 holds. Swappable: both have one form. */
export type FailureCriterion = (stress: PlyStress, strength: PlyStrength) => number;

/** Largest single ratio of stress to strength (Jones 2.9.1). */
export const maximumStress: FailureCriterion = ([s1, s2, s12], f) => {
  const ratios = [
    s1 >= 0 ? s1 / f.tension1 : -s1 / f.compression1,
    s2 >= 0 ? s2 / f.tension2 : -s2 / f.compression2,
    Math.abs(s12) / f.shear12,
  ];
  return 1 / Math.max(...ratios);
};

/** Tsai and Wu 1971, with F12 = -0.5 sqrt(F11 F22) as usual for want of a biaxial test. */
export const tsaiWu: FailureCriterion = ([s1, s2, s12], f) => {
  const F11 = 1 / (f.tension1 * f.compression1);
  const F22 = 1 / (f.tension2 * f.compression2);
  const linear = (1 / f.tension1 - 1 / f.compression1) * s1 + (1 / f.tension2 - 1 / f.compression2) * s2;
  const square = F11 * s1 * s1 + F22 * s2 * s2 + (s12 / f.shear12) ** 2 - Math.sqrt(F11 * F22) * s1 * s2;
  if (square === 0) return linear > 0 ? 1 / linear : Number.POSITIVE_INFINITY;
  return (-linear + Math.sqrt(linear * linear + 4 * square)) / (2 * square);
};

export interface PlyFailure {
  /** Factor on the loads at which the first ply fails. */
  readonly factor: number;
  /** Which ply from the top, from 0, and the stress there under the given loads. */
  readonly ply: number;
  readonly stress: PlyStress;
}

/**
 * First ply failure of a laminate under loads per width (Nx Ny Nxy [N/m], Mx My Mxy [N]), looked for at
 * both faces of each ply. Says nothing of bolt holes and delamination: near a hole use
 * `openHoleFactor`, and the interlaminar strength.
 */
export function firstPlyFailure(
  plies: readonly Ply[],
  loads: readonly [number, number, number, number, number, number],
  criterion: FailureCriterion = tsaiWu,
): Outcome<PlyFailure> {
  const laminate = laminateStiffness(plies);
  const strain = laminateStrain(laminate, loads);
  if (!strain.ok) return strain;
  let worst: PlyFailure = { factor: Number.POSITIVE_INFINITY, ply: -1, stress: [0, 0, 0] };
  let z = -laminate.thickness / 2;
  for (const [index, ply] of plies.entries()) {
    for (const height of [z, z + ply.thickness]) {
      const stress = plyStress(ply, strain.value, height);
      const factor = criterion(stress, ply.material.strength);
      if (factor < worst.factor) worst = { factor, ply: index, stress };
    }
    z += ply.thickness;
  }
  return solved(worst);
}

function plyStress({ material, angle }: Ply, strain: Float64Array, z: number): PlyStress {
  const at = (i: number): number => (strain[i] as number) + z * (strain[i + 3] as number);
  const [x, y, xy] = [at(0), at(1), at(2)];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const own = [
    c * c * x + s * s * y + s * c * xy,
    s * s * x + c * c * y - s * c * xy,
    2 * s * c * (y - x) + (c * c - s * s) * xy,
  ] as const;
  const q = reducedStiffness(material);
  const row = (i: number): number => own.reduce((sum, value, j) => sum + (q[i * 3 + j] as number) * value, 0);
  return [row(0), row(1), row(2)];
}

/**
 * Strength left beside an open round hole over that of the plain laminate, by the point-stress criterion
 * (Whitney and Nuismer 1974): failure when the stress a characteristic distance from the edge reaches the
 * plain strength; infinite plate, quasi-isotropic stress field (concentration 3).
 *
 * @param radius of the hole [m], 0 or more
 * @param distance characteristic distance [m]; 1 mm is usual for carbon (from memory)
 */
export function openHoleFactor(radius: number, distance = 0.001): number {
  if (!(radius >= 0 && distance > 0)) throw new RangeError(`radius: must be 0 m or more, got ${radius}`);
  const share = radius / (radius + distance);
  return 2 / (2 + share ** 2 + 3 * share ** 4);
}
