import type { Spread } from './types.ts';

/** Mean and percentiles of a sample, percentiles as its order statistics at rank p (n - 1). */
export function spreadOf(values: Float64Array): Spread {
  return spreadInPlace(values.slice());
}

/** The same, which puts the list in another order. */
export function spreadInPlace(values: Float64Array): Spread {
  let sum = 0;
  for (const value of values) sum += value;
  let from = 0;
  const inTurn = (rank: number) => {
    const value = ranked(values, rank, from);
    from = rank;
    return value;
  };
  return { mean: sum / values.length, ...percentiles(inTurn, values.length) };
}

/**
 * The value of a rank, by parting the list in place until it stands there (Hoare 1961, Comm. ACM 4(7)).
 *
 * @param from a lower rank that stands in its place already, or 0
 */
function ranked(values: Float64Array, rank: number, from: number): number {
  let [low, high] = [from, values.length - 1];
  while (low < high) {
    const pivot = values[rank] as number;
    let [i, j] = [low, high];
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i <= j) {
        const swapped = values[i] as number;
        values[i] = values[j] as number;
        values[j] = swapped;
        i++;
        j--;
      }
    }
    if (j < rank) low = i;
    if (rank < i) high = j;
  }
  return values[rank] as number;
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
  const countAt = (rank: number) => upTo.findIndex((number) => number > rank);
  return { mean: sum / counts.length, ...percentiles(countAt, counts.length) };
}

function percentiles(ranked: (rank: number) => number, count: number) {
  const at = (share: number) => ranked(Math.round(share * (count - 1)));
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}
