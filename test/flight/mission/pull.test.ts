import { describe, expect, it } from 'vitest';
import { flyMission } from '../../../src/flight/mission/flyMission.ts';
import type { Leg } from '../../../src/flight/mission/types.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { exampleQuad } from '../exampleModel.ts';

const drag = {
  front: { area: 0.01, coefficient: 1 },
  side: { area: 0.012, coefficient: 1 },
  top: { area: 0.02, coefficient: 1 },
};
const fly = (...legs: Leg[]) => {
  const flown = flyMission(exampleQuad(), neutralLevers, drag, legs);
  if (!flown.ok) throw new Error(flown.reason);
  return flown.value.legs;
};

describe('a held pull', () => {
  it('of once the weight is a hover', () => {
    const [pull] = fly({ kind: 'pull', thrustToWeight: 1, duration: 20 });
    const [hover] = fly({ kind: 'hover', duration: 20 });
    expect(pull!.meanCurrent).toBeCloseTo(hover!.meanCurrent, 9);
  });

  it('draws more than in proportion, and beyond reach what full throttle draws', () => {
    const current = (thrustToWeight: number) =>
      fly({ kind: 'pull', thrustToWeight, duration: 2 })[0]!.meanCurrent;
    expect(current(2) / current(1)).toBeGreaterThan(2);
    const [full] = fly({ kind: 'full throttle', duration: 2 });
    expect(current(29)).toBeCloseTo(full!.meanCurrent, 9);
  });
});
