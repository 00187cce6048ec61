import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bus, busModel } from '../../../src/drive/busCircuit.ts';
import { busRinging } from '../../../src/drive/busRinging.ts';
import { busRipple, rippleAt, widestRipple } from '../../../src/drive/busRipple.ts';
import { Solver } from '../../secondIntegrator.ts';
import { bus, ceramic, electrolytic } from './example.ts';

const swing = (of: Bus, frequency: number, duty: number) => {
  const { over, under } = busRipple(busModel(of), frequency);
  return rippleAt(over, duty) + rippleAt(under, duty);
};

describe('ripple of the bus', () => {
  // Input capacitor of a step-down converter fed with smooth current: i d (1 - d)/(f C) from peak to peak, by the charge that
  // flows in while nothing is drawn, and the pulse over its series resistance on top (Mohan, Undeland and Robbins, Power
  // Electronics; from memory).
  it('is that of a textbook converter where the leads hold their current', () => {
    const smooth = { packVoltage: 25.2, sourceResistance: 0.01, inductance: 1e-3 };
    for (const duty of [0.125, 0.25, 0.5, 0.75]) {
      const capacitors = [{ capacitance: 500e-6, resistance: 1e-6 }];
      const textbook = (duty * (1 - duty)) / (24e3 * 500e-6);
      expect(swing({ ...smooth, capacitors }, 24e3, duty) / textbook).toBeCloseTo(1, 2);
      const lossy = [{ capacitance: 1, resistance: 0.03 }];
      expect(swing({ ...smooth, capacitors: lossy }, 24e3, duty)).toBeCloseTo(0.03, 4);
    }
    expect(widestRipple(busRipple(busModel({ ...smooth, capacitors: [ceramic] }), 24e3)).duty).toBe(0.5);
  });

  it('is the pulse over the resistances where nothing stores', () => {
    const capacitors = [{ capacitance: 1e-9, resistance: 1 }];
    const found = busRipple(busModel({ ...bus, inductance: 0, capacitors }), 24e3);
    for (const duty of [0.25, 0.5]) {
      expect(rippleAt(found.over, duty)).toBeCloseTo(duty * 0.025, 6);
      expect(rippleAt(found.under, duty)).toBeCloseTo((1 - duty) * 0.025, 6);
    }
  });

  it('is none while nothing or all is drawn', () => {
    const { over, under } = busRipple(busModel(bus), 48e3);
    for (const table of [over, under]) expect([rippleAt(table, 0), rippleAt(table, 1)]).toEqual([0, 0]);
  });

  // From rest through sixty periods, by the second integrator.
  it('is where a second integrator settles', () => {
    const [R, L, f, duty] = [0.005, 120e-9, 36e3, 0.375];
    const one = { ...bus, sourceResistance: R, inductance: L, capacitors: [ceramic, electrolytic] };
    const g = 1 / ceramic.resistance + 1 / electrolytic.resistance;
    const over = ([i, v, w]: readonly number[], q: number) =>
      (i! - q + v! / ceramic.resistance + w! / electrolytic.resistance) / g;
    let state = [0, 0, 0];
    let [most, least] = [-1, 1];
    const last = 60;
    for (let period = 0; period <= last; period++) {
      for (let piece = 0; piece < 64; piece++) {
        const q = piece < 64 * duty ? 1 : 0;
        const look = () => {
          if (period < last) return;
          most = Math.max(most, over(state, q));
          least = Math.min(least, over(state, q));
        };
        look();
        const solver = new Solver(3);
        solver.absoluteTolerance = solver.relativeTolerance = 1e-8;
        const slope = (_: number, x: number[]) => {
          const y = over(x, q);
          return [
            (-1e-6 * (y + R * x[0]!)) / L,
            (1e-6 * (y - x[1]!)) / (ceramic.resistance * ceramic.capacitance),
            (1e-6 * (y - x[2]!)) / (electrolytic.resistance * electrolytic.capacitance),
          ];
        };
        state = solver.solve(slope, 0, state, 1e6 / (f * 64)).y;
        look();
      }
    }
    const found = busRipple(busModel(one), f);
    expect(rippleAt(found.over, duty)).toBeCloseTo(most + R * duty, 5);
    expect(rippleAt(found.under, duty)).toBeCloseTo(-R * duty - least, 5);
  });

  it('grows without bound only where nothing resists', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5e-9, max: 1e-6, noNaN: true }),
        fc.double({ min: 8e3, max: 100e3, noNaN: true }),
        (inductance, frequency) => {
          const { over, under } = busRipple(busModel({ ...bus, inductance }), frequency);
          for (const value of [...over, ...under]) expect(value >= 0 && value < 1).toBe(true);
        },
      ),
    );
    expect(() => busRipple(busModel(bus), 0)).toThrow('found 0 Hz');
  });
});

describe('ringing', () => {
  // By hand: 1/(2 pi sqrt(54e-9 x 160e-6)) = 54.1 kHz.
  it('is where inductance and capacitance cancel', () => {
    const found = busRinging({ ...bus, capacitors: [ceramic] }, 24e3);
    expect(found.frequency! / 54.15e3).toBeCloseTo(1, 3);
  });

  // At resonance the gain is the larger branch over the resistances in the loop: sqrt(w^2 L^2 + R^2)/(R + r).
  it('is the quality of the circuit in tune, and none far below', () => {
    const quiet = { ...bus, sourceResistance: 0.002, capacitors: [ceramic] };
    const { frequency, gain } = busRinging(quiet, 54.15e3);
    const reactance = 2 * Math.PI * frequency! * 54e-9;
    expect(gain).toBeCloseTo(Math.hypot(reactance, 0.005) / 0.007, 2);
    expect(busRinging(quiet, 2e3).gain).toBeLessThan(1.01);
    expect(busRinging({ ...bus, inductance: 0 }, 24e3).frequency).toBeUndefined();
  });

  it('is damped by an electrolytic capacitor', () => {
    const alone = { ...bus, sourceResistance: 0.005, capacitors: [ceramic] };
    expect(busRinging(alone, 48e3).gain).toBeGreaterThan(1.5);
    expect(busRinging({ ...alone, capacitors: [ceramic, electrolytic] }, 48e3).gain).toBeLessThan(1.1);
  });
});
