import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointForThrottles, pointForThrusts } from '../../../src/flight/operatingPoint.ts';
import { agility } from '../../../src/flight/reserve/agility.ts';
import { motorOut } from '../../../src/flight/reserve/motorOut.ts';
import { reserveOnBus } from '../../../src/flight/reserve/onBus.ts';
import { simulationModel } from '../../../src/flight/simulation/fromFlight.ts';
import { simulate } from '../../../src/flight/simulation/simulate.ts';
import { plainGains } from '../../../src/flight/simulation/types.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { anyModel, exampleQuad, ringOf } from '../exampleModel.ts';

const inertia = [
  [0.003, 0, 0],
  [0, 0.0035, 0],
  [0, 0, 0.006],
] as const;
const moment = { charge: 0.8 };

describe('reserve on the sagging bus', () => {
  it('stays inside what the battery can feed, and uses it', () => {
    const quad = exampleQuad();
    const found = reserveOnBus(quad, inertia, neutralLevers, moment);
    if (!found.ok) throw new Error(found.reason);
    let lowest = Number.POSITIVE_INFINITY;
    for (const thrusts of found.value.reserve.extremes) {
      // A hair less, for the millivolt to which the bus voltage is iterated.
      const fed = pointForThrusts(
        quad,
        neutralLevers,
        thrusts.map((t) => 0.999 * t),
        moment,
      );
      expect(fed.ok).toBe(true);
      if (fed.ok) lowest = Math.min(lowest, fed.value.busVoltage);
    }
    expect(Math.abs(lowest - found.value.busVoltage)).toBeLessThan(0.05);
    const full = pointForThrottles(quad, neutralLevers, [1, 1, 1, 1], moment);
    if (!full.ok) throw new Error(full.reason);
    expect(found.value.busVoltage).toBeGreaterThan(full.value.busVoltage);
  });

  it('shrinks as the pack empties only where motors reach for full throttle', () => {
    // A balanced quad at hover is bounded by idle; one of thrust to weight 1.6 by full throttle.
    const at = (charge: number) => {
      const found = reserveOnBus(exampleQuad({ mass: 3.8 }), inertia, neutralLevers, { charge });
      if (!found.ok) throw new Error(found.reason);
      return found.value.reserve;
    };
    expect(at(0.2).moments.roll.positive).toBeLessThan(at(1).moments.roll.positive);
    expect(at(0.2).liftToWeight).toBeLessThan(at(1).liftToWeight);
  });

  it('a flat six of these parts hovers without yaw on five motors', () => {
    const base = exampleQuad();
    const six = { ...base, stations: ringOf(base, 6, 0.15) };
    const found = reserveOnBus(six, inertia, neutralLevers, moment);
    if (!found.ok) throw new Error(found.reason);
    expect(new Set(motorOut(found.value.model, 0.015).map((one) => one.held))).toEqual(
      new Set(['hover without yaw']),
    );
  });

  it('solves or says why not, never anything else', () => {
    fc.assert(
      fc.property(anyModel, fc.double({ min: 0.05, max: 1, noNaN: true }), (model, charge) => {
        const found = agility(model, inertia, neutralLevers, { charge });
        if (!found.ok) {
          expect(found.reason.length).toBeGreaterThan(10);
          return;
        }
        const { bank, lag, fullThrottleTime, onBus } = found.value;
        for (const number of [
          lag,
          fullThrottleTime,
          found.value.gyroscopicShare,
          bank.roll.toPass,
          bank.roll.toStop,
          bank.pitch.toStop,
          onBus.reserve.combinedShare,
          onBus.reserve.liftToWeight,
          ...Object.values(onBus.reserve.moments).flatMap((reach) => [reach.negative, reach.positive]),
        ]) {
          expect(Number.isFinite(number)).toBe(true);
          expect(number).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('agility against the simulation of the same aircraft', () => {
  it('the closed time to bank agrees to 12 %: damping and voltage headroom are left out of it', () => {
    const quad = exampleQuad();
    const found = agility(quad, inertia, neutralLevers, moment);
    if (!found.ok) throw new Error(found.reason);
    const { onBus, bank } = found.value;
    // Coupling is there under full yaw, but small beside the moment in reserve.
    expect(found.value.gyroscopicShare).toBeGreaterThan(0.01);
    expect(found.value.gyroscopicShare).toBeLessThan(0.5);
    const model = simulationModel(
      quad,
      neutralLevers,
      onBus.hover,
      { inertia, dragArea: [0.012, 0.012, 0.02], inPlaneDragPerThrust: 0.01 },
      onBus.busVoltage,
    );
    const roll = onBus.reserve.moments.roll.positive;
    const traces = simulate({
      model,
      gains: plainGains,
      pilot: () => ({ kind: 'moments', moments: [roll, 0, 0], lift: 0.7 * 9.80665 }),
      timeStep: 2e-4,
      duration: 1,
      sampleEvery: 1,
    });
    if (!traces.ok) throw new Error(traces.reason);
    const after = traces.value.attitude[0].findIndex((v) => v >= Math.PI / 2 - 0.02);
    const time = traces.value.time[after]!;
    expect(time / bank.roll.toPass).toBeGreaterThan(0.88);
    expect(time / bank.roll.toPass).toBeLessThan(1.12);
  });
});
