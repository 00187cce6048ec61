import { describe, expect, it } from 'vitest';
import { controlAuthorityIndex } from '../../src/flight/reserve/authorityIndex.ts';
import { motorOut } from '../../src/flight/reserve/motorOut.ts';
import type { Effector, ReserveModel } from '../../src/flight/reserve/types.ts';
import { ring } from '../flight/reserve/crafts.ts';

/**
 * Du, Quan, Yang, Cai (2015), Controllability analysis for multirotor helicopter rotor degradation and
 * failure, J. Guidance, Control, and Dynamics 38(5), doi 10.2514/1.G000731. Craft and table of the
 * index for the two spin orders of a hexacopter, from memory: m 1.535 kg, g 9.8 m/s2, arm 0.275 m, K
 * 6.125 N, k_mu 0.1 m; P N P N P N whole 1.4861, any rotor lost 0 or below; P P N N P N whole 1.1295,
 * rotors 1 to 4 lost 0.7221, 0.4510, 0.4510, 0.7221, rotors 5 and 6 lost 0 or below.
 * Tolerance: half a unit of the last printed digit.
 */
function hexacopter(spins: readonly (1 | -1)[], lost?: number): ReserveModel {
  const effectors = ring(spins, 0.275).map(
    (effector, i): Effector => ({
      ...effector,
      torquePerThrust: 0.1,
      maximumThrust: i === lost ? 0 : 6.125,
    }),
  );
  return {
    effectors,
    centreOfGravity: [0, 0, 0],
    mass: 1.535,
    gravity: 9.8,
    inertia: [
      [0.0411, 0, 0],
      [0, 0.0478, 0],
      [0, 0, 0.0599],
    ],
  };
}

const index = (model: ReserveModel): number => {
  const outcome = controlAuthorityIndex(model);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

/** Of small rotors, over thrust and edgewise speed [s/m]. */
const IN_PLANE = 0.015;
const ALTERNATING = [1, -1, 1, -1, 1, -1] as const;
const PAIRED = [1, 1, -1, -1, 1, -1] as const;

describe('available control authority index of Du and Quan', () => {
  it('agrees for the alternating hexacopter, which no rotor may leave', () => {
    expect(index(hexacopter(ALTERNATING))).toBeCloseTo(1.4861, 4);
    // Not below 0: hover lies on the edge of the set, to all printed digits.
    for (let lost = 0; lost < 6; lost++) {
      expect(index(hexacopter(ALTERNATING, lost))).toBeCloseTo(0, 4);
      expect(index(hexacopter(ALTERNATING, lost))).toBeLessThanOrEqual(1e-12);
    }
  });

  it('agrees for the paired hexacopter, which four of six may leave', () => {
    expect(index(hexacopter(PAIRED))).toBeCloseTo(1.1295, 4);
    const table = [0.7221, 0.451, 0.451, 0.7221];
    table.forEach((expected, lost) => {
      expect(index(hexacopter(PAIRED, lost))).toBeCloseTo(expected, 4);
    });
    for (const lost of [4, 5]) expect(index(hexacopter(PAIRED, lost))).toBeLessThanOrEqual(1e-12);
  });

  it('agrees with what the linear programs say can be held', () => {
    for (const spins of [ALTERNATING, PAIRED]) {
      motorOut(hexacopter(spins), IN_PLANE).forEach(({ held }, lost) => {
        expect(held === 'full hover control').toBe(index(hexacopter(spins, lost)) > 1e-9);
      });
    }
  });

  it('where theirs is 0, hover is left with yaw let go, as their degraded control has it', () => {
    // Du, Quan et al. give up yaw to land a hexacopter of this kind (ibid., from memory).
    for (const { held } of motorOut(hexacopter(ALTERNATING), IN_PLANE))
      expect(held).toBe('hover without yaw');
  });
});
