import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BrakedMotors,
  type BrakingTrace,
  brakeOnBus,
  fullThrottleSpeeds,
} from '../../../src/drive/busBraking.ts';
import { type Bus, busModel } from '../../../src/drive/busCircuit.ts';
import { busRipple } from '../../../src/drive/busRipple.ts';
import { Solver } from '../../secondIntegrator.ts';
import { bus, ceramic, electrolytic, motors } from './example.ts';

const drop = { duration: 0.02, idleDuty: 0.04 };
const FREQUENCY = 24e3;
const brake = (of: Bus, some: readonly BrakedMotors[], how = drop): BrakingTrace => {
  const model = busModel(of);
  return brakeOnBus(model, of, some, how, busRipple(model, FREQUENCY));
};
const most = ({ points }: BrakingTrace, of: (point: BrakingTrace['points'][number]) => number) =>
  Math.max(...points.map(of));
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('braking on the bus', () => {
  // By hand: the current back at duty d is d (e - d V)/R, most at d = e/(2 V), N e^2/(4 V R); through the source's resistance it
  // lifts the bus by that times R_source. A flywheel of a rotor holds its speed; a hundredth of a milliohm hardly feeds back.
  it('gives back N e^2/(4 V R) where the rotor holds its speed', () => {
    const held = { ...motors, rotatingInertia: 1, resistanceSlope: 0 };
    const stiff = { ...bus, sourceResistance: 1e-5, inductance: 0 };
    const trace = brake(stiff, [held]);
    const e = held.angularSpeed / held.speedConstant;
    const bound = (4 * e * e) / (4 * 25.2 * held.resistance);
    expect(most(trace, ({ returned }) => returned) / bound).toBeCloseTo(1, 3);
    expect(most(trace, ({ rise }) => rise) / (bound * 1e-5)).toBeCloseTo(1, 2);
    const highest = trace.points.reduce((a, b) => (b.returned > a.returned ? b : a));
    expect(highest.duty).toBeCloseTo(e / (2 * 25.2), 2);
  });

  it('never gives back more than that, however quickly the duty falls', () => {
    fc.assert(
      fc.property(between(0.5e-3, 0.2), between(0.002, 0.2), between(3e-7, 1e-4), (duration, R, inertia) => {
        const own = { ...motors, rotatingInertia: inertia };
        const trace = brake({ ...bus, sourceResistance: R }, [own], { ...drop, duration });
        const e = own.angularSpeed / own.speedConstant;
        // The resistance falls with the speed: that at rest is the least.
        const bound = (own.count * e * e) / (4 * 25.2 * own.resistance);
        expect(most(trace, ({ returned }) => returned)).toBeLessThan(bound);
        expect(most(trace, ({ rise }) => rise)).toBeLessThan(bound * R + 0.01);
      }),
    );
  });

  it('comes to nothing with much resistance in the windings, or a bus that swallows all', () => {
    const blunt = { ...motors, resistance: 100, resistanceSlope: 0 };
    expect(most(brake(bus, [blunt]), ({ crest }) => crest)).toBeLessThan(0.02);
    const endless = { ...bus, capacitors: [{ capacitance: 1e3, resistance: 1e-5 }] };
    // It starts from the sag of full throttle and stays there.
    const { points } = brake(endless, [motors]);
    expect(points.at(-1)!.rise).toBeCloseTo(points[0]!.rise, 2);
    expect(most(brake(endless, [motors]), ({ crest }) => crest)).toBeLessThan(0);
  });

  it('needs no inductance, and feels it little: the drop is slow for a lead', () => {
    const rise = (inductance: number) => most(brake({ ...bus, inductance }, [motors]), (point) => point.rise);
    expect(rise(0)).toBeCloseTo(rise(54e-9), 2);
  });

  // Energy: what the rotors lose goes into air, iron, windings, the source's resistance, the capacitor and the cells.
  it('keeps its energy', () => {
    fc.assert(
      fc.property(
        between(5e-3, 0.1),
        between(0.005, 0.08),
        between(2e-6, 4e-5),
        between(0.05, 0.3),
        between(1e-4, 3e-3),
        (duration, R, inertia, winding, capacitance) => {
          const turning = { ...motors, rotatingInertia: inertia, resistance: winding };
          const [angularSpeed = 0] = fullThrottleSpeeds([turning], bus.packVoltage, R);
          const own = { ...turning, angularSpeed };
          const capacitor = { capacitance, resistance: 0.02 };
          const of = { ...bus, inductance: 0, sourceResistance: R, capacitors: [capacitor] };
          const trace = brake(of, [own], { ...drop, duration });
          const { lost, found } = energies(trace, own, of, capacitor);
          expect(Math.abs(found - lost)).toBeLessThan(0.005 * lost);
        },
      ),
      { numRuns: 60 },
    );
  });

  // The same averaged equations by the second integrator.
  it('is what a second integrator finds', () => {
    const trace = brake(bus, [motors]);
    let state = [
      trace.points[0]!.returned * -1,
      trace.points[0]!.rise,
      trace.points[0]!.rise,
      motors.angularSpeed,
    ];
    for (let n = 16; n <= 128; n += 16) {
      const solver = new Solver(4);
      solver.absoluteTolerance = solver.relativeTolerance = 1e-7;
      const slope = (t: number, x: number[]) => averaged(1 - 0.96 * (t / 20), x).map((value) => 1e-3 * value);
      // In milliseconds.
      state = solver.solve(slope, ((n - 16) / 128) * 20, state, (n / 128) * 20).y;
      const duty = 1 - (0.96 * n) / 128;
      expect(trace.angularSpeeds[n]![0]! / state[3]!).toBeCloseTo(1, 3);
      expect(trace.points[n]!.rise).toBeCloseTo(averagedRise(duty, state), 2);
    }
  }, 30_000);

  // Nothing averaged: every pulse of the drop, the circuit by the second integrator between its edges. Mean and settled ripple laid
  // over each other must give its peak.
  it('peaks where every single pulse followed peaks', () => {
    const trace = brake(bus, [motors]);
    const first = trace.points[0]!;
    let state = [-first.returned, first.rise, first.rise, motors.angularSpeed];
    let highest = Number.NEGATIVE_INFINITY;
    const period = 1 / FREQUENCY;
    for (let n = 0; n < drop.duration * FREQUENCY; n++) {
      const duty = 1 - 0.96 * ((n + 0.5) / (drop.duration * FREQUENCY));
      // The winding holds its current through a pulse: that of the mean voltage.
      const current = motorCurrent(duty, state[3]!, averagedRise(duty, state));
      for (const [share, q] of [
        [duty, 4 * current],
        [1 - duty, 0],
      ] as const) {
        for (let piece = 0; piece < 4; piece++) {
          highest = Math.max(highest, riseUnder(q, state));
          const solver = new Solver(4);
          solver.absoluteTolerance = solver.relativeTolerance = 1e-6;
          const slope = (_: number, x: number[]) => circuit(q, current, x).map((value) => 1e-6 * value);
          state = solver.solve(slope, 0, state, (1e6 * share * period) / 4).y;
          highest = Math.max(highest, riseUnder(q, state));
        }
      }
    }
    expect(highest).toBeGreaterThan(2);
    // Within 2 %: the ripple is taken as settled, at duties a sixty-fourth apart; found 0.5 %.
    expect(most(trace, ({ crest }) => crest) / highest).toBeGreaterThan(0.98);
    expect(most(trace, ({ crest }) => crest) / highest).toBeLessThan(1.02);
  }, 60_000);

  it('takes motors apart or together alike', () => {
    const apart = brake(bus, [
      { ...motors, count: 1 },
      { ...motors, count: 3 },
    ]);
    expect(most(apart, ({ crest }) => crest)).toBeCloseTo(
      most(brake(bus, [motors]), ({ crest }) => crest),
      10,
    );
    expect(() => brake(bus, [motors], { ...drop, duration: 0 })).toThrow('found 0 s');
  });
});

