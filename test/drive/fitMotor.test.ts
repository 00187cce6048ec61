import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { fitMotor } from '../../src/drive/fitMotor.ts';
import { motorAt } from '../../src/drive/motor.ts';
import { motorFromNameplate } from '../../src/drive/motorFromNameplate.ts';
import type { MotorReading } from '../../src/drive/types.ts';
import { standardNormal } from '../../src/numerics/standardNormal.ts';

const guess = motorFromNameplate({ statorDiameter: 0.022, statorHeight: 0.007, speedConstant: 193.7 });
const truth = { ...guess.model, speedConstant: 187, resistance: 0.075, noLoadCurrent: 1.5 };

/** A table that the true motor would give, with a multiplying error a reading. */
function table(withTorque: boolean, errors: readonly number[] = []): MotorReading[] {
  return [500, 1000, 1500, 2000, 2500, 3000].map((angularSpeed, i) => {
    const torque = 1.2e-8 * angularSpeed ** 2;
    const point = motorAt(truth, torque, angularSpeed, truth.referenceTemperature);
    const reading = { voltage: point.voltage * (1 + (errors[i] ?? 0)), current: point.current, angularSpeed };
    return withTorque ? { ...reading, torque } : reading;
  });
}

describe('motor fitted to readings', () => {
  it('moves from the nameplate towards the truth, and knows it', () => {
    const fit = fitMotor(guess, table(true), 'measured');
    expect(fit.speedConstant.value / 187).toBeCloseTo(1, 1);
    expect(Math.abs(fit.resistance.value - 0.075)).toBeLessThan(2 * fit.resistance.deviation);
    expect(Math.abs(fit.noLoadCurrent.value / 1.5 - 1)).toBeLessThan(0.08);
    expect(fit.resistance.deviation).toBeLessThan(guess.resistance.deviation);
    expect(fit.noLoadCurrent.trust).toBe('measured');
    expect(fit.misfit).toBeLessThan(1);
  });

  it('leaves the no-load current to the nameplate when torque was not measured', () => {
    const fit = fitMotor(guess, table(false), 'maker');
    expect(fit.noLoadCurrent.value).toBeCloseTo(guess.noLoadCurrent.value, 9);
    expect(fit.noLoadCurrent.deviation).toBeCloseTo(guess.noLoadCurrent.deviation, 9);
    expect(fit.noLoadCurrent.trust).toBe('inferred');
  });

  it('finds the truth when a tight table outweighs the prior', () => {
    const many = Array.from({ length: 400 }, () => table(true)).flat();
    const fit = fitMotor(guess, many, 'measured');
    expect(fit.speedConstant.value).toBeCloseTo(187, 0);
    expect(fit.resistance.value).toBeCloseTo(0.075, 3);
    expect(fit.noLoadCurrent.value).toBeCloseTo(1.5, 2);
  });

  it('says why it does not know what one line at one voltage cannot tell', () => {
    // One line once narrowed R to 7.6 % beside a rise made from that very line, and called it fitted.
    const fit = fitMotor(guess, table(false).slice(-1), 'maker');
    expect(fit.resistance.untold).toMatch(/several voltages/);
    expect(fit.resistance.trust).toBe('inferred');
    expect(fit.resistance.deviation / fit.resistance.value).toBeGreaterThan(0.2);
    expect(fit.noLoadCurrent.untold).toBe('no reading tells torque');
    const whole = fitMotor(guess, table(true), 'measured');
    expect(whole.resistance.untold).toBeUndefined();
    expect(whole.noLoadCurrent.untold).toBeUndefined();
    // No number of lines tells a winding's temperature: 20 K are 8 %.
    const many = fitMotor(guess, Array.from({ length: 400 }, () => table(true)).flat(), 'measured');
    expect(many.resistance.deviation / many.resistance.value).toBeGreaterThan(0.079);
  });

  it.each([
    ['a stand at many voltages, with torque', 12, true],
    ['a maker’s table without torque', 6, false],
    ['one line at full throttle', 1, false],
  ] as const)('its 10-90 bands hold 75 to 90 of a hundred motors: %s', (_, lines, withTorque) => {
    const random = xoroshiro128plus(20261129);
    const off = (spread: number) => Math.exp(spread * standardNormal(random));
    const names = ['speedConstant', 'resistance', 'noLoadCurrent', 'resistanceRise'] as const;
    const held = new Map(names.map((name) => [name, 0]));
    const draws = 300;
    for (let draw = 0; draw < draws; draw++) {
      // A motor as the nameplate leaves it open, and a stand with meters and a winding of its own.
      const motor = { ...guess.model, resistanceRise: 0 };
      for (const name of names) {
        const { value, deviation } = guess[name];
        motor[name] = value * off(deviation / value);
      }
      const [volts, warm, amperes] = [off(0.007), off(0.08), off(0.01)];
      const readings = Array.from({ length: lines }, (__, i): MotorReading => {
        const angularSpeed = lines === 1 ? 3000 : 600 + (2400 * i) / (lines - 1);
        const torque = 1.2e-8 * angularSpeed ** 2;
        const warmed = { ...motor, resistance: motor.resistance * warm };
        const point = motorAt(warmed, torque, angularSpeed, motor.referenceTemperature);
        return {
          angularSpeed,
          voltage: point.voltage * volts * off(0.015),
          current: point.current * amperes * off(0.03),
          ...(withTorque ? { torque } : {}),
        };
      });
      const fit = fitMotor(guess, readings, 'measured');
      for (const name of names) {
        const { value, deviation } = fit[name];
        // Of the logarithm, as the spreads are meant.
        if (Math.abs(Math.log(value / motor[name])) < (1.2816 * deviation) / value) {
          held.set(name, held.get(name)! + 1);
        }
      }
    }
    for (const [name, count] of held) {
      expect(count / draws, name).toBeGreaterThan(0.75);
      expect(count / draws, name).toBeLessThan(0.9);
    }
  });

  it('reads part throttle through the converter', () => {
    const part = table(true).map((r) => ({
      ...r,
      voltage: r.voltage / 0.5,
      current: r.current * 0.5,
      duty: 0.5,
    }));
    const full = fitMotor(guess, table(true), 'maker');
    expect(fitMotor(guess, part, 'maker').resistance.value).toBeCloseTo(full.resistance.value, 9);
  });

  it('never claims to know less than nothing, nor a NaN, from any readings', () => {
    const positive = fc.double({ min: 0.1, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(positive, positive, positive), { minLength: 1, maxLength: 6 }),
        (rows) => {
          const readings = rows.map(([voltage, current, s]) => ({ voltage, current, angularSpeed: 50 * s }));
          const fit = fitMotor(guess, readings, 'maker');
          for (const [known, before] of [
            [fit.speedConstant, guess.speedConstant],
            [fit.resistance, guess.resistance],
            [fit.noLoadCurrent, guess.noLoadCurrent],
          ] as const) {
            expect(known.value).toBeGreaterThan(0);
            expect(known.deviation / known.value).toBeLessThanOrEqual(
              before.deviation / before.value + 1e-12,
            );
          }
        },
      ),
    );
  });

  it('refuses a reading at no current', () => {
    expect(() => fitMotor(guess, [{ voltage: 10, current: 0, angularSpeed: 900 }], 'maker')).toThrow(
      /found 10 V, 0 A/,
    );
  });
});
