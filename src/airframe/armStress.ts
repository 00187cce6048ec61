import { type ArmBeam, outlineWidth, type TipLoad } from './armBeam.ts';
import { torsionCoefficient } from './section.ts';

/** A place in the arm: from its root, across to the right, and above its mid-plane [m]. */
export interface ArmPlace {
  readonly along: number;
  readonly across: number;
  readonly up: number;
}

/** Stresses [Pa]; tension positive. */
export interface ArmStress {
  /** Along the arm, from stretching and both bendings. */
  readonly alongArm: number;
  /** In the plate's plane, from the sideways load's parabola. */
  readonly inPlaneShear: number;
  /** Between plies, from the upright load's parabola. */
  readonly throughShear: number;
  /** Largest from torsion in this section, in the middle of the wide face. */
  readonly torsionShear: number;
}

/**
 * Stress in an arm under a load at its tip section's middle, by beam theory: good from about one width
 * away from the root, where the clamp's own stresses (and a bolt hole's) are not in it.
 *
 * @throws RangeError for a place outside the arm
 */
export function armStress(arm: ArmBeam, load: TipLoad, place: ArmPlace): ArmStress {
  const { thickness, length } = arm;
  const width = outlineWidth(arm.outline, place.along / length);
  const slack = 1 + 1e-9;
  if (!(place.along >= 0 && place.along <= length * slack)) {
    throw new RangeError(`along: must be 0 to ${length} m, got ${place.along}`);
  }
  if (!(Math.abs(place.across) <= (width / 2) * slack && Math.abs(place.up) <= (thickness / 2) * slack)) {
    throw new RangeError(`place: ${place.across} m across, ${place.up} m up lies outside the section`);
  }
  const [, fy, fz, mx] = load;
  const area = width * thickness;
  const y = place.across;
  const z = -place.up;
  return {
    alongArm: alongArmStress(arm, load, place),
    inPlaneShear: (1.5 * fy * (1 - (2 * y) ** 2 / width ** 2)) / area,
    throughShear: (1.5 * fz * (1 - (2 * z) ** 2 / thickness ** 2)) / area,
    torsionShear: mx * torsionPeak(arm, width),
  };
}

/** Of `armStress` the one along the arm alone [Pa]. */
function alongArmStress(arm: ArmBeam, load: TipLoad, { along, across, up }: ArmPlace): number {
  const { thickness, length } = arm;
  const width = outlineWidth(arm.outline, along / length);
  const [fx, fy, fz, , my, mz] = load;
  const lever = length - along;
  const area = width * thickness;
  const aboutY = (area * thickness ** 2) / 12;
  const aboutZ = (area * width ** 2) / 12;
  return fx / area + (-up * (my - lever * fz)) / aboutY - (across * (mz + lever * fy)) / aboutZ;
}

/** Stress in the middle of the wide face for unit torque (Timoshenko and Goodier, art. 109) [Pa/(N m)]. */
export function torsionPeak(arm: ArmBeam, width: number): number {
  const { thickness, moduli } = arm;
  const twist = moduli.G12Twist ?? moduli.G12;
  const ratio = (width / thickness) * Math.sqrt(moduli.G13 / twist);
  let series = 0;
  for (let n = 1; n <= 31; n += 2)
    series += 1 / (n * n * Math.cosh(Math.min(300, (n * Math.PI * ratio) / 2)));
  return (1 - (8 / Math.PI ** 2) * series) / (torsionCoefficient(ratio) * width * thickness ** 2);
}
