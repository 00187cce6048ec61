import type { Spread } from './types.ts';

/** Mean and percentiles of a sample, percentiles as its order statistics at rank p (n - 1). */
export function spreadOf(values: Float64Array): Spread {
  const sorted = values.slice().sort();
  let sum = 0;
  for (const value of values) sum += value;
  return { mean: sum / values.length, ...percentiles((rank) => sorted[rank] as number, values.length) };
}

/** The same for counts, by counting instead of sorting. */
export function spreadOfCounts(counts: Uint16Array): Spread {
  let [largest, sum] = [0, 0];
  for (const count of counts) {
    largest = Math.max(largest, count);
    sum += count;
  }
  const upTo = new Uint32Array(largest + 1);
  for (const count of counts) upTo[count] = (upTo[count] as number) + 1;
  for (let i = 1; i <= largest; i++) upTo[i] = (upTo[i] as number) + (upTo[i - 1] as number);
  const ranked = (rank: number) => upTo.findIndex((number) => number > rank);
  return { mean: sum / counts.length, ...percentiles(ranked, counts.length) };
}

function percentiles(ranked: (rank: number) => number, count: number) {
  const at = (share: number) => ranked(Math.round(share * (count - 1)));
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}
