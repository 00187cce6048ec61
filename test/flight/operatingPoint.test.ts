import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointForThrottles, pointForThrusts } from '../../src/flight/operatingPoint.ts';
import { neutralLevers, type OperatingPoint } from '../../src/flight/types.ts';
import { anyModel, exampleQuad } from './exampleModel.ts';

/** Chemical power less everything it turns into, over chemical power. */
function imbalance(point: OperatingPoint): number {
  const out = point.stations.reduce(
    (sum, s) => sum + s.shaftPower + s.copperLoss + s.ironLoss + s.controllerLoss + s.leadLoss,
    point.avionicsPower + point.mainLoss + point.packLoss,
  );
  return Math.abs(point.chemicalPower - out) / Math.max(point.chemicalPower, 1e-9);
}

const allFinite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value === 'object' && value !== null
      ? Object.values(value).every(allFinite)
      : true;

const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('coupled operating point', () => {
  // First law: what the cells give up turns into shaft power and heat. Tolerance from the issue, 1e-9.
  it('balances energy at any throttles of any model', () => {
    let solved = 0;
    fc.assert(
      fc.property(anyModel, fc.array(share, { minLength: 8, maxLength: 8 }), share, (model, all, charge) => {
        const throttles = all.slice(0, model.stations.length);
        const found = pointForThrottles(model, neutralLevers, throttles, { charge });
        if (!found.ok) {
          expect(found.reason).toMatch(/hold up its own electronics/);
          return;
        }
        solved++;
        expect(allFinite(found.value)).toBe(true);
        expect(imbalance(found.value)).toBeLessThan(1e-9);
        found.value.stations.forEach((s, i) => {
          expect(s.throttle).toBeCloseTo(throttles[i]!, 8);
        });
      }),
      { numRuns: 400 },
    );
    expect(solved).toBeGreaterThan(300);
  });

  it('balances energy for any thrusts that can be had', () => {
    let solved = 0;
    fc.assert(
      fc.property(anyModel, fc.array(share, { minLength: 8, maxLength: 8 }), share, (model, all, charge) => {
        const weight = model.mass * model.gravity;
        const thrusts = model.stations.map((_, i) => (all[i]! * weight) / model.stations.length);
        const found = pointForThrusts(model, neutralLevers, thrusts, { charge });
        if (!found.ok) return;
        solved++;
        expect(allFinite(found.value)).toBe(true);
        expect(imbalance(found.value)).toBeLessThan(1e-9);
        found.value.stations.forEach((s, i) => {
          expect(Math.abs(s.netThrust - thrusts[i]!)).toBeLessThan(1e-9 * weight);
          expect(s.duty).toBeLessThanOrEqual(1);
        });
      }),
      { numRuns: 400 },
    );
    expect(solved).toBeGreaterThan(100);
  });

  it('answers the inverse question with the same point', () => {
    fc.assert(
      fc.property(
        anyModel,
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        share,
        (model, throttle, charge) => {
          const throttles = model.stations.map((_, i) => throttle * (i % 2 === 0 ? 1 : 0.8));
          const forward = pointForThrottles(model, neutralLevers, throttles, { charge });
          if (!forward.ok || forward.value.stations.some((s) => s.angularSpeed === 0)) return;
          const thrusts = forward.value.stations.map((s) => s.netThrust);
          const back = pointForThrusts(model, neutralLevers, thrusts, { charge });
          // The forward point may sit on the far side of the pack's greatest power, where no constant-power load can.
          if (!back.ok) return;
          if (Math.abs(back.value.busVoltage / forward.value.busVoltage - 1) > 1e-6) {
            expect(back.value.busVoltage).toBeGreaterThan(forward.value.busVoltage);
            return;
          }
          back.value.stations.forEach((s, i) => {
            expect(s.angularSpeed / forward.value.stations[i]!.angularSpeed).toBeCloseTo(1, 6);
            expect(s.throttle).toBeCloseTo(throttles[i]!, 6);
          });
        },
      ),
      { numRuns: 300 },
    );
  });

  it('turns a lower rotor of a coaxial pair in the upper one’s wake', () => {
    const quad = exampleQuad();
    const upper = quad.stations[0]!;
    const model = exampleQuad({ stations: [upper, { ...upper, name: 'below', spin: -1, inWakeOf: 0 }] });
    const point = pointForThrusts(model, neutralLevers, [3, 3], { charge: 0.8 });
    expect(point.ok).toBe(true);
    if (!point.ok) return;
    expect(point.value.stations[1]!.shaftPower).toBeGreaterThan(1.1 * point.value.stations[0]!.shaftPower);
    expect(imbalance(point.value)).toBeLessThan(1e-9);
  });

  it('says so when a pack cannot carry the load', () => {
    const quad = exampleQuad();
    const weak = { ...quad, pack: { ...quad.pack, resistance: 5 } };
    const hover = pointForThrusts(weak, neutralLevers, [1.7, 1.7, 1.7, 1.7], { charge: 0.5 });
    expect(hover.ok ? '' : hover.reason).toMatch(/pack cannot deliver/);
    const short = pointForThrusts(
      { ...quad, pack: { ...quad.pack, series: 3, resistance: 0.01 } },
      neutralLevers,
      [8, 8, 8, 8],
      { charge: 0.5 },
    );
    expect(short.ok ? '' : short.reason).toMatch(/full throttle/);
    const dead = pointForThrottles(
      { ...quad, avionicsPower: 500, pack: { ...quad.pack, resistance: 1 } },
      neutralLevers,
      [0, 0, 0, 0],
      { charge: 0.5 },
    );
    expect(dead.ok ? '' : dead.reason).toMatch(/electronics/);
  });
});
