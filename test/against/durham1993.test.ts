import { describe, expect, it } from 'vitest';
import type { LayoutParameters } from '../../src/airframe/types.ts';
import { controlReserve } from '../../src/flight/reserve/momentReach.ts';
import { makeMixer } from '../../src/flight/simulation/mixer.ts';
import { prepareCraft } from '../../src/flight/simulation/prepare.ts';
import { flyer } from '../flight/simulation/crafts.ts';

/**
 * Durham (1993), Constrained control allocation, J. Guidance, Control, and Dynamics 16(4): with as many controls
 * as demands the generalized inverse attains all that can be attained; with more, no single generalized inverse attains
 * the whole set, and the set's edge has controls at their limits. The facts from memory; no number of the paper is used.
 */
function reaches(layout: LayoutParameters) {
  const model = flyer({ layout });
  const prepared = prepareCraft(model);
  if (!prepared.ok) throw new Error(prepared.reason);
  const mixer = makeMixer(prepared.value);
  if (!mixer.ok) throw new Error(mixer.reason);
  const { shares, hoverThrust, lowestThrust, highestThrust, thrustFactor, torqueFactor } = mixer.value;
  const reserve = controlReserve({
    ...model,
    effectors: model.rotors.map(({ position, spin }, i) => ({
      name: `motor ${i + 1}`,
      position,
      spin,
      torquePerThrust: torqueFactor[i]! / thrustFactor[i]!,
      minimumThrust: lowestThrust[i]!,
      maximumThrust: highestThrust[i]!,
    })),
  });
  if (!reserve.ok) throw new Error(reserve.reason);
  const byInverse = (axis: 0 | 1 | 2): number =>
    Math.min(
      ...shares.map((share, i) => {
        const room =
          share[axis] > 0 ? highestThrust[i]! - hoverThrust[i]! : hoverThrust[i]! - lowestThrust[i]!;
        return Math.abs(share[axis]) < 1e-9 ? Number.POSITIVE_INFINITY : room / Math.abs(share[axis]);
      }),
    );
  return {
    byInverse: [byInverse(0), byInverse(1), byInverse(2)] as const,
    whole: [
      reserve.value.moments.roll.positive,
      reserve.value.moments.pitch.positive,
      reserve.value.moments.yaw.positive,
    ] as const,
    extremes: reserve.value.extremes,
    limits: [lowestThrust, highestThrust] as const,
  };
}

describe('attainable moments of Durham', () => {
  it('four motors, four demands: the inverse attains all', () => {
    const { byInverse, whole } = reaches({ kind: 'true X', diagonal: 0.22 });
    for (const axis of [0, 1, 2] as const) expect(whole[axis]).toBeCloseTo(byInverse[axis], 9);
  });

  it('more motors than demands: the inverse never attains more, and about roll distinctly less', () => {
    for (const layout of [
      { kind: 'hexa X', diagonal: 0.3 },
      { kind: 'octo', diagonal: 0.4 },
    ] as const) {
      const { byInverse, whole } = reaches(layout);
      for (const axis of [0, 1, 2] as const)
        expect(whole[axis]).toBeGreaterThan(byInverse[axis] * (1 - 1e-9));
      expect(whole[0]).toBeGreaterThan(1.02 * byInverse[0]);
    }
  });

  it('at the edge at most four motors are between their limits', () => {
    const { extremes, limits } = reaches({ kind: 'octo', diagonal: 0.4 });
    expect(extremes).toHaveLength(6);
    for (const thrusts of extremes) {
      const between = thrusts.filter((t, i) => t > limits[0][i]! + 1e-7 && t < limits[1][i]! - 1e-7);
      expect(between.length).toBeLessThanOrEqual(4);
    }
  });
});