describe('full throttle on another pack', () => {
  it('turns where the motor’s torque is the propeller’s', () => {
    const [speed] = fullThrottleSpeeds([motors], 25.2, 0.025);
    const { speedConstant, resistance, resistanceSlope, idleConstant, idleSlope, torqueFactor } = motors;
    // Torque balance and Kirchhoff by hand.
    const current = torqueFactor * speed! ** 2 * speedConstant + idleConstant + idleSlope * speed!;
    const voltage = speed! / speedConstant + current * (resistance + resistanceSlope * speed!);
    expect(voltage + 4 * current * 0.025).toBeCloseTo(25.2, 8);
    expect(fullThrottleSpeeds([{ ...motors, idleConstant: 1e4 }], 25.2, 0.025)).toEqual([0]);
  });
});

const motorCurrent = (duty: number, speed: number, rise: number) =>
  (duty * (bus.packVoltage + rise) - speed / motors.speedConstant) /
  (motors.resistance + motors.resistanceSlope * speed);

const conductance = 1 / ceramic.resistance + 1 / electrolytic.resistance;

const riseUnder = (q: number, [i, v, w]: readonly number[]) =>
  (i! - q + v! / ceramic.resistance + w! / electrolytic.resistance) / conductance;

/** The mean bus with the draw at that duty worked in. */
function averagedRise(duty: number, x: readonly number[]): number {
  const gain = (4 * duty * duty) / (motors.resistance + motors.resistanceSlope * x[3]!);
  return riseUnder(4 * duty * motorCurrent(duty, x[3]!, 0), x) / (1 + gain / conductance);
}

