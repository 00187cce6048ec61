import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askFrame } from '../../src/airframe/askFrame.ts';
import { hubBody, placedArm } from './sampleFrame.ts';

const round = {
  ...hubBody,
  centreOfGravity: [0, 0, -0.012] as const,
  inertia: [
    [2e-4, 0, 0],
    [0, 2e-4, 0],
    [0, 0, 2.5e-4],
  ] as const,
};

describe('frame modes', () => {
  it('do not care which way the craft points', () => {
    const at = (turn: number) => {
      const answer = askFrame({
        arms: [20, 140, 260].map((a) => placedArm(a + turn)),
        hub: { kind: 'rigid', body: round },
      });
      if (!answer.ok) throw new Error(answer.reason);
      return answer.value.frequencies.map(({ frequency }) => frequency);
    };
    const straight = at(0);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 360, noNaN: true }), (turn) => {
        for (const [i, value] of at(turn).entries()) expect(value / straight[i]!).toBeCloseTo(1, 6);
      }),
      { numRuns: 10 },
    );
  });

  it('rise with thickness and fall with motor mass', () => {
    const first = (thickness: number, mass: number): number => {
      const arms = [45, 135, 225, 315].map((a) => {
        const placed = placedArm(a, 0.012, thickness);
        return { ...placed, arm: { ...placed.arm, tipBody: { ...placed.arm.tipBody!, mass } } };
      });
      const answer = askFrame({ arms, hub: { kind: 'rigid', body: hubBody } });
      if (!answer.ok) throw new Error(answer.reason);
      return answer.value.frequencies[0]!.frequency;
    };
    expect(first(0.006, 0.035)).toBeGreaterThan(first(0.005, 0.035));
    expect(first(0.005, 0.045)).toBeLessThan(first(0.005, 0.035));
  });

  it('sink as the same plate is cut longer: 7 inch rings lower than 5 inch', () => {
    const lowest = (radius: number): number => {
      const arms = [45, 135, 225, 315].map((a) => placedArm(a, 0.012, 0.005, radius));
      const answer = askFrame({ arms, hub: { kind: 'rigid', body: hubBody } });
      return answer.ok ? answer.value.frequencies[0]!.frequency : Number.NaN;
    };
    expect(lowest(0.155)).toBeLessThan(0.65 * lowest(0.11));
  });
});
