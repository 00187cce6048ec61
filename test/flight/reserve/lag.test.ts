import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gyroscopicCoupling } from '../../../src/flight/reserve/gyroscopic.ts';
import { motorTimeConstant, type Spinner, spinTime } from '../../../src/flight/reserve/spinUp.ts';
import { timeToBank } from '../../../src/flight/reserve/timeToBank.ts';

const spinner: Spinner = {
  rotatingInertia: 6e-6,
  speedConstant: (1850 * Math.PI) / 30,
  resistance: 0.09,
  noLoadTorque: 0.004,
  torqueFactor: 2e-8,
};

const acceleration = (w: number, voltage: number): number =>
  ((voltage - w / spinner.speedConstant) / (spinner.resistance * spinner.speedConstant) -
    spinner.noLoadTorque -
    spinner.torqueFactor * w * w) /
  spinner.rotatingInertia;

describe('motor and propeller lag', () => {
  it('time constant is the slope of the equation of motion', () => {
    for (const w of [300, 1200, 2500]) {
      const slope = (acceleration(w + 0.5, 14) - acceleration(w - 0.5, 14)) / 1;
      expect(-1 / slope / motorTimeConstant(spinner, w)).toBeCloseTo(1, 6);
    }
  });

  it('time constant of a 5 inch drive is some tens of milliseconds (common practice, no source)', () => {
    const tau = motorTimeConstant(spinner, 1200);
    expect(tau).toBeGreaterThan(0.01);
    expect(tau).toBeLessThan(0.08);
  });

  it('closed spin time agrees with stepping the equation of motion, up and down', () => {
    for (const [from, to, voltage] of [
      [800, 2000, 14],
      [2000, 900, 1],
      [0, 1500, 15],
    ] as const) {
      const outcome = spinTime(spinner, from, to, voltage);
      if (!outcome.ok) throw new Error(outcome.reason);
      // Midpoint rule on dt = dw / acceleration: error below 1e-7 of the time at 4000 steps.
      let time = 0;
      const steps = 4000;
      for (let i = 0; i < steps; i++) {
        const w = from + ((i + 0.5) / steps) * (to - from);
        time += (to - from) / steps / acceleration(w, voltage);
      }
      expect(outcome.value / time).toBeCloseTo(1, 5);
    }
  });

  it('says when the voltage is not enough', () => {
    const settled = spinTime(spinner, 1000, 5000, 10);
    expect(settled.ok).toBe(false);
    expect(spinTime(spinner, 0, 100, 0).ok).toBe(false);
    expect(spinTime(spinner, 500, 500, 3)).toEqual({ ok: true, value: 0 });
    expect(() => spinTime(spinner, -1, 2, 3)).toThrow(/from/);
    expect(() => motorTimeConstant(spinner, -1)).toThrow(/angularSpeed/);
  });
});

const bank = (request: Parameters<typeof timeToBank>[0]) => {
  const outcome = timeToBank(request);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

describe('time to bank', () => {
  const half = Math.PI / 2;

  it('without lag is the textbook bang-bang, sqrt(2 a/A) to pass and 2 sqrt(a/A) to stop', () => {
    const { toPass, toStop } = bank({ angle: half, acceleration: 120, deceleration: 120, lag: 0 });
    expect(toPass).toBeCloseTo(Math.sqrt((2 * half) / 120), 9);
    expect(toStop).toBeCloseTo(2 * Math.sqrt(half / 120), 9);
  });

  it('with unequal moments stops in sqrt(2 a (1/A + 1/D))', () => {
    const { toStop } = bank({ angle: half, acceleration: 120, deceleration: 70, lag: 0 });
    expect(toStop).toBeCloseTo(Math.sqrt(2 * half * (1 / 120 + 1 / 70)), 9);
  });

  it('with lag agrees with stepping the same motion', () => {
    const request = { angle: half, acceleration: 150, deceleration: 110, lag: 0.03 };
    const { toPass, rateWhenPassing } = bank(request);
    let [angle, rate, acceleration, t] = [0, 0, 0, 0];
    const dt = 1e-6;
    while (angle < half) {
      acceleration += (dt * (150 - acceleration)) / 0.03;
      rate += dt * acceleration;
      angle += dt * rate;
      t += dt;
    }
    expect(Math.abs(toPass - t)).toBeLessThan(5e-6);
    expect(rateWhenPassing).toBeCloseTo(rate, 2);
  });

  it('is slower with more lag and never quicker to stop than to pass', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 6, noNaN: true }),
        fc.double({ min: 5, max: 1000, noNaN: true }),
        fc.double({ min: 5, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (angle, acceleration, deceleration, lag) => {
          const request = { angle, acceleration, deceleration, lag };
          const quick = bank(request);
          const slow = bank({ ...request, lag: lag + 0.01 });
          expect(quick.toStop).toBeGreaterThanOrEqual(quick.toPass);
          expect(slow.toPass).toBeGreaterThan(quick.toPass);
          expect(slow.toStop).toBeGreaterThan(quick.toStop);
        },
      ),
    );
  });

  it('with a rate limit is bound by it', () => {
    const free = { angle: half, acceleration: 400, deceleration: 400, lag: 0.02 };
    const limited = bank({ ...free, rateLimit: 10 });
    expect(limited.toPass).toBeGreaterThan(half / 10);
    expect(limited.rateWhenPassing).toBeCloseTo(10, 6);
    expect(bank({ ...free, rateLimit: 1000 }).toStop).toBeCloseTo(bank(free).toStop, 9);
  });

  it('refuses what is out of range', () => {
    expect(() => timeToBank({ angle: 0, acceleration: 1, deceleration: 1, lag: 0 })).toThrow(/angle/);
    expect(() => timeToBank({ angle: 1, acceleration: 1, deceleration: 1, lag: -1 })).toThrow(/lag/);
  });
});

describe('gyroscopic coupling', () => {
  const rotor = (spin: 1 | -1, angularSpeed: number) => ({ spin, angularSpeed, rotatingInertia: 6e-6 });

  it('cancels in equal pairs but not on the arm', () => {
    const pairs = [rotor(1, 1500), rotor(-1, 1500), rotor(1, 1500), rotor(-1, 1500)];
    const { momentum, moment, largestOnArm } = gyroscopicCoupling(pairs, [10, 0, 0]);
    expect(momentum).toBe(0);
    expect(moment.map(Math.abs)).toEqual([0, 0, 0]);
    expect(largestOnArm).toBeCloseTo(10 * 1500 * 6e-6, 12);
  });

  it('turns a roll into a pitch when the pairs differ, at right angles and without work', () => {
    const pairs = [rotor(1, 1800), rotor(-1, 1200), rotor(1, 1800), rotor(-1, 1200)];
    const rates = [8, 3, 2] as const;
    const { momentum, moment } = gyroscopicCoupling(pairs, rates);
    expect(momentum).toBeCloseTo(2 * 600 * 6e-6, 12);
    expect(moment[1]).toBeCloseTo(8 * momentum, 12);
    expect(moment[0] * rates[0] + moment[1] * rates[1] + moment[2] * rates[2]).toBeCloseTo(0, 12);
  });
});
