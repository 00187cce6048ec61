import { type ArmBeam, outlineWidth, type TipLoad } from './armBeam.ts';
import { alongArmStress, armStress } from './armStress.ts';

/** Stress at one place of an arm for a force of 1 N at its end [Pa/N]. */
export interface UnitStress {
  /** From the root [m]. */
  readonly at: number;
  readonly tension: number;
  readonly compression: number;
  readonly shear: number;
  /** What the shear comes to when it has evened out over the section, before it tears. */
  readonly evenShear: number;
  readonly interlaminar: number;
}

/** At 21 places from root to tip, the worst of each section's corners and its middle. */
export function stressAlong(beam: ArmBeam, load: TipLoad): readonly UnitStress[] {
  return Array.from({ length: 21 }, (_, i) => {
    const along = (beam.length * i) / 20;
    const width = outlineWidth(beam.outline, i / 20);
    let [tension, compression] = [0, 0];
    for (const across of [-width / 2, width / 2]) {
      for (const up of [-beam.thickness / 2, beam.thickness / 2]) {
        const alongArm = alongArmStress(beam, load, { along, across, up });
        tension = Math.max(tension, alongArm);
        compression = Math.max(compression, -alongArm);
      }
    }
    const middle = armStress(beam, load, { along, across: 0, up: 0 });
    return {
      at: along,
      tension,
      compression,
      shear: Math.abs(middle.inPlaneShear) + Math.abs(middle.torsionShear),
      evenShear: evenShear(width, beam.thickness, load),
      interlaminar: Math.abs(middle.throughShear),
    };
  });
}

/**
 * In the plane a weave yields: its shear curve runs on nearly level from some 2 to over 5 % (ASTM D3518 stops
 * there). It tears when the whole section carries its strength: V/A, and torsion by the sand heap, T = tau t2 (3b - t)/6
 * with t the shorter side (Nadai, Theory of Flow and Fracture of Solids). Two thirds of the elastic peaks.
 */
function evenShear(width: number, thickness: number, [, fy, , mx]: TipLoad): number {
  const [short, long] = width < thickness ? [width, thickness] : [thickness, width];
  return Math.abs(fy) / (width * thickness) + (6 * Math.abs(mx)) / (short * short * (3 * long - short));
}
