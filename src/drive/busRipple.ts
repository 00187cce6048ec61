import { denseSolve } from '../numerics/denseSolve.ts';
import { identity, product } from '../numerics/matrixExponential.ts';
import { advance, type BusModel, type BusStep, busStep, dot, riseOf } from './busCircuit.ts';

/** A period of the pulses in so many equal pieces, a power of two; duties are looked at in the same steps. */
const PIECES = 64;

/** How the bus swings about its mean while current is chopped, for one ampere in the pulses, by duty in even steps from 0 to 1. */
export interface BusRipple {
  /** Of the highest over the mean while the pulses are drawn [ohm]. */
  readonly over: Float64Array;
  /** Of the lowest under it: what the bus swings over its mean while pulses are put back [ohm]. */
  readonly under: Float64Array;
}

/**
 * The settled swing of a bus under square pulses of current, at every duty. One pulse a sixty-fourth of a period long is brought
 * to its periodic answer exactly, x = (1 - Phi^64)^-1 Phi^63 b, and wider ones are sums of it. The current in the pulses is
 * taken as smooth: the winding's inductance holds it.
 *
 * @param frequency of the pulses [Hz], > 0
 */
export function busRipple(model: BusModel, frequency: number): BusRipple {
  if (!(frequency > 0)) throw new RangeError(`frequency must be above 0 Hz; found ${frequency} Hz`);
  const stepping = busStep(model, 1 / (frequency * PIECES));
  const answer = answerToOne(model, stepping);
  const resistance = -riseOf(model, model.atRest, 1);
  const over = new Float64Array(PIECES + 1);
  const under = new Float64Array(PIECES + 1);
  const sum = new Float64Array(PIECES);
  for (let k = 1; k < PIECES; k++) {
    let [most, least] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let m = 0; m < PIECES; m++) {
      const here = (sum[m] as number) + (answer[(m - k + 1 + PIECES) % PIECES] as number);
      sum[m] = here;
      // The draw runs from edge 0 to edge k; at an edge both sides are looked at.
      if (m === 0 || m >= k) most = Math.max(most, here);
      if (m <= k) least = Math.min(least, here - model.stiffness);
    }
    const mean = (-resistance * k) / PIECES;
    over[k] = Math.max(0, most - mean);
    under[k] = Math.max(0, mean - least);
  }
  return { over, under };
}

/** Of a table of `BusRipple`, straight between its steps [ohm]. */
export function rippleAt(table: Float64Array, duty: number): number {
  const place = Math.min(Math.max(duty, 0), 1) * PIECES;
  const index = Math.min(Math.floor(place), PIECES - 1);
  const [below, above] = [table[index] as number, table[index + 1] as number];
  return below + (place - index) * (above - below);
}

/** From peak to peak at the duty where that is largest [ohm]. */
export function widestRipple({ over, under }: BusRipple): { readonly duty: number; readonly swing: number } {
  let at = 0;
  const swing = (k: number) => (over[k] as number) + (under[k] as number);
  for (let k = 1; k < PIECES; k++) if (swing(k) > swing(at)) at = k;
  return { duty: at / PIECES, swing: swing(at) };
}

/** c x at the edges of the pieces while 1 A is drawn in the first of them, settled. */
function answerToOne(model: BusModel, stepping: BusStep): Float64Array {
  const { size } = model;
  let period = stepping.phi;
  for (let length = 1; length < PIECES; length *= 2) period = product(period, period, size);
  const left = identity(size).map((value, at) => value - (period[at] as number));
  let state = Float64Array.from(stepping.at);
  let next = new Float64Array(size);
  const step = (draw: number) => {
    advance(stepping, state, draw, draw, next);
    [state, next] = [next, state];
  };
  for (let m = 1; m < PIECES; m++) step(0);
  // What is without any loss never settles, and its swing is without bound.
  const settled = denseSolve(left, state, size);
  if (settled === undefined) return new Float64Array(PIECES).fill(Number.POSITIVE_INFINITY);
  state = Float64Array.from(settled);
  const answer = new Float64Array(PIECES);
  for (let m = 0; m < PIECES; m++) {
    answer[m] = dot(model.reads, state);
    step(m === 0 ? 1 : 0);
  }
  return answer;
}
