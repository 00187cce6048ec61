import { denseSolve } from '../numerics/denseSolve.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { PlateModuli } from './section.ts';

/** What one ply is made of. Moduli and strengths [Pa], strengths positive. */
export interface PlyMaterial {
  readonly name: string;
  readonly E1: number;
  readonly E2: number;
  readonly nu12: number;
  readonly G12: number;
  readonly G13: number;
  readonly G23: number;
  readonly E3: number;
  /** [kg/m3] */
  readonly density: number;
  readonly strength: PlyStrength;
  readonly source: string;
}

/** Along the fibres (1), across (2), in tension and compression, and in shear [Pa]. */
export interface PlyStrength {
  readonly tension1: number;
  readonly compression1: number;
  readonly tension2: number;
  readonly compression2: number;
  readonly shear12: number;
}

export interface Ply {
  readonly material: PlyMaterial;
  /** [m] */
  readonly thickness: number;
  /** Of its fibres from the laminate's x axis towards y [rad]. */
  readonly angle: number;
}

/** Three by three, row-major: x, y, xy. */
export type Block = Float64Array;

export interface LaminateStiffness {
  /** Stretching [N/m] */
  readonly A: Block;
  /** Coupling [N] */
  readonly B: Block;
  /** Bending [N m] */
  readonly D: Block;
  readonly thickness: number;
}

/**
 * A, B and D of a stack of plies, first at the top (lowest z, z down), by classical laminate theory
 * (Jones, Mechanics of Composite Materials, eq. 4.22 to 4.24; Kaw, ch. 4).
 *
 * @throws RangeError for no plies or a thickness that is not positive
 */
export function laminateStiffness(plies: readonly Ply[]): LaminateStiffness {
  if (plies.length === 0) throw new RangeError('plies: a laminate needs one or more');
  const thickness = plies.reduce((sum, ply) => sum + ply.thickness, 0);
  const [A, B, D] = [new Float64Array(9), new Float64Array(9), new Float64Array(9)];
  let top = -thickness / 2;
  for (const { material, thickness: h, angle } of plies) {
    if (!(h > 0)) throw new RangeError(`plies: each thickness must be over 0 m, got ${h}`);
    const bottom = top + h;
    const q = turnedStiffness(reducedStiffness(material), angle);
    for (let i = 0; i < 9; i++) {
      const value = q[i] as number;
      A[i] = (A[i] as number) + value * h;
      B[i] = (B[i] as number) + (value * (bottom ** 2 - top ** 2)) / 2;
      D[i] = (D[i] as number) + (value * (bottom ** 3 - top ** 3)) / 3;
    }
    top = bottom;
  }
  return { A, B, D, thickness };
}

/** Plane-stress stiffness of a ply in its own axes, Q [Pa] (Jones eq. 2.61). */
export function reducedStiffness(p: Pick<PlyMaterial, 'E1' | 'E2' | 'nu12' | 'G12'>): Block {
  const nu21 = (p.nu12 * p.E2) / p.E1;
  const d = 1 - p.nu12 * nu21;
  const coupling = (p.nu12 * p.E2) / d;
  return Float64Array.of(p.E1 / d, coupling, 0, coupling, p.E2 / d, 0, 0, 0, p.G12);
}

/** A stiffness Q turned so that its axis 1 lies at `angle` from x (Jones eq. 2.80). */
export function turnedStiffness(q: Block, angle: number): Block {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [q11, q12, , , q22, , , , q66] = q as unknown as readonly number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [c2, s2] = [c * c, s * s];
  const xx = q11 * c2 * c2 + 2 * (q12 + 2 * q66) * s2 * c2 + q22 * s2 * s2;
  const yy = q11 * s2 * s2 + 2 * (q12 + 2 * q66) * s2 * c2 + q22 * c2 * c2;
  const xy = (q11 + q22 - 4 * q66) * s2 * c2 + q12 * (s2 * s2 + c2 * c2);
  const ss = (q11 + q22 - 2 * q12 - 2 * q66) * s2 * c2 + q66 * (s2 * s2 + c2 * c2);
  const xs = (q11 - q12 - 2 * q66) * s * c * c2 + (q12 - q22 + 2 * q66) * s * s2 * c;
  const ys = (q11 - q12 - 2 * q66) * s * s2 * c + (q12 - q22 + 2 * q66) * s * c * c2;
  return Float64Array.of(xx, xy, xs, xy, yy, ys, xs, ys, ss);
}

