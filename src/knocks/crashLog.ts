import { checkLearning } from './checkPlan.ts';
import { crashCountChances, pilots } from './crashCount.ts';
import { crashChances } from './learningCurve.ts';
import type { CrashLog, KnockForecast, Learning } from './types.ts';

/** How a number in the log stands in the forecast. */
export interface Surprise {
  readonly found: number;
  readonly forecast: number;
  /** Chance of at least, and at most, what was found. */
  readonly atLeast: number;
  readonly atMost: number;
  /** Chance of something as far out on either side, 0 to 1: twice the smaller, at most 1. */
  readonly twoSided: number;
}

export interface LogAgainstForecast {
  readonly crashes: Surprise;
  /** Natural logarithm of the chance of crashing on exactly these flights. */
  readonly logLikelihood: number;
  /** This pilot's factor on the forecast's crash hazard, updated by the log: mean and 10-90 band. */
  readonly pilotFactor: { readonly mean: number; readonly p10: number; readonly p90: number };
  /** Absent where not noted in the log or the log's flights are not the forecast's. */
  readonly money?: Surprise;
  readonly broken: readonly ({ readonly id: string } & Surprise)[];
}

/**
 * Pilots differ by this gamma shape where a learning curve tells none, so that a log can teach:
 * a variance of 1/2, common practice, no source.
 */
const USUAL_SHAPE = 2;

/**
 * Holds a pilot's own crash log against the forecast: how surprising it is, and what it says about
 * this pilot. Crash counts are judged by their exact law, money and parts by the forecast's histories
 * (standard error sqrt(p (1 - p) / histories)).
 *
 * @throws RangeError for a log whose crash flights are not rising whole numbers from 1 to `flights`
 */
export function judgeCrashLog(
  learning: Learning,
  log: CrashLog,
  forecast?: KnockForecast,
): LogAgainstForecast {
  checkLearning(learning);
  checkLog(log);
  const law = crashCountChances(learning, log.flights);
  const mean = law.reduce((sum, chance, count) => sum + chance * count, 0);
  const found = log.crashedOn.length;
  const comparable = forecast && forecast.flights === log.flights ? forecast : undefined;
  const updated = updatePilots(learning, log);
  return {
    crashes: surprise(found, mean, upTo(law, found), 1 - upTo(law, found - 1)),
    logLikelihood: updated.logLikelihood,
    pilotFactor: updated.pilotFactor,
    ...(comparable && log.money !== undefined
      ? { money: among(comparable.each.money, log.money, comparable.money.mean) }
      : {}),
    broken: comparable ? judgeParts(comparable, log) : [],
  };
}

function checkLog({ flights, crashedOn }: CrashLog): void {
  if (!(Number.isInteger(flights) && flights >= 1)) {
    throw new RangeError(`flights must be a whole number of at least 1; found ${flights}`);
  }
  crashedOn.forEach((flight, i) => {
    const before = crashedOn[i - 1] ?? 0;
    if (!(Number.isInteger(flight) && flight > before && flight <= flights)) {
      throw new RangeError(
        `crashedOn must rise from 1 to ${flights} in whole numbers; found ${flight} after ${before}`,
      );
    }
  });
}

function updatePilots(learning: Learning, log: CrashLog) {
  const crashed = new Set(log.crashedOn);
  const likelihood = (factor: number) => {
    let sum = 0;
    crashChances(learning, log.flights, factor).forEach((chance, i) => {
      sum += Math.log(crashed.has(i + 1) ? chance : 1 - chance);
    });
    return sum;
  };
  const own = pilots(learning).map(({ factor, weight }) => ({ weight, log: likelihood(factor) }));
  const prior = pilots({ ...learning, pilotShape: learning.pilotShape ?? USUAL_SHAPE });
  const logs = prior.map(({ factor }) => likelihood(factor));
  const best = Math.max(...logs);
  // A forecast without crashes that crashed leaves nothing to learn from: every pilot is impossible.
  const posterior = prior.map(({ factor, weight }, i) => ({
    factor,
    weight: weight * (best > Number.NEGATIVE_INFINITY ? Math.exp((logs[i] ?? 0) - best) : 1),
  }));
  const total = posterior.reduce((sum, { weight }) => sum + weight, 0);
  const percentile = (share: number) => {
    let sum = 0;
    for (const { factor, weight } of posterior) {
      sum += weight / total;
      if (sum >= share) return factor;
    }
    return posterior[posterior.length - 1]?.factor ?? 1;
  };
  const top = Math.max(...own.map((pilot) => pilot.log));
  const average = own.reduce((sum, pilot) => sum + pilot.weight * Math.exp(pilot.log - top), 0);
  return {
    logLikelihood: top > Number.NEGATIVE_INFINITY ? top + Math.log(average) : Number.NEGATIVE_INFINITY,
    pilotFactor: {
      mean: posterior.reduce((sum, { factor, weight }) => sum + (factor * weight) / total, 0),
      p10: percentile(0.1),
      p90: percentile(0.9),
    },
  };
}

function judgeParts({ each, parts, histories }: KnockForecast, { broken = {} }: CrashLog) {
  return parts.flatMap(({ id, broken: spread }, column) => {
    const found = broken[id];
    if (found === undefined) return [];
    const counts = Float64Array.from(
      { length: histories },
      (_, i) => each.broken[i * parts.length + column] ?? 0,
    );
    return [{ id, ...among(counts, found, spread.mean) }];
  });
}

function among(values: Float64Array, found: number, forecast: number): Surprise {
  let [less, same] = [0, 0];
  for (const value of values) {
    if (value < found) less++;
    else if (value === found) same++;
  }
  return surprise(found, forecast, (less + same) / values.length, 1 - less / values.length);
}

function surprise(found: number, forecast: number, atMost: number, atLeast: number): Surprise {
  return { found, forecast, atMost, atLeast, twoSided: Math.min(1, 2 * Math.min(atMost, atLeast)) };
}

function upTo(law: Float64Array, count: number): number {
  let sum = 0;
  for (let i = 0; i <= count; i++) sum += law[i] ?? 0;
  return Math.min(1, sum);
}
