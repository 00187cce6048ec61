import type { EndLength } from './endLength.ts';
import { type PlateModuli, torsionStiffness } from './section.ts';

/**
 * How much shorter a beam acts at a section held rigid (a clamped face, a motor's base): the section
 * can neither warp in torsion nor shrink sideways in bending, so it stiffens over a short length.
 * Both vanish for a section without warping or Poisson's effect.
 *
 * @param width, thickness of the section at that end [m], over 0
 * @returns lengths, negative, for `ArmBeam.rootEnd` and `tipEnd` [m]
 */
export function heldEnd(width: number, thickness: number, moduli: PlateModuli): EndLength {
  return {
    axial: -sidewaysHold(width, thickness, moduli, 'axial'),
    outOfPlane: -sidewaysHold(width, thickness, moduli, 'outOfPlane'),
    inPlane: -sidewaysHold(width, thickness, moduli, 'inPlane'),
    torsion: -warpingHold(width, thickness, moduli),
    shearOutOfPlane: -shearHold(thickness, moduli.E1, moduli.G13),
    shearInPlane: -shearHold(width, moduli.E1, moduli.G12),
  };
}

/**
 * Shear's cubic warping held at an end: with the warping y3 - 3 h2 y/5 apart from the shear strain it
 * decays as exp(-x sqrt(35 G/E)/h), h half the depth, and a sixth of the shear's give is lost there.
 */
const shearHold = (depth: number, E1: number, G: number): number => depth / 2 / Math.sqrt((35 * G) / E1) / 6;

/**
 * Warping held at an end, with warping apart from twist (Benscoter 1954): the length lost is
 * sqrt((1 - GJ/GI) E W / GJ), where GI is the polar stiffness and W the warping constant.
 */
function warpingHold(width: number, thickness: number, moduli: PlateModuli): number {
  const { G13 } = moduli;
  const G12 = moduli.G12Twist ?? moduli.G12;
  const torsion = torsionStiffness(width, thickness, moduli);
  const polar = (G12 * width * thickness ** 3 + G13 * thickness * width ** 3) / 12;
  const scale = Math.sqrt(G13 / G12);
  const warping = warpingConstant(width * scale, thickness) / scale ** 3;
  return Math.sqrt((Math.max(0, 1 - torsion / polar) * moduli.E1 * warping) / torsion);
}

/**
 * Integral of the squared Saint-Venant warping function of a rectangle [m6], by its series
 * (Timoshenko and Goodier, art. 109): -yz plus the sum of A sinh(ky) sin(kz).
 */
export function warpingConstant(width: number, thickness: number): number {
  const a = width / 2;
  const c = thickness / 2;
  let sum = (4 * a ** 3 * c ** 3) / 9;
  for (let n = 0; n < 60; n++) {
    const k = ((2 * n + 1) * Math.PI) / thickness;
    const tanh = Math.tanh(k * a);
    const amplitude = 4 / (c * k ** 3);
    const sech2 = 1 - tanh * tanh;
    sum -= 2 * amplitude * 2 * (a / k - tanh / k ** 2) * (2 / k ** 2);
    sum += amplitude ** 2 * c * (tanh / k - a * sech2);
  }
  return sum;
}

/**
 * Sideways shrinking held at an end: a one-mode Ritz solution, the free Poisson pattern scaled along the
 * beam by a decaying amplitude against the stiffness that resists its gradient. Out of plane the wide
 * section gives way through its thickness, so only the plate's own shear resists.
 */
function sidewaysHold(
  width: number,
  thickness: number,
  moduli: PlateModuli,
  kind: 'axial' | 'outOfPlane' | 'inPlane',
): number {
  const { E1, E2, nu12, G12, G13 } = moduli;
  const E3 = moduli.E3 ?? E2;
  const nu13 = moduli.nu13 ?? nu12;
  const nu23 = moduli.nu23 ?? nu12;
  const share = heldShare(E1, E2, E3, nu12, nu13, nu23);
  const area = width * thickness;
  const y2 = (area * width ** 2) / 12;
  const z2 = (area * thickness ** 2) / 12;
  const y4 = (area * width ** 4) / 80;
  const z4 = (area * thickness ** 4) / 80;
  const y2z2 = (area * width ** 2 * thickness ** 2) / 144;
  const bulge =
    (nu13 ** 2 * z4 + nu12 ** 2 * y4 - 2 * nu13 * nu12 * y2z2 - (nu13 * z2 - nu12 * y2) ** 2 / area) / 4;
  const patterns: Record<typeof kind, readonly [gradient: number, straining: number]> = {
    axial: [G12 * nu12 ** 2 * y2 + G13 * nu13 ** 2 * z2, area],
    outOfPlane: [G12 * nu12 ** 2 * y2z2, z2],
    inPlane: [G13 * nu13 ** 2 * y2z2 + G12 * bulge, y2],
  };
  const [gradient, straining] = patterns[kind];
  return ONE_MODE * Math.sqrt((share / (1 + share)) * (gradient / (E1 * straining)));
}

/** One mode is a little too stiff; fitted to our CalculiX 2.20 runs of docs/method/airframe.md. */
const ONE_MODE = 0.9;

/** Strain energy of wholly held sideways strain over that of the free bar, minus one. */
function heldShare(E1: number, E2: number, E3: number, nu12: number, nu13: number, nu23: number): number {
  // Compliance of (2, 3) with 1 eliminated at zero strain in 1: the block of the stiffness matrix.
  const s11 = 1 / E1;
  const [s12, s13, s22, s23, s33] = [-nu12 / E1, -nu13 / E1, 1 / E2, -nu23 / E2, 1 / E3];
  const p22 = s22 - (s12 * s12) / s11;
  const p23 = s23 - (s12 * s13) / s11;
  const p33 = s33 - (s13 * s13) / s11;
  const determinant = p22 * p33 - p23 * p23;
  return (nu12 ** 2 * p33 - 2 * nu12 * nu13 * p23 + nu13 ** 2 * p22) / (determinant * E1);
}
