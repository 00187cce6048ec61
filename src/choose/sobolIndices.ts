import { latinHypercube } from './latinHypercube.ts';

/** How much of a result's variance one factor makes. */
export interface SobolIndex {
  /** By itself: S, 0 to 1 but for sampling noise. */
  readonly first: number;
  /** With everything it does together with others: S_T. */
  readonly total: number;
  /** One standard error of the total, from the scatter of the sample. */
  readonly totalError: number;
}

/**
 * Variance-based sensitivities. Two independent samples A and B; for every factor a third one, A with
 * that factor's columns from B: first order by Saltelli et al. 2010 (Comput. Phys. Commun. 181,
 * table 2 b), total by Jansen 1999 (table 2 f). Samples are Latin hypercubes.
 * A factor may own several columns: inputs that lean on each other are varied together.
 *
 * @param evaluate result for one point of the unit cube; NaN where it has none, which leaves that row out
 * @param factors columns of each factor, every column of the cube in exactly one
 * @param count rows; (factors + 2) x count evaluations
 * @param seed whole number
 */
export function sobolIndices(
  evaluate: (point: Float64Array) => number,
  factors: readonly (readonly number[])[],
  count: number,
  seed: number,
): readonly SobolIndex[] {
  const columns = factors.reduce((sum, own) => sum + own.length, 0);
  const both = latinHypercube(count, 2 * columns, seed);
  const point = new Float64Array(columns);
  const fill = (row: number, from: (column: number) => boolean): Float64Array => {
    for (let column = 0; column < columns; column++) {
      point[column] = both[row * 2 * columns + column + (from(column) ? columns : 0)] as number;
    }
    return point;
  };
  const a = Float64Array.from({ length: count }, (_, row) => evaluate(fill(row, () => false)));
  const b = Float64Array.from({ length: count }, (_, row) => evaluate(fill(row, () => true)));
  const { mean, variance } = spreadOf(a, b);
  return factors.map((own): SobolIndex => {
    let first = 0;
    let total = 0;
    let square = 0;
    let rows = 0;
    for (let row = 0; row < count; row++) {
      const [one, other] = [a[row] as number, b[row] as number];
      const mixed = evaluate(fill(row, (column) => own.includes(column)));
      if (!Number.isFinite(one + other + mixed)) continue;
      rows++;
      // Centred on the mean: the same expectation with far less noise where the mean is large.
      first += (other - mean) * (mixed - one);
      const half = 0.5 * (one - mixed) ** 2;
      total += half;
      square += half * half;
    }
    if (rows === 0 || variance === 0) return { first: 0, total: 0, totalError: 0 };
    const expected = total / rows;
    return {
      first: first / rows / variance,
      total: expected / variance,
      totalError: Math.sqrt(Math.max(square / rows - expected * expected, 0) / rows) / variance,
    };
  });
}

function spreadOf(a: Float64Array, b: Float64Array): { readonly mean: number; readonly variance: number } {
  const known = [...a, ...b].filter(Number.isFinite);
  const mean = known.reduce((sum, value) => sum + value, 0) / Math.max(known.length, 1);
  const square = known.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, variance: square / Math.max(known.length, 1) };
}
