import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnAllAtOnce } from '../../src/flight/allAtOnce.ts';
import { circuitOf } from '../../src/flight/circuit.ts';
import { currentOfCurve, dutyCurve } from '../../src/flight/dutyCurve.ts';
import { emptySupply } from '../../src/flight/feed.ts';
import { hoverStory } from '../../src/flight/hoverStory.ts';
import { emptyLoad } from '../../src/flight/load.ts';
import { sourceAt } from '../../src/flight/operatingPoint.ts';
import { styles } from '../../src/flight/styles.ts';
import { currentOnBus, loadForDuties } from '../../src/flight/throttle.ts';
import { type FlightModel, type Levers, neutralLevers } from '../../src/flight/types.ts';
import { bracketedRoot } from '../../src/numerics/bracketedRoot.ts';
import { anyModel, exampleQuad } from './exampleModel.ts';

/** The short cuts of the solvers against the long way round. */

/** Every lead another length, so that no two motors are alike. */
const uneven = (model: FlightModel): FlightModel => ({
  ...model,
  stations: model.stations.map((station, i) => ({
    ...station,
    supplyLead: { ...station.supplyLead, length: station.supplyLead.length + 0.03 * i },
  })),
});

/** Below this the silliest of the random aircraft stall, which is left to the long way. */
const duty = fc.double({ min: 0.4, max: 1, noNaN: true });

describe('all motors at once', () => {
  it('lands where a bracket on the bus voltage does, nearly always', () => {
    let asked = 0;
    let found = 0;
    fc.assert(
      fc.property(anyModel, fc.array(duty, { minLength: 8, maxLength: 8 }), (model, duties) => {
        const circuit = circuitOf(uneven(model), neutralLevers);
        const count = circuit.branches.length;
        const source = sourceAt(circuit, 0.6);
        const [load, supply] = [emptyLoad(count), emptySupply(count)];
        const resistance = source.resistance + circuit.mainResistance;
        const lowest = Math.max(Math.sqrt(resistance * circuit.avionicsPower), 1e-6 * source.emf);
        const bus = bracketedRoot(
          (v) =>
            v +
            resistance *
              (circuit.avionicsPower / v +
                currentOnBus(circuit, duties, v, 0, emptyLoad(count), emptySupply(count))) -
            source.emf,
          lowest,
          source.emf,
          1e-12,
        );
        const quick = turnAllAtOnce(circuit, source, duties, 0, load, supply);
        if (!bus.ok) {
          expect(quick).toBe(false);
          return;
        }
        asked++;
        if (!quick) return;
        found++;
        expect(supply.busVoltage / bus.value).toBeCloseTo(1, 9);
      }),
      { numRuns: 150 },
    );
    expect(asked).toBeGreaterThan(100);
    expect(found / asked).toBeGreaterThan(0.75);
  });
});

describe('current over bus voltage as a curve', () => {
  it('is within 1e-5 of the motors solved anew, at full throttle', () => {
    let compared = 0;
    fc.assert(
      fc.property(anyModel, fc.double({ min: 0.1, max: 1, noNaN: true }), (model, charge) => {
        const circuit = circuitOf(uneven(model), neutralLevers);
        const count = circuit.branches.length;
        const duties = new Float64Array(count).fill(1);
        const top = sourceAt(circuit, 1).emf;
        const curve = dutyCurve(circuit, duties, 0.5 * top, top);
        const source = sourceAt(circuit, charge);
        const supply = emptySupply(count);
        const direct = loadForDuties(circuit, source, duties, 0, emptyLoad(count), supply);
        const quick = curve && currentOfCurve(curve, circuit, source);
        if (!direct.ok) expect(quick).toBeUndefined();
        if (!direct.ok || supply.busVoltage < 0.5 * top) return;
        compared++;
        expect(Math.abs(quick! / supply.packCurrent - 1)).toBeLessThan(1e-5);
      }),
      { numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(60);
  });
});

describe('a story told from a near one', () => {
  it('is the same story, whichever lever is moved', () => {
    const names = Object.keys(neutralLevers) as (keyof Levers)[];
    fc.assert(
      fc.property(
        anyModel,
        fc.constantFrom(...names),
        fc.double({ min: 0.7, max: 1.4, noNaN: true }),
        fc.constantFrom(styles.freestyle, styles.race, styles.filming),
        fc.double({ min: -0.01, max: 0.01, noNaN: true }),
        (model, name, factor, style, shift) => {
          const first = hoverStory(model, neutralLevers, [style]);
          if (!first.ok) return;
          const moved = shift > 0 ? { ...model, centreOfGravity: [shift, 0, 0] as const } : model;
          const levers = { ...neutralLevers, [name]: factor };
          const far = hoverStory(moved, levers, [style]);
          const near = hoverStory(moved, levers, [style], first.value);
          expect(near.ok).toBe(far.ok);
          if (!near.ok || !far.ok) return;
          for (const read of [
            (s: typeof far.value) => s.hover.packCurrent,
            (s: typeof far.value) => s.punch.packCurrent,
            (s: typeof far.value) => s.lastThrustToWeight,
            (s: typeof far.value) => s.endurance.duration,
            (s: typeof far.value) => s.styles[0]!.duration,
            (s: typeof far.value) => s.styles[0]!.lowestVoltage,
            (s: typeof far.value) => s.hoverHeat[0]!.settled?.winding ?? 0,
          ]) {
            const [a, b] = [read(near.value), read(far.value)];
            expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-8 * Math.abs(b));
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('costs fewer rotor readings where the air is the same', () => {
    let readings = 0;
    const base = exampleQuad({ centreOfGravity: [0.006, 0.002, 0.01] });
    const model = uneven({
      ...base,
      stations: base.stations.map((station) => ({
        ...station,
        rotor: (w, v, out) => {
          readings++;
          station.rotor(w, v, out);
        },
      })),
    });
    const first = hoverStory(model, neutralLevers, [styles.freestyle]);
    if (!first.ok) throw new Error(first.reason);
    const cold = readings;
    readings = 0;
    hoverStory(model, { ...neutralLevers, packResistanceScale: 1.2 }, [styles.freestyle], first.value);
    expect(readings).toBeLessThan(0.7 * cold);
  });
});
