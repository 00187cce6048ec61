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
