import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { peakBusVoltage } from '../../src/drive/busTransient.ts';
import {
  controllerFromNameplate,
  controllerLoss,
  dutyFromThrottle,
  supplyCurrent,
  throttleFromDuty,
} from '../../src/drive/controller.ts';
import { connectorOfRating, noWire, wireResistance, wireTemperatureRise } from '../../src/drive/wire.ts';
import { wireGaugeArea } from '../../src/units/wireArea.ts';
import { Solver } from '../secondIntegrator.ts';

const controller = controllerFromNameplate({ continuousCurrent: 45, maximumVoltage: 25.2 });
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('controller', () => {
  it('loses exactly what does not come out', () => {
    fc.assert(
      fc.property(between(0, 1), between(-20, 80), between(3, 30), (duty, current, voltage) => {
        const into = voltage * supplyCurrent(controller, duty, current);
        const out = (duty * voltage - current * controller.resistance) * current;
        const loss = controllerLoss(controller, voltage, current);
        expect(Math.abs(into - out - loss)).toBeLessThan(1e-10 * Math.max(1, Math.abs(into)));
        expect(loss).toBeGreaterThan(0);
      }),
    );
  });

  it('takes throttle to duty and back', () => {
    expect(dutyFromThrottle(controller, 1)).toBe(1);
    expect(dutyFromThrottle(controller, 0)).toBe(0.04);
    expect(throttleFromDuty(controller, dutyFromThrottle(controller, 0.37))).toBeCloseTo(0.37, 12);
  });
});

describe('wire and connector', () => {
  it('costs nothing when there is none', () => {
    expect(wireResistance(noWire)).toBe(0);
    expect(wireTemperatureRise(noWire, 1e-3, 50)).toBe(0);
  });

  // Silicone 12 AWG, 4.5 mm over the insulation, carries 60 A for minutes and gets hot, not molten (common practice, no source).
  it('warms a main lead by some tens of kelvin', () => {
    const rise = wireTemperatureRise({ area: wireGaugeArea(12), length: 0.2, temperature: 330 }, 4.5e-3, 60);
    expect(rise).toBeGreaterThan(60);
    expect(rise).toBeLessThan(200);
  });

  it('has a resistance that falls with the rating', () => {
    expect(connectorOfRating(60).resistance).toBeLessThan(connectorOfRating(30).resistance);
  });
});

describe('bus transient', () => {
  const cut = { packVoltage: 25.2, current: 100, leadLength: 0.1 };

  // By hand: L = 0.6e-6 x 0.1 = 6e-8 H, sqrt(6e-8 / 1e-3) = 7.746 mohm; 100 A -> 0.775 V.
  it('adds i sqrt(L/C) where the capacitor hardly resists', () => {
    const peak = peakBusVoltage({ ...cut, capacitors: [{ capacitance: 1e-3, resistance: 1e-5 }] });
    expect(peak).toBeCloseTo(25.2 + 0.775, 2);
  });

  it('adds i x resistance at once where that is nearly all', () => {
    const peak = peakBusVoltage({ ...cut, capacitors: [{ capacitance: 1, resistance: 0.02 }] });
    expect(peak).toBeCloseTo(27.2, 2);
  });

  // The two-branch circuit once more, by the second integrator.
  it('is what a second integrator finds for two capacitors side by side', () => {
    const [ceramic, large] = [
      { capacitance: 160e-6, resistance: 0.005 },
      { capacitance: 1000e-6, resistance: 0.03 },
    ];
    const inductance = 0.6e-6 * 0.1;
    const both = (i: number, v: number, w: number) =>
      (i + v / ceramic.resistance + w / large.resistance) / (1 / ceramic.resistance + 1 / large.resistance);
    let [state, most] = [[100, 0, 0], 0];
    for (let n = 0; n < 300; n++) {
      most = Math.max(most, both(state[0]!, state[1]!, state[2]!));
      const solver = new Solver(3);
      solver.absoluteTolerance = solver.relativeTolerance = 1e-9;
      // In microseconds.
      const slope = (_: number, [i, v, w]: number[]) => {
        const over = both(i!, v!, w!);
        return [
          -1e-6 * (over / inductance),
          (1e-6 * (over - v!)) / (ceramic.resistance * ceramic.capacitance),
          (1e-6 * (over - w!)) / (large.resistance * large.capacitance),
        ];
      };
      state = solver.solve(slope, 0, state, 0.05).y;
    }
    expect(peakBusVoltage({ ...cut, capacitors: [ceramic, large] }) - 25.2).toBeCloseTo(most, 3);
  });

  // A fitted capacitor once took the place of the controllers' own, and so raised the peak that it is there to lower.
  it('is never raised by one more capacitor, nor lowered by a longer lead', () => {
    const some = fc.record({
      capacitance: fc.double({ min: 20e-6, max: 3e-3, noNaN: true }),
      resistance: fc.double({ min: 0.002, max: 0.1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(some, { minLength: 1, maxLength: 3 }), some, (capacitors, more) => {
        const peak = peakBusVoltage({ ...cut, capacitors });
        expect(peakBusVoltage({ ...cut, capacitors: [...capacitors, more] })).toBeLessThan(peak + 1e-3);
        expect(peakBusVoltage({ ...cut, leadLength: 0.12, capacitors })).toBeGreaterThan(peak - 1e-3);
        expect(peak).toBeGreaterThan(25.2);
      }),
      { numRuns: 40 },
    );
  });
});
