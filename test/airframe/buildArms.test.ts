import { describe, expect, it } from 'vitest';
import { armDirection, armOutline } from '../../src/airframe/armOutline.ts';
import { buildArms } from '../../src/airframe/buildArms.ts';
import { layoutMotors } from '../../src/airframe/layout.ts';
import type { ArmGeometry } from '../../src/airframe/types.ts';

const SIZES = {
  bodyHalfLength: 0.055,
  bodyHalfWidth: 0.018,
  rootWidth: 0.015,
  tipWidth: 0.012,
  thickness: 0.005,
  padDiameter: 0.023,
  clampedLength: 0.0255,
};

/** Corners of an arm's plan in build axes. */
const corners = (arm: ArmGeometry) => {
  const turn = armDirection(arm);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return armOutline(arm).map(([along, across]) => ({
    x: arm.root[0] + along * c - across * s,
    y: arm.root[1] + along * s + across * c,
  }));
};

describe('arms inside the body', () => {
  // The story: a dead cat's front arms, which run sideways, were clamped across each other.
  it("keeps a dead cat's front arms each on its own side", () => {
    const layout = layoutMotors({ kind: 'dead cat', frontWidth: 0.2, rearWidth: 0.16, length: 0.16 });
    const arms = buildArms(layout, SIZES).filter((arm) => arm.tip[0] > 0);
    expect(arms).toHaveLength(2);
    for (const arm of arms) {
      const side = Math.sign(arm.tip[1]);
      for (const corner of corners(arm)) expect(corner.y * side).toBeGreaterThanOrEqual(-1e-9);
      expect(arm.clampedLength).toBeGreaterThan(0.005);
    }
  });

  it('leaves the clamp of a true X as it is where there is room', () => {
    const layout = layoutMotors({ kind: 'true X', diagonal: 0.23 });
    for (const arm of buildArms(layout, { ...SIZES, clampedLength: 0.008 }))
      expect(arm.clampedLength).toBe(0.008);
  });
});
