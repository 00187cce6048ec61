// A guard ring in forward flight: momentum theorem, share by ring-wing theory (Weissinger 1955, from memory).
import { describe, expect, it } from 'vitest';
import { forwardCraft, forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { guardEffect, turningShare } from '../../../src/rotor/guard.ts';
import { exampleQuad } from '../exampleModel.ts';

const face = (area: number) => ({ area, coefficient: 1 });
const drag = { front: face(0.004), side: face(0.004), top: face(0.008) };
const open = exampleQuad();
const RADIUS = 0.1295 / 2;

function at(speed: number, depth: number, guardTurningScale = 1) {
  const guard = guardEffect(
    { tipGap: 0.03 * RADIUS, lipRadius: 0.005, expansionRatio: 1, depth, blockedArea: 0 },
    RADIUS,
  );
  const model = { ...open, stations: open.stations.map((station) => ({ ...station, guard })) };
  const craft = forwardCraft(model, { ...neutralLevers, guardTurningScale }, drag);
  if (!craft.ok) throw new Error(craft.reason);
  const found = forwardPoint(craft.value, speed, 0.8);
  if (!found.ok) throw new Error(found.reason);
  return { ...found.value, guard, wakeRatio: guard.wakeRatio };
}

describe('a ring in forward flight', () => {
  it('turns nothing without depth, half at a quarter of its diameter, all when it is long', () => {
    expect(turningShare(0)).toBe(0);
    expect(turningShare(0.25)).toBeCloseTo(0.5359, 4); // 0.785398 / (1 + 0.25 (1.570796 + 0.291457))
    expect(turningShare(1000)).toBeCloseTo(1, 2);
  });

  it('drags by the momentum of the air it turns, a lever above the disc', () => {
    // Once a deep duct dragged no more than a hoop: the air it swallowed was turned for nothing.
    const [hoop, duct] = [at(8, 0), at(8, 0.03)];
    const along = 8 * Math.cos(duct.tilt);
    let expected = 0;
    duct.rotors.forEach((rotor, i) => {
      const through = (duct.load.axialSpeed[i] ?? 0) + Math.sqrt(2 * duct.wakeRatio) * rotor.inducedSpeed;
      expected += duct.guard.turning * 1.225 * Math.PI * RADIUS ** 2 * through * along;
    });
    expect(expected).toBeGreaterThan(0.5);
    // The open rotor's own in-plane force changes with tilt by some hundredths of it.
    const made = (duct.rotorDrag - hoop.rotorDrag) / expected;
    expect(made).toBeGreaterThan(0.9);
    expect(made).toBeLessThan(1.1);
    expect(duct.tilt).toBeGreaterThan(1.3 * hoop.tilt);
    // Nose up: the front motors have to give less than they would.
    const front = ({ thrusts }: typeof duct) =>
      ((thrusts[0] ?? 0) + (thrusts[1] ?? 0)) / thrusts.reduce((a, b) => a + b, 0);
    expect(front(duct)).toBeLessThan(front(hoop) - 0.01);
  });

  it('is not there in hover', () => {
    expect(at(0, 0.03).point.packCurrent).toBeCloseTo(at(0, 0).point.packCurrent, 9);
  });
});
