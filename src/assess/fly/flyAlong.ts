import { emptyReading, saggingBus } from '../../flight/simulation/saggingBus.ts';
import { simulate } from '../../flight/simulation/simulate.ts';
import {
  at,
  type Pilot,
  plainGains,
  type SimulationModel,
  type SimulationState,
  type Traces,
  type WindRead,
} from '../../flight/simulation/types.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { CraftInAir } from './craftInAir.ts';
import type { FlightTrace } from './types.ts';

/** One flight of the simulation, on a sagging pack. */
export interface Plan {
  readonly model: SimulationModel;
  readonly pilot: Pilot;
  /** Takes over from `pilot` at time 0, knowing how it stood then. */
  readonly onceSettled?: (settled: Readonly<SimulationState>) => Pilot;
  readonly wind?: WindRead;
  /** Flown before the trace begins, at negative times [s]. */
  readonly settling: number;
  /** [s] */
  readonly duration: number;
  /** [s] */
  readonly timeStep: number;
  /** Ends it early, looked at between slices. */
  readonly over?: (state: Readonly<SimulationState>) => boolean;
}

/** Flown in slices so that whoever waits hears of it and can leave. */
const SLICES = 50;
/** What a chart has room for. */
const SAMPLES = 600;

/** Flies a plan; yields the share that is done. The end is a trace or words. */
export function* flyAlong(
  craft: CraftInAir,
  plan: Plan,
): Generator<number, Outcome<{ readonly trace: FlightTrace; readonly end: SimulationState }>> {
  const { model, timeStep } = plan;
  const count = model.rotors.length;
  const reading = emptyReading(count, craft.agility.onBus.busVoltage);
  const supply = saggingBus(model, craft.circuit, craft.source, reading);
  const gains = { ...plainGains, largestTilt: 1 };
  const total = plan.settling + plan.duration;
  const perSlice = Math.max(1, Math.round(total / SLICES / timeStep));
  const every = Math.max(1, Math.ceil(plan.duration / timeStep / SAMPLES));
  const trace = emptyTrace(count);
  let pilot = plan.pilot;
  const piece = (from: number, steps: number, sampleEvery: number, start: SimulationState) =>
    simulate({
      model,
      gains,
      start,
      pilot: (time, state) => pilot(from + time, state),
      ...(plan.wind === undefined ? {} : { wind: windFrom(plan.wind, from) }),
      supply,
      timeStep,
      duration: steps * timeStep,
      sampleEvery,
      ...(from < 0 ? {} : { watch: () => readBus(trace, craft, reading) }),
    });
  let state: SimulationState = craft.start.slice();
  let origin: readonly number[] | undefined;
  for (let step = Math.round(-plan.settling / timeStep); step * timeStep < plan.duration - timeStep / 2; ) {
    const before = step < 0;
    if (step === 0) pilot = plan.onceSettled?.(state.slice()) ?? pilot;
    // No slice straddles the start, and each is a whole number of samples.
    const steps = before ? Math.min(perSlice, -step) : Math.ceil(perSlice / every) * every;
    const flown = piece(step * timeStep, steps, before ? steps : every, state);
    if (!flown.ok) return noSolution(`from ${(step * timeStep).toFixed(2)} s on ${flown.reason}`);
    if (!before) {
      origin ??= [0, 1, 2].map((i) => state[at.place + i] as number);
      readMotion(trace, flown.value, step * timeStep, origin);
    }
    state = flown.value.end;
    step += steps;
    yield Math.min(1, (step * timeStep + plan.settling) / total);
    if (!before && plan.over?.(state) === true) break;
  }
  return solved({ trace, end: state });
}

const windFrom =
  (wind: WindRead, from: number): WindRead =>
  (time, out) =>
    wind(from + time, out);

interface Growing {
  readonly time: number[];
  readonly place: readonly [number[], number[], number[]];
  readonly speed: number[];
  readonly roll: number[];
  readonly pitch: number[];
  readonly yaw: number[];
  readonly throttle: readonly number[][];
  readonly packVoltage: number[];
  readonly packCurrent: number[];
}

const emptyTrace = (motors: number): Growing => ({
  time: [],
  place: [[], [], []],
  speed: [],
  roll: [],
  pitch: [],
  yaw: [],
  throttle: Array.from({ length: motors }, () => []),
  packVoltage: [],
  packCurrent: [],
});

function readBus(trace: Growing, { circuit }: CraftInAir, reading: ReturnType<typeof emptyReading>): void {
  trace.packVoltage.push(reading.packVoltage);
  trace.packCurrent.push(reading.packCurrent);
  trace.throttle.forEach((of, i) => {
    const idle = circuit.branches[i]?.idleDuty ?? 0;
    of.push(Math.max(0, ((reading.duty[i] as number) - idle) / (1 - idle)));
  });
}

/** Every sample but the first, which ended the slice before. */
function readMotion(trace: Growing, flown: Traces, from: number, origin: readonly number[]): void {
  for (let k = 1; k < flown.time.length; k++) {
    const read = (of: Float64Array): number => of[k] as number;
    trace.time.push(from + read(flown.time));
    for (const i of [0, 1, 2] as const) trace.place[i].push(read(flown.place[i]) - (origin[i] ?? 0));
    trace.speed.push(Math.hypot(...flown.velocity.map(read)));
    trace.roll.push(read(flown.attitude[0]));
    trace.pitch.push(read(flown.attitude[1]));
    trace.yaw.push(read(flown.attitude[2]));
  }
}
