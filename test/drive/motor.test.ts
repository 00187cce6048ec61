import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { motorAt, motorOnVoltage, noLoadCurrentAt } from '../../src/drive/motor.ts';
import { motorFromNameplate } from '../../src/drive/motorFromNameplate.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyMotor = fc
  .record({
    statorDiameter: between(0.008, 0.03),
    statorHeight: between(0.002, 0.012),
    speedConstant: between(30, 900),
  })
  .map((plate) => motorFromNameplate(plate).model);

describe('motor', () => {
  it('turns all its electrical power into shaft power and losses', () => {
    fc.assert(
      fc.property(
        anyMotor,
        between(-0.1, 0.5),
        between(0, 6000),
        between(250, 420),
        (motor, torque, speed, t) => {
          const p = motorAt(motor, torque, speed, t);
          const terms = [p.voltage * p.current, p.shaftPower, p.copperLoss, p.ironLoss];
          const scale = Math.max(...terms.map(Math.abs), 1e-12);
          expect(Math.abs(terms[0]! - terms[1]! - terms[2]! - terms[3]!) / scale).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it('answers by voltage what it answers by torque', () => {
    fc.assert(
      fc.property(anyMotor, between(0, 0.3), between(1, 5000), (motor, torque, speed) => {
        const byTorque = motorAt(motor, torque, speed, 300);
        const byVoltage = motorOnVoltage(motor, byTorque.voltage, speed, 300);
        expect(Math.abs(byVoltage.torque - torque)).toBeLessThan(1e-9);
      }),
    );
  });

  it('draws the listed no-load current at the no-load speed, less below', () => {
    const { model } = motorFromNameplate({ statorDiameter: 0.022, statorHeight: 0.007, speedConstant: 190 });
    expect(noLoadCurrentAt(model, model.noLoadSpeed)).toBeCloseTo(model.noLoadCurrent, 12);
    expect(noLoadCurrentAt(model, 0)).toBeLessThan(model.noLoadCurrent);
  });
});

/**
 * Typical outrunners as makers list them (common practice, no source; from memory of many listings, no product):
 * resistance, no-load current at 10 V, mass. A guess must be within two of its own standard deviations.
 */
describe('nameplate inference', () => {
  it.each([
    ['1404', 3800, 0.13, 0.7, 0.0093],
    ['2207', 1850, 0.06, 1.2, 0.034],
    ['2306', 2450, 0.042, 1.5, 0.033],
    ['2806', 1300, 0.065, 0.9, 0.047],
  ])('a %s of %i rpm/V', (size, rpmPerVolt, resistance, noLoadCurrent, mass) => {
    const guess = motorFromNameplate({
      statorDiameter: Number(size.slice(0, 2)) / 1000,
      statorHeight: Number(size.slice(2)) / 1000,
      speedConstant: (rpmPerVolt * Math.PI) / 30,
    });
    expect(Math.abs(guess.resistance.value - resistance)).toBeLessThan(2 * guess.resistance.deviation);
    expect(Math.abs(guess.noLoadCurrent.value - noLoadCurrent)).toBeLessThan(
      2 * guess.noLoadCurrent.deviation,
    );
    expect(Math.abs(guess.mass.value - mass)).toBeLessThan(2 * guess.mass.deviation);
    expect(guess.resistance.trust).toBe('inferred');
  });

  it('keeps the motor constant whatever the winding: R K_V2 depends on the stator alone', () => {
    const at = (speedConstant: number) =>
      motorFromNameplate({ statorDiameter: 0.023, statorHeight: 0.006, speedConstant }).model;
    expect(at(180).resistance * 180 ** 2).toBeCloseTo(at(260).resistance * 260 ** 2, 9);
  });

  it('refuses a stator in millimetres', () => {
    expect(() => motorFromNameplate({ statorDiameter: 22, statorHeight: 7, speedConstant: 190 })).toThrow(
      /statorDiameter must be between 0.005 and 0.06 m; found 22 m/,
    );
  });
});

describe('what speed adds to the resistance', () => {
  const rising = {
    ...motorFromNameplate({ statorDiameter: 0.022, statorHeight: 0.007, speedConstant: 204 }).model,
  };

  it('costs voltage and heats the iron, and the powers still add up', () => {
    const plain = motorAt({ ...rising, resistanceRise: 0 }, 0.15, 3300, 320);
    const real = motorAt(rising, 0.15, 3300, 320);
    expect(real.current).toBe(plain.current);
    expect(real.copperLoss).toBe(plain.copperLoss);
    expect(real.voltage).toBeGreaterThan(plain.voltage);
    expect(real.voltage * real.current).toBeCloseTo(real.shaftPower + real.copperLoss + real.ironLoss, 9);
  });

  it('is small in a hover and doubles the resistance at full throttle', () => {
    const share = (speed: number) => (rising.resistanceRise ?? 0) * speed;
    expect(share(1150)).toBeLessThan(0.45);
    expect(share(3300)).toBeGreaterThan(0.9);
    expect(share(3300)).toBeLessThan(1.6);
  });
});
