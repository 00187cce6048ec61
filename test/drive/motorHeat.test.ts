import { describe, expect, it } from 'vitest';
import { motorFromNameplate } from '../../src/drive/motorFromNameplate.ts';
import {
  caseConductance,
  type HeatLoad,
  settledTemperatures,
  temperaturesAfter,
  timeToLimit,
} from '../../src/drive/motorHeat.ts';

const { model } = motorFromNameplate({ statorDiameter: 0.022, statorHeight: 0.007, speedConstant: 193.7 });
const load: HeatLoad = {
  current: 9,
  resistanceScale: 1,
  ironLoss: 6,
  washSpeed: 12,
  airTemperature: 288.15,
  coolingScale: 1,
};
const cold = { winding: 288.15, case: 288.15 };

/** The same two lumps by small explicit steps: independent of eigenvalues. */
function marched(duration: number): { winding: number; case: number } {
  const steps = 200_000;
  const dt = duration / steps;
  const toAir = model.heat.caseToStillAir + model.heat.caseToWash * (12 / 10) ** 0.6;
  let { winding, case: shell } = cold;
  for (let i = 0; i < steps; i++) {
    const copper = 81 * model.resistance * (1 + 0.00393 * (winding - 293.15));
    const inward = model.heat.windingToCase * (winding - shell);
    winding += ((copper - inward) / model.heat.windingCapacity) * dt;
    shell += ((6 + inward - toAir * (shell - 288.15)) / model.heat.caseCapacity) * dt;
  }
  return { winding, case: shell };
}

describe('motor heat', () => {
  // C dT/dt = P - G T: twice C is the same course at half the pace.
  it('takes twice as long to its limit with twice the heat capacity, and settles where it did', () => {
    const hard = { ...load, current: 30 };
    const time = timeToLimit(model, hard, cold);
    expect(timeToLimit(model, { ...hard, heatCapacityScale: 2 }, cold) / time).toBeCloseTo(2, 2);
    expect(settledTemperatures(model, { ...load, heatCapacityScale: 2 })).toEqual(
      settledTemperatures(model, load),
    );
  });

  it.each([0.5, 5, 60])('follows explicit steps after %f s', (duration) => {
    const exact = temperaturesAfter(model, load, cold, duration);
    const stepped = marched(duration);
    expect(exact.winding).toBeCloseTo(stepped.winding, 2);
    expect(exact.case).toBeCloseTo(stepped.case, 2);
  });

  it('ends where it settles', () => {
    const settled = settledTemperatures(model, load);
    expect(settled.ok).toBe(true);
    if (!settled.ok) return;
    const late = temperaturesAfter(model, load, cold, 5000);
    expect(late.winding).toBeCloseTo(settled.value.winding, 6);
    expect(late.case).toBeCloseTo(settled.value.case, 6);
  });

  it('tells thermal runaway, and how soon the limit comes', () => {
    const hard = { ...load, current: 120 };
    const settled = settledTemperatures(model, hard);
    expect(settled.ok ? '' : settled.reason).toMatch(/never settles/);
    const time = timeToLimit(model, hard, cold);
    expect(time).toBeGreaterThan(0);
    expect(time).toBeLessThan(5);
    const at = temperaturesAfter(model, hard, cold, time);
    expect(
      Math.max(at.winding - model.limits.windingTemperature, at.case - model.limits.caseTemperature),
    ).toBeCloseTo(0, 0);
    expect(timeToLimit(model, { ...load, current: 2 }, cold)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('heat inside a motor', () => {
  const warm: HeatLoad = { ...load, current: 14, ironLoss: 12 };
  const settledOf = (each: HeatLoad) => {
    const found = settledTemperatures(model, each);
    if (!found.ok) throw new Error(found.reason);
    return found.value;
  };

  // At rest all heat leaves through the case, wherever it arises.
  it('moves from iron to winding without a change of the total: the case settles the same but for hotter copper', () => {
    const all = settledOf(warm);
    const shared = settledOf({ ...warm, windingLoss: 5 });
    expect(shared.winding - shared.case).toBeGreaterThan(
      all.winding - all.case + 5 / model.heat.windingToCase,
    );
    const shed = (at: typeof all) => (at.case - 288.15) * caseConductance(model, 12);
    const copper = (at: typeof all) => 14 * 14 * model.resistance * (1 + 0.00393 * (at.winding - 293.15));
    expect(shed(shared) - copper(shared)).toBeCloseTo(12, 6);
    expect(shed(all) - copper(all)).toBeCloseTo(12, 6);
  });

  it('better contact brings the winding to the case', () => {
    const gap = (contactScale: number) => {
      const at = settledOf({ ...warm, contactScale });
      return at.winding - at.case;
    };
    expect(gap(1.4)).toBeLessThan(gap(1) / 1.38);
    expect(gap(1.4)).toBeGreaterThan(gap(1) / 1.5);
  });
});
