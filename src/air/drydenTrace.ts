import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { standardNormal } from '../numerics/standardNormal.ts';
import { type GustComponent, passingTime, type Turbulence } from './dryden.ts';

/** Gust speeds [m/s] at even steps of time. */
export type GustTrace = Readonly<Record<GustComponent, Float64Array>>;

export interface TraceRequest {
  readonly turbulence: Turbulence;
  /** Speed through the air [m/s], > 0. */
  readonly airspeed: number;
  /** [s], > 0 */
  readonly timeStep: number;
  /** Number of samples, >= 1. */
  readonly count: number;
}

/**
 * A seeded stretch of Dryden turbulence. The forming filters of `drydenSpectrum` are sampled exactly
 * (matrix exponential and the covariance that goes with it, as for any Gauss-Markov process), started
 * in their stationary state: variance and correlation are right at every time step, with no run-in.
 *
 * @param random advanced in place; same state, same trace
 * @throws RangeError for a time step or count out of range
 */
export function drydenTrace(request: TraceRequest, random: RandomGenerator): GustTrace {
  const { timeStep, count } = request;
  if (!(timeStep > 0)) throw new RangeError(`timeStep must be over 0 s; found ${timeStep} s`);
  if (!(Number.isInteger(count) && count >= 1)) {
    throw new RangeError(`count must be a whole number of 1 or more; found ${count}`);
  }
  const steps = (component: GustComponent) =>
    timeStep / passingTime(request.turbulence, component, request.airspeed);
  const { intensity } = request.turbulence;
  return {
    longitudinal: firstOrder(intensity.longitudinal, steps('longitudinal'), count, random),
    lateral: secondOrder(intensity.lateral, steps('lateral'), count, random),
    vertical: secondOrder(intensity.vertical, steps('vertical'), count, random),
  };
}

/** 1 / (1 + T s) driven by white noise; `h` is the time step over T. */
function firstOrder(sigma: number, h: number, count: number, random: RandomGenerator): Float64Array {
  const decay = Math.exp(-h);
  const noise = sigma * Math.sqrt(-Math.expm1(-2 * h));
  const trace = new Float64Array(count);
  let x = sigma * standardNormal(random);
  for (let k = 0; k < count; k++) {
    trace[k] = x;
    x = decay * x + noise * standardNormal(random);
  }
  return trace;
}

/**
 * (1 + sqrt(3) T s) / (1 + T s)2 as two equal lags in line: T x1' = w - x1, T x2' = x1 - x2,
 * y = sqrt(3) x1 + (1 - sqrt(3)) x2. In the stationary state var x1 = sigma2/2 and
 * var x2 = cov(x1, x2) = sigma2/4, from which the noise of a step, P - F P F', follows.
 */
function secondOrder(sigma: number, h: number, count: number, random: RandomGenerator): Float64Array {
  const decay = Math.exp(-h);
  const d2 = decay * decay;
  const p = 0.5 * sigma * sigma;
  const q11 = p * (1 - d2);
  const q12 = p * (0.5 - d2 * (h + 0.5));
  const q22 = p * (0.5 - d2 * (h * h + h + 0.5));
  const n11 = Math.sqrt(q11);
  const n21 = q11 > 0 ? q12 / n11 : 0;
  const n22 = Math.sqrt(Math.max(0, q22 - n21 * n21));
  const root3 = Math.sqrt(3);
  const trace = new Float64Array(count);
  let x1 = Math.sqrt(p) * standardNormal(random);
  let x2 = 0.5 * x1 + 0.5 * Math.sqrt(p) * standardNormal(random);
  for (let k = 0; k < count; k++) {
    trace[k] = root3 * x1 + (1 - root3) * x2;
    const [first, second] = [standardNormal(random), standardNormal(random)];
    x2 = decay * (h * x1 + x2) + n21 * first + n22 * second;
    x1 = decay * x1 + n11 * first;
  }
  return trace;
}
