import { describe, expect, it } from 'vitest';
import { bestCurrent, motorAt, motorOnVoltage } from '../../src/drive/motor.ts';
import type { MotorModel } from '../../src/drive/types.ts';

/**
 * M. Drela, 'First-Order DC Electric Motor Model', MIT Aero & Astro, February 2007: i(Omega, v),
 * Q(Omega, v), efficiency eta = (1 - i0/i) / (1 + i R K_V / Omega). The memo works no figures; those here are the
 * project's check list (10 V, 0.05 ohm, 0.5 A) and the memo's formulas worked by hand.
 * Tolerance: closed forms, 1e-6 for the check list's rounding.
 */
const motor: MotorModel = {
  speedConstant: (1850 * Math.PI) / 30,
  resistance: 0.05,
  referenceTemperature: 293.15,
  noLoadCurrent: 0.5,
  noLoadSpeed: 1900,
  eddyShare: 0,
  heat: {
    windingCapacity: 2.6,
    caseCapacity: 13,
    windingToCase: 1.4,
    caseToStillAir: 0.08,
    caseToWash: 0.2,
    washReference: 10,
    washExponent: 0.6,
  },
  limits: { windingTemperature: 413, caseTemperature: 368 },
};

describe('Drela 2007 first-order motor', () => {
  it('has its best current at sqrt(v i0 / R), efficiency (1 - sqrt(i0 R / v))^2', () => {
    // sqrt(10 x 0.5 / 0.05) = 10 A; (1 - 0.5/10)(1 - 10 x 0.05/10) = 0.95 x 0.95 = 0.9025.
    expect(bestCurrent(motor, 10)).toBeCloseTo(10, 12);
    const speed = (10 - 10 * 0.05) * motor.speedConstant;
    const best = motorOnVoltage(motor, 10, speed, 293.15);
    expect(best.current).toBeCloseTo(10, 9);
    expect(best.efficiency).toBeCloseTo(0.9025, 9);
    for (const factor of [0.98, 1.02]) {
      expect(motorOnVoltage(motor, 10, speed * factor, 293.15).efficiency).toBeLessThan(0.9025);
    }
  });

  it('has torque constant 5.16178e-3 N m/A at 1850 rpm/V', () => {
    const point = motorAt(motor, 5.16178e-3, 1000, 293.15);
    expect(point.current - 0.5).toBeCloseTo(1, 5);
  });

  it('agrees with the memo in current, torque and efficiency at a worked point', () => {
    // v = 10 V, Omega = 1500 rad/s: back voltage 1500/193.7315 = 7.742673 V, i = 2.257327/0.05 = 45.14654 A,
    // Q = 44.64654 x 5.161782e-3 = 0.2304557 N m, eta = (1 - 0.5/45.14654) x 0.7742673 = 0.7656923.
    const point = motorOnVoltage(motor, 10, 1500, 293.15);
    expect(point.current).toBeCloseTo(45.14654, 3);
    expect(point.torque).toBeCloseTo(0.2304557, 5);
    expect(point.efficiency).toBeCloseTo(0.7656923, 5);
  });
});

/**
 * A. E. Fitzgerald, C. Kingsley, S. D. Umans, 'Electric Machinery', 6th ed., example 7.1 (from memory): a
 * 25 kW, 125 V machine at 3000 r/min, 0.02 ohm, friction not counted. At 128 V: 150 A, 19.20 kW in,
 * 18.75 kW and 59.7 N m electromagnetic. At 124 V it generates: -50 A. Tolerance: the book's three digits.
 */
describe('a textbook direct-current machine', () => {
  const machine: MotorModel = {
    ...motor,
    speedConstant: (100 * Math.PI) / 125,
    resistance: 0.02,
    noLoadCurrent: 0,
  };
  it('motors at 128 V', () => {
    const point = motorOnVoltage(machine, 128, 100 * Math.PI, 293.15);
    expect(point.current).toBeCloseTo(150, 6);
    expect(point.voltage * point.current).toBeCloseTo(19200, 6);
    expect(point.shaftPower).toBeCloseTo(18750, 6);
    expect(point.torque).toBeCloseTo(59.7, 1);
  });
  it('generates at 124 V', () => {
    const point = motorOnVoltage(machine, 124, 100 * Math.PI, 293.15);
    expect(point.current).toBeCloseTo(-50, 6);
    expect(point.torque).toBeCloseTo(-19.9, 1);
  });
});