function averaged(duty: number, x: readonly number[]): number[] {
  const current = motorCurrent(duty, x[3]!, averagedRise(duty, x));
  return circuit(4 * duty * current, current, x);
}

/** Leads, both capacitors and a rotor under a draw and a motor current, per second. */
function circuit(q: number, current: number, x: readonly number[]): number[] {
  const rise = riseUnder(q, x);
  const { idleConstant, idleSlope, speedConstant, torqueFactor, rotatingInertia } = motors;
  const speed = x[3]!;
  return [
    -(rise + bus.sourceResistance * x[0]!) / bus.inductance,
    (rise - x[1]!) / (ceramic.resistance * ceramic.capacitance),
    (rise - x[2]!) / (electrolytic.resistance * electrolytic.capacitance),
    ((current - idleConstant - idleSlope * speed) / speedConstant - torqueFactor * speed * speed) /
      rotatingInertia,
  ];
}

/** By the trapezium rule on the trace [J]; without inductance the source carries rise/R. */
function energies(
  { points, angularSpeeds }: BrakingTrace,
  own: BrakedMotors,
  of: Bus,
  capacitor: { readonly capacitance: number; readonly resistance: number },
) {
  let found = 0;
  let charge = points[0]!.rise;
  const powers = points.map((point, n) => {
    const speed = angularSpeeds[n]![0]!;
    const voltage = of.packVoltage + point.rise;
    const resistance = own.resistance + own.resistanceSlope * speed;
    const current = (point.duty * voltage - speed / own.speedConstant) / resistance;
    const idle = own.idleConstant + own.idleSlope * speed;
    const source = point.rise / of.sourceResistance;
    return {
      rotors:
        own.count *
        (own.torqueFactor * speed ** 3 + (idle * speed) / own.speedConstant + current * current * resistance),
      source: source * (of.packVoltage + point.rise),
      into: point.returned - source,
    };
  });
  for (let n = 1; n < points.length; n++) {
    const step = points[n]!.time - points[n - 1]!.time;
    const [a, b] = [powers[n - 1]!, powers[n]!];
    found += (step * (a.rotors + b.rotors + a.source + b.source)) / 2;
    const into = (a.into + b.into) / 2;
    found += step * into * into * capacitor.resistance;
    const before = charge;
    charge += (step * into) / capacitor.capacitance;
    const stored = (rise: number) => (capacitor.capacitance * (of.packVoltage + rise) ** 2) / 2;
    found += stored(charge) - stored(before);
  }
  const kinetic = (speed: number) => (own.count * own.rotatingInertia * speed ** 2) / 2;
  return { lost: kinetic(angularSpeeds[0]![0]!) - kinetic(angularSpeeds.at(-1)![0]!), found };
}
