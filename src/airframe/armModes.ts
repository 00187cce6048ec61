import { type Banded, multiplyBanded } from '../numerics/banded.ts';
import { lowestModes } from '../numerics/lowestModes.ts';
import { type Outcome, solved } from '../numerics/outcome.ts';
import { type ArmBeam, assembleArm, rootFixed } from './armBeam.ts';
import type { Mode, ModeShape } from './types.ts';

export interface ArmMode extends Mode {
  /** Displacement of the tip, mass-normalised: u, v, w and rotations about x, y, z. */
  readonly tip: Float64Array;
}

/**
 * The lowest modes of an arm fixed at its root, rising in frequency.
 *
 * @param count 1 or more
 */
export function armModes(arm: ArmBeam, count: number): Outcome<readonly ArmMode[]> {
  const matrices = assembleArm(arm);
  const stiffness = rootFixed(matrices.stiffness);
  const pairs = lowestModes(stiffness, rootFixed(matrices.mass), count);
  if (!pairs.ok) return pairs;
  const { size } = stiffness;
  const work = new Float64Array(size);
  return solved(
    Array.from(pairs.value.values, (value, k) => {
      const shape = pairs.value.vectors.subarray(k * size, (k + 1) * size);
      return {
        frequency: Math.sqrt(Math.max(0, value)) / (2 * Math.PI),
        shape: nameArmShape(stiffness, shape, work),
        tip: shape.slice(size - 6),
      };
    }),
  );
}

/** Names a mode by where its strain energy is; the four ways of straining do not mix in a straight arm. */
function nameArmShape(stiffness: Banded, shape: Float64Array, work: Float64Array): ModeShape {
  multiplyBanded(stiffness, shape, work);
  const energy = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < shape.length; i++) {
    energy[i % 6] = (energy[i % 6] ?? 0) + (shape[i] as number) * (work[i] as number);
  }
  const [u = 0, v = 0, w = 0, aboutX = 0, aboutY = 0, aboutZ = 0] = energy;
  const whole = u + v + w + aboutX + aboutY + aboutZ;
  const torsion = aboutX / whole;
  const inPlane = (v + aboutZ) / whole;
  if ((w + aboutY) / whole > 0.5) return 'out-of-plane bending';
  if (u / whole > 0.5) return 'stretching';
  if (torsion > 0.95) return 'torsion';
  return inPlane > 0.95 ? 'in-plane bending' : 'in-plane bending with torsion';
}
