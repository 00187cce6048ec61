import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DragAreas } from '../../../src/airframe/types.ts';
import { forwardCraft, forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import type { ForwardCraft } from '../../../src/flight/forward/forwardTrim.ts';
import { rangeAt } from '../../../src/flight/forward/rangeAt.ts';
import { powerCurve, speedAtTilt, topSpeed } from '../../../src/flight/forward/speeds.ts';
import { hoverStory } from '../../../src/flight/hoverStory.ts';
import { type FlightModel, neutralLevers } from '../../../src/flight/types.ts';
import { anyModel, exampleQuad } from '../exampleModel.ts';

const drag: DragAreas = {
  front: { area: 0.008, coefficient: 1.1 },
  side: { area: 0.009, coefficient: 1.1 },
  top: { area: 0.022, coefficient: 1.1 },
};

function craftOf(model: FlightModel = exampleQuad(), dragScale = 1): ForwardCraft {
  const craft = forwardCraft(model, { ...neutralLevers, dragScale }, drag);
  if (!craft.ok) throw new Error(craft.reason);
  return craft.value;
}

describe('forward flight', () => {
  it('is the hover at no speed', () => {
    const point = forwardPoint(craftOf(), 0, 0.5);
    const story = hoverStory(exampleQuad(), neutralLevers, []);
    if (!point.ok || !story.ok) throw new Error('no hover');
    expect(point.value.tilt).toBe(0);
    expect(point.value.point.packCurrent / story.value.hover.packCurrent).toBeCloseTo(1, 8);
  });

  // Newton: sum of forces along the earth's axes, written out here anew from the reported parts.
  it('balances forces along the earth’s axes, and energy, wherever it can fly', () => {
    let flew = 0;
    fc.assert(
      fc.property(anyModel, fc.double({ min: 0, max: 40, noNaN: true }), (model, speed) => {
        const craft = forwardCraft(model, neutralLevers, drag);
        if (!craft.ok) return;
        const found = forwardPoint(craft.value, speed, 0.5);
        if (!found.ok) {
          expect(found.reason.length).toBeGreaterThan(20);
          return;
        }
        flew++;
        const p = found.value;
        const weight = model.mass * model.gravity;
        const along = p.bodyDrag + p.rotorDrag;
        const up = p.thrust - p.download;
        const scale = weight + p.thrust;
        // Each rotor's thrust is met to 1e-8 of itself (edgewise.ts), so their sum can miss by that and a little more.
        expect(Math.abs(up * Math.sin(p.tilt) - along * Math.cos(p.tilt)) / scale).toBeLessThan(3e-8);
        expect(Math.abs(up * Math.cos(p.tilt) + along * Math.sin(p.tilt) - weight) / scale).toBeLessThan(
          3e-8,
        );
        const out = p.point.stations.reduce(
          (sum, s) => sum + s.shaftPower + s.copperLoss + s.ironLoss + s.controllerLoss + s.leadLoss,
          p.point.avionicsPower + p.point.mainLoss + p.point.packLoss,
        );
        expect(Math.abs(out / p.point.chemicalPower - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
    expect(flew).toBeGreaterThan(40);
  });

  // Newton again: moments about the centre of gravity summed here from places and forces.
  it('balances moments motor by motor, drag above or below the centre of gravity', () => {
    const place = fc.double({ min: -0.03, max: 0.03, noNaN: true });
    fc.assert(
      fc.property(place, place, place, fc.double({ min: 0, max: 35, noNaN: true }), (x, z, dragZ, speed) => {
        const model = exampleQuad({ centreOfGravity: [x / 3, 0, z] });
        const dragCentre = [0.01, 0, dragZ] as const;
        const craft = forwardCraft(model, neutralLevers, drag, { dragCentre });
        if (!craft.ok) throw new Error(craft.reason);
        const found = forwardPoint(craft.value, speed, 0.7);
        if (!found.ok) {
          expect(found.reason).toMatch(/cannot balance the moments|full throttle/);
          return;
        }
        const p = found.value;
        const moment = [0, 0, 0];
        const add = (at: readonly number[], f: readonly number[]): void => {
          const r = at.map((v, k) => v - model.centreOfGravity[k]!);
          moment[0]! += r[1]! * f[2]! - r[2]! * f[1]!;
          moment[1]! += r[2]! * f[0]! - r[0]! * f[2]!;
          moment[2]! += r[0]! * f[1]! - r[1]! * f[0]!;
        };
        add(dragCentre, [-p.bodyDrag, 0, p.download]);
        model.stations.forEach((s, i) => {
          add(s.position, [-p.rotors[i]!.inPlaneForce, 0, -p.thrusts[i]!]);
          moment[2]! -= s.spin * p.rotors[i]!.torque;
        });
        for (const m of moment) expect(Math.abs(m)).toBeLessThan(1e-7 * p.thrust);
      }),
      { numRuns: 150 },
    );
  });

  it('loads the rear motors when the drag acts above the centre of gravity and lifts the nose', () => {
    const craft = forwardCraft(exampleQuad(), neutralLevers, drag, { dragCentre: [0, 0, -0.02] });
    if (!craft.ok) throw new Error(craft.reason);
    const p = forwardPoint(craft.value, 20, 0.7);
    expect(p.ok && p.value.thrusts[2]! - p.value.thrusts[0]!).toBeGreaterThan(0.05);
  });

  // Helicopter textbooks (Leishman 2006, figure 5.13): power dips to a bucket and rises with the cube; best range faster than best endurance.
  it('has a power bucket, and goes furthest faster than it stays longest', () => {
    const craft = craftOf();
    const curve = powerCurve(craft, 0.5, 35);
    if (!curve.ok) throw new Error(curve.reason);
    const { points, bestEndurance, bestRange } = curve.value;
    expect(bestEndurance.speed).toBeGreaterThan(4);
    expect(bestEndurance.point.packCurrent).toBeLessThan(points[0]!.point.packCurrent);
    expect(bestRange.speed).toBeGreaterThan(bestEndurance.speed * 1.1);
    for (const p of points) {
      expect(bestEndurance.point.packCurrent).toBeLessThanOrEqual(p.point.packCurrent + 1e-9);
    }
    const against = powerCurve(craft, 0.5, 35, 8);
    expect(against.ok && against.value.bestRange.speed).toBeGreaterThan(bestRange.speed);
    const hopeless = powerCurve(craft, 0.5, 35, 60);
    expect(hopeless.ok ? '' : hopeless.reason).toMatch(/no way against 60/);
  });

  it('goes furthest at the best range speed of the curve, and hovers as long as the hover story', () => {
    const craft = craftOf();
    const at = (speed: number): number => {
      const flown = rangeAt(craft, speed, 5, 0.2);
      return flown.ok ? flown.value.distance : Number.NaN;
    };
    const curve = powerCurve(craft, 0.6, 35, 5);
    if (!curve.ok) throw new Error(curve.reason);
    const best = curve.value.bestRange.speed;
    expect(at(best)).toBeGreaterThan(at(best * 0.85));
    expect(at(best)).toBeGreaterThan(at(best * 1.15));
    const story = hoverStory(exampleQuad(), neutralLevers, []);
    const still = rangeAt(craft, 0, 0, 0.2);
    if (!story.ok || !still.ok) throw new Error('no hover');
    expect(still.value.duration / story.value.endurance.duration).toBeCloseTo(1, 8);
    expect(still.value.distance).toBe(0);
  });

  it('stops at a top speed that is a limit: just beyond it there is no level flight', () => {
    const craft = craftOf();
    const top = topSpeed(craft, 0.5);
    if (!top.ok) throw new Error(top.reason);
    expect(top.value.limit).toMatch(/full throttle|deliver/);
    expect(forwardPoint(craft, top.value.at.speed + 0.02, 0.5).ok).toBe(false);
    // A usual 5-inch freestyle craft reaches 130 to 190 km/h (common practice, no source).
    expect(top.value.at.speed * 3.6).toBeGreaterThan(120);
    expect(top.value.at.speed * 3.6).toBeLessThan(200);
    const steerable = topSpeed(craft, 0.5, 0.8);
    expect(steerable.ok && steerable.value.at.speed).toBeLessThan(top.value.at.speed);
    const draggy = topSpeed(craftOf(exampleQuad(), 1.5), 0.5);
    expect(draggy.ok && draggy.value.at.speed).toBeLessThan(top.value.at.speed);
  });

  it('finds the speed at which a tilted camera looks level', () => {
    const craft = craftOf();
    const at = speedAtTilt(craft, 0.5, Math.PI / 6, 35);
    if (!at.ok) throw new Error(at.reason);
    expect(at.value.tilt).toBeCloseTo(Math.PI / 6, 2);
    const never = speedAtTilt(craft, 0.5, 1.5, 35);
    expect(never.ok ? '' : never.reason).toMatch(/never tilts/);
  });
});