/** Mid-plane strains and curvatures under loads per width, Nx Ny Nxy [N/m], Mx My Mxy [N]. */
export function laminateStrain(
  { A, B, D }: LaminateStiffness,
  loads: readonly [number, number, number, number, number, number],
): Outcome<Float64Array> {
  const abd = new Float64Array(36);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      abd[i * 6 + j] = A[i * 3 + j] as number;
      abd[i * 6 + j + 3] = B[i * 3 + j] as number;
      abd[(i + 3) * 6 + j] = B[i * 3 + j] as number;
      abd[(i + 3) * 6 + j + 3] = D[i * 3 + j] as number;
    }
  }
  const strain = denseSolve(abd, Float64Array.from(loads), 6);
  return strain === undefined
    ? noSolution('the laminate has no stiffness in some direction')
    : solved(strain);
}

/** Moduli of the whole laminate as a plate: in its plane, and in bending where they differ [Pa]; nuxy is Poisson's
 * ratio. */
export interface LaminateModuli {
  readonly Ex: number;
  readonly Ey: number;
  readonly Gxy: number;
  readonly nuxy: number;
  readonly bendingEx: number;
  readonly bendingEy: number;
  readonly bendingGxy: number;
}

/** Engineering constants of a laminate (Kaw eq. 4.33 to 4.45): 1/(h a11), 12/(h3 d11) and so on. */
export function laminateModuli(laminate: LaminateStiffness): Outcome<LaminateModuli> {
  const { thickness: h } = laminate;
  const rows: Float64Array[] = [];
  for (let k = 0; k < 6; k++) {
    const load = [0, 0, 0, 0, 0, 0] as [number, number, number, number, number, number];
    load[k] = 1;
    const strain = laminateStrain(laminate, load);
    if (!strain.ok) return strain;
    rows.push(strain.value);
  }
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Number.NaN;
  return solved({
    Ex: 1 / (h * at(0, 0)),
    Ey: 1 / (h * at(1, 1)),
    Gxy: 1 / (h * at(2, 2)),
    nuxy: -at(0, 1) / at(0, 0),
    bendingEx: 12 / (h ** 3 * at(3, 3)),
    bendingEy: 12 / (h ** 3 * at(4, 4)),
    bendingGxy: 12 / (h ** 3 * at(5, 5)),
  });
}

/** Moduli along an arm cut from a laminate at `direction` from its x axis [rad], for the beam model. */
export function armModuli(plies: readonly Ply[], direction: number): Outcome<PlateModuli> {
  const turned = plies.map((ply) => ({ ...ply, angle: ply.angle - direction }));
  const moduli = laminateModuli(laminateStiffness(turned));
  if (!moduli.ok) return moduli;
  const { Ex, Ey, Gxy, nuxy, bendingEx, bendingGxy } = moduli.value;
  const through = (of: (ply: Ply) => number): number => {
    const whole = plies.reduce((sum, ply) => sum + ply.thickness, 0);
    return whole / plies.reduce((sum, ply) => sum + ply.thickness / of(ply), 0);
  };
  return solved({
    E1: Ex,
    E2: Ey,
    E3: through(({ material }) => material.E3),
    nu12: nuxy,
    nu13: 0.3,
    nu23: 0.3,
    G12: Gxy,
    G13: through(({ material }) => material.G13),
    G23: through(({ material }) => material.G23),
    E1Bending: bendingEx,
    G12Twist: bendingGxy,
  });
}
