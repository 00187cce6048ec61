import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gyroscopicCoupling } from '../../../src/flight/reserve/gyroscopic.ts';
import { quaternionOf, writeRotation } from '../../../src/flight/simulation/attitude.ts';
import { writeDerivative } from '../../../src/flight/simulation/derivative.ts';
import { prepareCraft } from '../../../src/flight/simulation/prepare.ts';
import { simulate } from '../../../src/flight/simulation/simulate.ts';
import {
  at,
  plainGains,
  type SimulationModel,
  type SimulationState,
} from '../../../src/flight/simulation/types.ts';
import { Solver } from '../../secondIntegrator.ts';
import { flyer, noRotor, plainRotor } from './crafts.ts';

const prepared = (model: SimulationModel) => {
  const outcome = prepareCraft(model);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

const fly = (request: Omit<Parameters<typeof simulate>[0], 'gains'>) => {
  const outcome = simulate({ gains: plainGains, ...request });
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

/** Adrift in empty space: no air, no weight, rotors only turning. */
const adrift: SimulationModel = {
  ...flyer({ rotor: noRotor }),
  gravity: 0,
  dragArea: [0, 0, 0],
  inertia: [
    [0.003, 0.0003, -0.0002],
    [0.0003, 0.0035, 0.0001],
    [-0.0002, 0.0001, 0.006],
  ],
};

/** A hover needs weight and thrust; these runs bring their own start, so the mixer is fed a craft that has both. */
function drift(
  model: SimulationModel,
  start: SimulationState,
  commands: number[],
  step: number,
  duration: number,
) {
  const craft = prepared(model);
  const wind = new Float64Array(3);
  const command = Float64Array.from(commands);
  const state = start.slice();
  const slopes = [0, 1, 2, 3].map(() => new Float64Array(state.length));
  const shifted = (slope: Float64Array, by: number) => state.map((v, i) => v + by * slope[i]!);
  for (let k = 0; k < Math.round(duration / step); k++) {
    writeDerivative(craft, state, command, wind, slopes[0]!);
    writeDerivative(craft, shifted(slopes[0]!, step / 2), command, wind, slopes[1]!);
    writeDerivative(craft, shifted(slopes[1]!, step / 2), command, wind, slopes[2]!);
    writeDerivative(craft, shifted(slopes[2]!, step), command, wind, slopes[3]!);
    for (let i = 0; i < state.length; i++) {
      state[i]! += (step / 6) * (slopes[0]![i]! + 2 * slopes[1]![i]! + 2 * slopes[2]![i]! + slopes[3]![i]!);
    }
  }
  return state;
}

function bySecondIntegrator(
  model: SimulationModel,
  start: SimulationState,
  commands: number[],
  duration: number,
) {
  const craft = prepared(model);
  const wind = new Float64Array(3);
  const command = Float64Array.from(commands);
  const out = new Float64Array(start.length);
  const solver = new Solver(start.length);
  solver.absoluteTolerance = 1e-11;
  solver.relativeTolerance = 1e-11;
  const result = solver.solve(
    (_, y) => {
      writeDerivative(craft, Float64Array.from(y), command, wind, out);
      return [...out];
    },
    0,
    [...start],
    duration,
  );
  expect(result.outcome).toBe(0);
  return result.y;
}

/** Body and rotors together, in the world [N m s]. */
function momentum(model: SimulationModel, state: SimulationState): number[] {
  const rates = [...state.slice(at.rates, at.rates + 3)];
  const body = model.inertia.map((row) => row.reduce((sum, v, i) => sum + v * rates[i]!, 0));
  model.rotors.forEach(({ spin, rotatingInertia }, i) => {
    body[2]! += spin * rotatingInertia * state[at.rotors + i]!;
  });
  const r = new Float64Array(9);
  writeRotation(state, at.attitude, r);
  return [0, 1, 2].map((i) => r[3 * i]! * body[0]! + r[3 * i + 1]! * body[1]! + r[3 * i + 2]! * body[2]!);
}

const rate = fc.double({ min: -20, max: 20, noNaN: true });
const speed = fc.double({ min: 0, max: 3000, noNaN: true });
const angle = fc.double({ min: -1.4, max: 1.4, noNaN: true });

describe('a craft adrift', () => {
  it('keeps its angular momentum while its rotors spin up and slow down', () => {
    fc.assert(
      fc.property(
        fc.tuple(rate, rate, rate),
        fc.array(speed, { minLength: 4, maxLength: 4 }),
        angle,
        (rates, speeds, roll) => {
          const start = Float64Array.from([
            0,
            0,
            0,
            0,
            0,
            0,
            ...quaternionOf([roll, 0.3, 1]),
            ...rates,
            ...speeds,
          ]);
          const end = drift(adrift, start, [2500, 400, 1500, 3000], 5e-4, 0.1);
          const [before, after] = [momentum(adrift, start), momentum(adrift, end)];
          for (const i of [0, 1, 2]) expect(Math.abs(after[i]! - before[i]!)).toBeLessThan(1e-7);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('keeps its turning energy while its rotors stand still', () => {
    fc.assert(
      fc.property(fc.tuple(rate, rate, rate), (rates) => {
        const start = Float64Array.from([0, 0, 0, 0, 0, 0, 1, 0, 0, 0, ...rates, 0, 0, 0, 0]);
        const end = drift(adrift, start, [0, 0, 0, 0], 5e-4, 0.2);
        const energy = (s: SimulationState): number => {
          const w = [...s.slice(at.rates, at.rates + 3)];
          return (
            0.5 *
            adrift.inertia.reduce((sum, row, i) => sum + w[i]! * row.reduce((t, v, j) => t + v * w[j]!, 0), 0)
          );
        };
        expect(Math.abs(energy(end) - energy(start))).toBeLessThan(1e-7 * (1 + energy(start)));
        const length = Math.hypot(...end.slice(6, 10));
        expect(length).toBeCloseTo(1, 6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('against a second integrator', () => {
  const model: SimulationModel = {
    ...flyer({ rotor: plainRotor }),
    inertia: adrift.inertia,
    centreOfGravity: [0.004, -0.002, 0.006],
  };
  const commands = [1100, 1350, 1250, 1300];
  const start = Float64Array.from([
    0,
    0,
    -10,
    3,
    -1,
    0.5,
    ...quaternionOf([0.3, -0.2, 0.5]),
    4,
    -3,
    2,
    900,
    1200,
    1300,
    1150,
  ]);

  it('a tumbling flight comes out the same, and the error falls with the fourth power of the step', () => {
    const truth = bySecondIntegrator(model, start, commands, 0.4);
    const error = (step: number): number =>
      Math.max(
        ...[...drift(model, start, commands, step, 0.4)].map(
          (v, i) => Math.abs(v - truth[i]!) / (1 + Math.abs(truth[i]!)),
        ),
      );
    expect(error(5e-4)).toBeLessThan(1e-9);
    const ratio = error(8e-3) / error(4e-3);
    expect(ratio).toBeGreaterThan(11);
    expect(ratio).toBeLessThan(22);
  });

  it('the simulation steps the same way', () => {
    const traces = fly({
      model,
      start,
      pilot: () => ({ kind: 'thrusts', thrusts: commands.map((w) => 0.95 * 1.2e-6 * w * w) }),
      timeStep: 1e-3,
      duration: 0.4,
      sampleEvery: 400,
    });
    const truth = bySecondIntegrator(model, start, commands, 0.4);
    // The mixer reads its thrust factor off the rotor to about 1e-12, and the quaternion is kept at unit length.
    for (let i = 0; i < truth.length; i++) {
      expect(Math.abs(traces.end[i]! - truth[i]!)).toBeLessThan(1e-6 * (1 + Math.abs(truth[i]!)));
    }
  });
});

describe('against closed forms', () => {
  it('a fall against drag is v tanh(g t / v)', () => {
    const model = flyer({ rotor: noRotor });
    const start = Float64Array.from([0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    const end = drift(model, start, [0, 0, 0, 0], 1e-3, 3);
    const terminal = Math.sqrt((2 * 0.7 * 9.80665) / (1.225 * 0.02));
    expect(end[5]!).toBeCloseTo(terminal * Math.tanh((9.80665 * 3) / terminal), 8);
    expect(end[2]!).toBeCloseTo((terminal ** 2 / 9.80665) * Math.log(Math.cosh((9.80665 * 3) / terminal)), 8);
  });

  it('rotors turned with the body push back as the gyroscopic coupling says', () => {
    const model = { ...flyer({ rotor: noRotor }), gravity: 0, dragArea: [0, 0, 0] as const };
    const speeds = [1800, 1200, 1800, 1200];
    const start = Float64Array.from([0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 6, 0, 0, ...speeds]);
    const out = new Float64Array(start.length);
    writeDerivative(prepared(model), start, Float64Array.from(speeds), new Float64Array(3), out);
    const { moment } = gyroscopicCoupling(
      model.rotors.map(({ spin, rotatingInertia }, i) => ({
        spin,
        rotatingInertia,
        angularSpeed: speeds[i]!,
      })),
      [6, 0, 0],
    );
    expect(moment[1]).not.toBe(0);
    expect(out[at.rates + 1]!).toBeCloseTo(moment[1] / 0.0035, 9);
  });
});
