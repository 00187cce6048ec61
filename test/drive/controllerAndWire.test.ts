import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  controllerFromNameplate,
  controllerLoss,
  dutyFromThrottle,
  supplyCurrent,
  throttleFromDuty,
} from '../../src/drive/controller.ts';
import { connectorOfRating, noWire, wireResistance, wireTemperatureRise } from '../../src/drive/wire.ts';
import { wireGaugeArea } from '../../src/units/wireArea.ts';

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
