import { type Levers, neutralLevers } from '../../flight/types.ts';
import { type Outcome, solved } from '../../numerics/outcome.ts';
import { INERTIA_SPREAD, TURNING_SPREAD } from '../parts/reserve/inertiaDoubt.ts';
import { IN_PLANE, speedStates } from '../parts/speedStates.ts';
import type { Flight, PartContext } from '../parts/types.ts';
import { bandOf } from '../propagate.ts';
import { type AirState, asReckoned } from './craftInAir.ts';
import { fly } from './fly.ts';
import type { Flown, FlownFigure, FlyRequest } from './types.ts';

/** Flights beside the most likely one: an orthogonal table of two levels has as many rows. */
export const FLIGHTS = 16;
/** Their steps of time over the most likely flight's: only how far they lie from it matters. */
const COARSER = 2;

/**
 * One scene flown by `fly`, its figures with bands: flown again at `FLIGHTS` states in which every unsure input lies a standard
 * deviation up or down, half of them each way, by a table of two levels (Sylvester 1867; Plackett and Burman 1946). The mean square
 * of how far a figure then lies from the most likely one is its variance (JCGM 100:2008, 5.1.2), effects of two inputs at once
 * apart. In rough air every flight has gusts of its own, so that the scatter of a minute is in the band. The wind itself is taken
 * as told.
 *
 * A figure keeps no band where a flight had no answer.
 */
export function* flyWithBands(
  context: Pick<PartContext, 'craft'> & { readonly flight: Flight },
  request: FlyRequest,
): Generator<number, Outcome<Flown>> {
  const share = 1 / (FLIGHTS + 1);
  const likely = yield* part(fly(context, request), 0, share);
  if (!likely.ok) return likely;
  const others: (readonly FlownFigure[])[] = [];
  for (const [k, state] of airStates(context).entries()) {
    const seed = (request.seed + k + 1) % 2 ** 32;
    const found = yield* part(fly(context, { ...request, seed }, state, COARSER), (k + 1) * share, share);
    others.push(found.ok ? found.value.figures : []);
  }
  const figures = likely.value.figures.map((figure): FlownFigure => {
    const values = others.flatMap((flown) => flown.find(({ id }) => id === figure.id)?.simulated ?? []);
    const { simulated } = figure;
    if (values.length < FLIGHTS || !values.every(Number.isFinite)) return figure;
    const square = values.reduce((sum, value) => sum + (value - simulated) ** 2, 0) / values.length;
    const [low, high] = bandOf(simulated, Math.sqrt(square));
    const most = figure.quantity === 'share' ? Math.max(1, simulated) : Number.POSITIVE_INFINITY;
    return { ...figure, band: [simulated >= 0 ? Math.max(0, low) : low, Math.min(most, high)] };
  });
  return solved({ ...likely.value, figures });
}

/** A part of the whole work, its shares as the whole's. */
function* part<Found>(work: Generator<number, Found>, from: number, share: number): Generator<number, Found> {
  let step = work.next();
  while (step.done !== true) {
    yield from + share * step.value;
    step = work.next();
  }
  return step.value;
}

/** All that moves what the simulation tells by more than a hundredth of its band. */
const MOVES: readonly (keyof Levers)[] = [
  'thrustScale',
  'torqueScale',
  'speedConstantScale',
  'windingResistanceScale',
  'runningResistanceScale',
  'packResistanceScale',
  'dragScale',
  'downloadScale',
  IN_PLANE.lever,
  'guardTurningScale',
];

/** Every unsure input a step up or down at once, one state a row of the table. */
function airStates({
  craft,
  flight,
}: Pick<PartContext, 'craft'> & { readonly flight: Flight }): readonly AirState[] {
  const inputs = speedStates(craft, flight).map(({ raised }) => raised);
  // Masses add, so their doubts are one.
  const massStep = Math.hypot(...inputs.map(({ levers }) => levers.massScale - 1));
  const steps: readonly AirState[] = [
    ...inputs
      .filter(({ levers, balanceShift }) => balanceShift !== 0 || MOVES.some((name) => levers[name] !== 1))
      .map(({ levers, balanceShift }) => ({ ...asReckoned, levers, balanceShift })),
    { ...asReckoned, levers: { ...neutralLevers, massScale: 1 + massStep } },
    { ...asReckoned, inertia: 1 + INERTIA_SPREAD },
    { ...asReckoned, turning: 1 + TURNING_SPREAD },
  ];
  return Array.from({ length: FLIGHTS }, (_, row) =>
    steps.reduce((state, step, i) => moved(state, step, signOf(row, i)), asReckoned),
  );
}

/** Of an input in a row: Sylvester's columns but the first, which has no lows; room for one less than there are rows. */
function signOf(row: number, input: number): number {
  const ones = (row & (1 + (input % (FLIGHTS - 1)))).toString(2).replaceAll('0', '').length;
  return ones % 2 === 0 ? 1 : -1;
}

/** A state with another's steps on top, up or down. */
function moved(state: AirState, step: AirState, sign: number): AirState {
  const levers = { ...state.levers } as { -readonly [Name in keyof Levers]: number };
  for (const name of Object.keys(levers) as (keyof Levers)[]) {
    levers[name] = Math.max(LEAST, levers[name] + sign * (step.levers[name] - 1));
  }
  return {
    levers,
    balanceShift: state.balanceShift + sign * step.balanceShift,
    inertia: state.inertia + sign * (step.inertia - 1),
    turning: state.turning + sign * (step.turning - 1),
  };
}

/** Of what is there: no doubt takes it away. */
const LEAST = 0.2;
