import { crashChances } from './learningCurve.ts';
import type { Learning } from './types.ts';

/**
 * Chance of 0, 1, ... `flights` crashes, exactly: the Poisson-binomial law by adding one flight at a time
 * (Chen and Liu 1997, Statistica Sinica 7), averaged over pilots where they differ.
 */
export function crashCountChances(learning: Learning, flights: number): Float64Array {
  const result = new Float64Array(flights + 1);
  for (const { factor, weight } of pilots(learning)) {
    const law = new Float64Array(flights + 1);
    law[0] = 1;
    const chances = crashChances(learning, flights, factor);
    for (let flight = 0; flight < flights; flight++) {
      const p = chances[flight] as number;
      for (let count = flight + 1; count > 0; count--) {
        law[count] = (law[count] as number) * (1 - p) + (law[count - 1] as number) * p;
      }
      law[0] = (law[0] as number) * (1 - p);
    }
    for (let count = 0; count <= flights; count++) {
      result[count] = (result[count] as number) + weight * (law[count] as number);
    }
  }
  return result;
}

/** Crashes by the end of a flight: mean, 10th and 90th percentile. */
export interface CrashesByThen {
  readonly mean: number;
  readonly p10: number;
  readonly p90: number;
}

/** The same law after each of the flights, the first after flight 1. */
export function crashesOver(learning: Learning, flights: number): readonly CrashesByThen[] {
  const laws = Array.from({ length: flights }, (_, i) => new Float64Array(i + 2));
  for (const { factor, weight } of pilots(learning)) {
    const law = new Float64Array(flights + 1);
    law[0] = 1;
    crashChances(learning, flights, factor).forEach((p, flight) => {
      for (let count = flight + 1; count > 0; count--) {
        law[count] = (law[count] as number) * (1 - p) + (law[count - 1] as number) * p;
      }
      law[0] = (law[0] as number) * (1 - p);
      const own = laws[flight] as Float64Array;
      for (let count = 0; count < own.length; count++) {
        own[count] = (own[count] as number) + weight * (law[count] as number);
      }
    });
  }
  return laws.map((law) => ({
    mean: law.reduce((sum, chance, count) => sum + chance * count, 0),
    p10: percentile(law, 0.1),
    p90: percentile(law, 0.9),
  }));
}

/** The smallest count that so large a share of the law does not exceed. */
function percentile(law: Float64Array, share: number): number {
  let sum = 0;
  for (const [count, chance] of law.entries()) {
    sum += chance;
    if (sum >= share) return count;
  }
  return law.length - 1;
}

/**
 * The spread of pilots as factors with weights that add to 1: the gamma law with mean 1 on even
 * steps of ln(factor), where it is smooth and its sum converges fast.
 */
export function pilots({ pilotShape: shape }: Learning): { factor: number; weight: number }[] {
  if (shape === undefined) return [{ factor: 1, weight: 1 }];
  const count = 241;
  const width = 8 * Math.max(1 / Math.sqrt(shape), 1 / shape);
  const factors = Array.from({ length: count }, (_, i) => Math.exp(width * ((2 * i) / (count - 1) - 1)));
  // Density of ln(factor) up to a constant; 1 at its largest, so that no shape overflows.
  const raw = factors.map((factor) => Math.exp(shape * (Math.log(factor) - factor + 1)));
  const total = raw.reduce((sum, value) => sum + value, 0);
  return factors.map((factor, i) => ({ factor, weight: (raw[i] ?? 0) / total }));
}
