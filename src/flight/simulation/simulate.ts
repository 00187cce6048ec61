import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import { anglesOf, quaternionOf } from './attitude.ts';
import { writeCommands } from './controller.ts';
import { writeDerivative } from './derivative.ts';
import { type Mixer, makeMixer } from './mixer.ts';
import { type PreparedCraft, prepareCraft } from './prepare.ts';
import type { Supply } from './saggingBus.ts';
import {
  at,
  type FlightGains,
  type Pilot,
  type SimulationModel,
  type SimulationState,
  type Traces,
  type WindRead,
} from './types.ts';

export interface SimulationRequest {
  readonly model: SimulationModel;
  readonly gains: FlightGains;
  /** Absent: level hover at the world's origin in still air, rotors at hover speed. */
  readonly start?: SimulationState;
  readonly pilot: Pilot;
  /** Still air when absent. */
  readonly wind?: WindRead;
  /** A bus of the drives' own voltages when absent. */
  readonly supply?: Supply;
  /** Told of every sample but the first, once `supply` has done its part of the step that led there. */
  readonly watch?: (sample: number) => void;
  /** Of integrator and controller [s], 1e-5 to 0.01. */
  readonly timeStep: number;
  /** [s] */
  readonly duration: number;
  /** Steps from one sample to the next, a whole number of 1 or more. */
  readonly sampleEvery: number;
}

/**
 * Flies a craft for a while: classical Runge-Kutta of fourth order at a fixed step, commands held over the
 * step, the quaternion brought back to unit length after each.
 *
 * @returns traces, or words when the craft cannot be mixed or its motion runs away
 */
export function simulate(request: SimulationRequest): Outcome<Traces> {
  const { model, gains, pilot, timeStep, duration, sampleEvery } = request;
  if (!(timeStep >= 1e-5 && timeStep <= 0.01)) {
    throw new RangeError(`timeStep must be between 1e-5 and 0.01 s; found ${timeStep} s`);
  }
  if (!(Number.isInteger(sampleEvery) && sampleEvery >= 1)) {
    throw new RangeError(`sampleEvery must be a whole number of 1 or more; found ${sampleEvery}`);
  }
  const craft = prepareCraft(model);
  if (!craft.ok) return craft;
  const mixer = makeMixer(craft.value);
  if (!mixer.ok) return mixer;
  const state = request.start?.slice() ?? hoverState(mixer.value);
  const length = at.rotors + model.rotors.length;
  if (state.length !== length) {
    throw new RangeError(`start must hold ${length} numbers; found ${state.length}`);
  }
  const steps = Math.round(duration / timeStep);
  const samples = Math.floor(steps / sampleEvery) + 1;
  const traces = emptyTraces(samples, model.rotors.length, state);
  const commands = new Float64Array(model.rotors.length);
  const work = workFor(length, request.wind ?? stillAir);
  record(traces, 0, 0, state);
  for (let k = 0; k < steps; k++) {
    const time = k * timeStep;
    writeCommands(model, mixer.value, gains, pilot(time, state), state, commands);
    request.supply?.(state, commands);
    rungeKutta(craft.value, state, commands, time, timeStep, work);
    if ((k + 1) % sampleEvery !== 0) continue;
    if (!state.every(Number.isFinite)) {
      return noSolution(
        `the motion runs away after ${time.toFixed(3)} s, or a rotor has no answer there: a smaller step or softer gains`,
      );
    }
    record(traces, (k + 1) / sampleEvery, (k + 1) * timeStep, state);
    request.watch?.((k + 1) / sampleEvery);
  }
  return solved(traces);
}

/** Level, at rest, at a place (the origin when absent), rotors at the mixer's hover speeds. */
export function hoverState(
  mixer: Mixer,
  place: Vector3 = [0, 0, 0],
  attitude: Vector3 = [0, 0, 0],
): SimulationState {
  return Float64Array.from([...place, 0, 0, 0, ...quaternionOf(attitude), 0, 0, 0, ...mixer.hoverSpeed]);
}

const stillAir: WindRead = (_, out) => {
  out.fill(0);
};

interface Work {
  readonly wind: WindRead;
  readonly windNow: Float64Array;
  readonly slopes: readonly [SimulationState, SimulationState, SimulationState, SimulationState];
  readonly trial: SimulationState;
}

function workFor(length: number, wind: WindRead): Work {
  const fresh = (): SimulationState => new Float64Array(length);
  return {
    wind,
    windNow: new Float64Array(3),
    slopes: [fresh(), fresh(), fresh(), fresh()],
    trial: fresh(),
  };
}

function rungeKutta(
  craft: PreparedCraft,
  state: SimulationState,
  commands: Float64Array,
  time: number,
  step: number,
  work: Work,
): void {
  const { wind, windNow, slopes, trial } = work;
  const [k1, k2, k3, k4] = slopes;
  const tryAlong = (slope: SimulationState, by: number): void => {
    for (let i = 0; i < trial.length; i++) trial[i] = (state[i] as number) + by * (slope[i] as number);
  };
  wind(time, windNow);
  writeDerivative(craft, state, commands, windNow, k1);
  wind(time + step / 2, windNow);
  tryAlong(k1, step / 2);
  writeDerivative(craft, trial, commands, windNow, k2);
  tryAlong(k2, step / 2);
  writeDerivative(craft, trial, commands, windNow, k3);
  wind(time + step, windNow);
  tryAlong(k3, step);
  writeDerivative(craft, trial, commands, windNow, k4);
  for (let i = 0; i < state.length; i++) {
    const inner = (k2[i] as number) + (k3[i] as number);
    state[i] = (state[i] as number) + (step / 6) * ((k1[i] as number) + 2 * inner + (k4[i] as number));
  }
  let square = 0;
  for (let i = 0; i < 4; i++) square += (state[at.attitude + i] as number) ** 2;
  for (let i = 0; i < 4; i++) {
    state[at.attitude + i] = (state[at.attitude + i] as number) / Math.sqrt(square);
  }
}

function emptyTraces(samples: number, rotors: number, end: SimulationState): Traces {
  const fresh = (): Float64Array => new Float64Array(samples);
  const three = () => [fresh(), fresh(), fresh()] as const;
  return {
    time: fresh(),
    place: three(),
    velocity: three(),
    attitude: three(),
    rates: three(),
    rotorSpeed: Array.from({ length: rotors }, fresh),
    end,
  };
}

function record(traces: Traces, sample: number, time: number, state: SimulationState): void {
  traces.time[sample] = time;
  const angles = anglesOf(state, at.attitude);
  for (const i of [0, 1, 2] as const) {
    traces.place[i][sample] = state[at.place + i] as number;
    traces.velocity[i][sample] = state[at.velocity + i] as number;
    traces.attitude[i][sample] = angles[i];
    traces.rates[i][sample] = state[at.rates + i] as number;
  }
  traces.rotorSpeed.forEach((speeds, i) => {
    speeds[sample] = state[at.rotors + i] as number;
  });
}
