import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bus, busModel, leadInductance } from '../../../src/drive/busCircuit.ts';
import { cutOnBus } from '../../../src/drive/busCut.ts';
import { Solver } from '../../secondIntegrator.ts';
import { bus, ceramic, electrolytic } from './example.ts';

const lossless = { ...bus, sourceResistance: 0, inductance: leadInductance(0.1) };
const rise = (of: Bus, current = 100) => cutOnBus(busModel(of), current).rise;

describe('cut of the bus current', () => {
  // By hand: L = 0.6e-6 x 0.1 = 6e-8 H, sqrt(6e-8 / 1e-3) = 7.746 mohm; 100 A -> 0.775 V.
  it('adds i sqrt(L/C) where nothing resists', () => {
    expect(rise({ ...lossless, capacitors: [{ capacitance: 1e-3, resistance: 1e-5 }] })).toBeCloseTo(
      0.775,
      2,
    );
  });

  it('adds i x resistance at once where that of the capacitor is nearly all', () => {
    expect(rise({ ...lossless, capacitors: [{ capacitance: 1, resistance: 0.02 }] })).toBeCloseTo(2, 2);
  });

  // Series R, L, C by hand (any circuit text): v = e^(-a t) (A cos wt + B sin wt), a = R/2L, w^2 = 1/LC - a^2, from the sag
  // A = -i R with the leads' current still flowing, v' = i/C.
  it('swings as a series circuit does from its sag', () => {
    const [R, L, C, i] = [0.015, 54e-9, 160e-6, 100];
    const a = R / (2 * L);
    const w = Math.sqrt(1 / (L * C) - a * a);
    const A = -i * R;
    const B = (i / C + a * A) / w;
    let most = 0;
    for (let t = 0; t < 20e-6; t += 1e-9) {
      most = Math.max(most, Math.exp(-a * t) * (A * Math.cos(w * t) + B * Math.sin(w * t)));
    }
    const capacitors = [{ capacitance: C, resistance: 1e-6 }];
    expect(rise({ packVoltage: 25.2, sourceResistance: R, inductance: L, capacitors })).toBeCloseTo(most, 3);
  });

  it('only comes back to the full pack where the sag outweighs the leads', () => {
    expect(cutOnBus(busModel({ ...bus, sourceResistance: 0.1 }), 100)).toEqual({ rise: 0 });
    expect(cutOnBus(busModel({ ...bus, inductance: 0 }), 100)).toEqual({ rise: 0 });
    expect(cutOnBus(busModel(lossless), 0)).toEqual({ rise: 0 });
  });

  // The two-branch circuit once more, by the second integrator.
  it('is what a second integrator finds for two capacitors side by side', () => {
    for (const R of [0, 0.004]) {
      const L = leadInductance(0.1);
      const both = (i: number, v: number, w: number) =>
        (i + v / ceramic.resistance + w / electrolytic.resistance) /
        (1 / ceramic.resistance + 1 / electrolytic.resistance);
      let [state, most] = [[100, -100 * R, -100 * R], 0];
      for (let n = 0; n < 300; n++) {
        most = Math.max(most, both(state[0]!, state[1]!, state[2]!));
        const solver = new Solver(3);
        solver.absoluteTolerance = solver.relativeTolerance = 1e-9;
        // In microseconds.
        const slope = (_: number, [i, v, w]: number[]) => {
          const over = both(i!, v!, w!);
          return [
            -1e-6 * ((over + R * i!) / L),
            (1e-6 * (over - v!)) / (ceramic.resistance * ceramic.capacitance),
            (1e-6 * (over - w!)) / (electrolytic.resistance * electrolytic.capacitance),
          ];
        };
        state = solver.solve(slope, 0, state, 0.05).y;
      }
      expect(most).toBeGreaterThan(0.3);
      expect(rise({ ...lossless, sourceResistance: R, capacitors: [ceramic, electrolytic] })).toBeCloseTo(
        most,
        2,
      );
    }
  });

  // A fitted capacitor once took the place of the controllers' own, and so raised the peak that it is there to lower.
  it('is never raised by one more capacitor, nor lowered by more inductance', () => {
    const some = fc.record({
      capacitance: fc.double({ min: 20e-6, max: 3e-3, noNaN: true }),
      resistance: fc.double({ min: 0.002, max: 0.1, noNaN: true }),
    });
    const resistance = fc.double({ min: 0, max: 0.03, noNaN: true });
    fc.assert(
      fc.property(fc.array(some, { minLength: 1, maxLength: 3 }), some, resistance, (capacitors, more, R) => {
        const own = { ...lossless, sourceResistance: R, capacitors };
        const peak = rise(own);
        expect(rise({ ...own, capacitors: [...capacitors, more] })).toBeLessThan(peak + 2e-3);
        expect(rise({ ...own, inductance: 1.2 * own.inductance })).toBeGreaterThan(peak - 2e-3);
      }),
      { numRuns: 60 },
    );
  });

  it('says which value makes no circuit', () => {
    expect(() => busModel({ ...bus, capacitors: [] })).toThrow('at least one');
    expect(() => busModel({ ...bus, capacitors: [{ capacitance: 0, resistance: 1 }] })).toThrow('found 0 F');
    expect(() => busModel({ ...bus, capacitors: [{ capacitance: 1, resistance: 0 }] })).toThrow(
      'found 0 ohm',
    );
    expect(() => busModel({ ...bus, inductance: -1 })).toThrow('found -1 H');
    expect(() => busModel({ ...bus, inductance: 0, sourceResistance: 0 })).toThrow('without inductance');
  });
});
