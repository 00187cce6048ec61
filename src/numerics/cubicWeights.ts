/**
 * Weights of Catmull and Rom's cubic through evenly spaced knots (1974), and of its slope a knot,
 * for table look-ups that allocate nothing. Beyond the ends the table is continued straight.
 *
 * @param position where to read, in knots, 0 to count - 1
 * @param count knots of the table, >= 4
 * @param weights filled from `at`: four weights of the value, then four of the slope
 * @returns the first of the four knots the weights belong to
 */
export function cubicWeights(position: number, count: number, weights: Float64Array, at: number): number {
  const k = Math.min(Math.max(Math.floor(position), 0), count - 2);
  const t = position - k;
  const a = t * (t * (1 - 0.5 * t) - 0.5);
  const b = 1 + t * t * (1.5 * t - 2.5);
  const c = t * (0.5 + t * (2 - 1.5 * t));
  const d = 0.5 * t * t * (t - 1);
  const da = t * (2 - 1.5 * t) - 0.5;
  const db = t * (4.5 * t - 5);
  const dc = 0.5 + t * (4 - 4.5 * t);
  const dd = t * (1.5 * t - 1);
  if (k === 0) {
    set(weights, at, b + 2 * a, c - a, d, 0);
    set(weights, at + 4, db + 2 * da, dc - da, dd, 0);
    return 0;
  }
  if (k === count - 2) {
    set(weights, at, 0, a, b - d, c + 2 * d);
    set(weights, at + 4, 0, da, db - dd, dc + 2 * dd);
    return count - 4;
  }
  set(weights, at, a, b, c, d);
  set(weights, at + 4, da, db, dc, dd);
  return k - 1;
}

function set(weights: Float64Array, at: number, a: number, b: number, c: number, d: number): void {
  weights[at] = a;
  weights[at + 1] = b;
  weights[at + 2] = c;
  weights[at + 3] = d;
}

/**
 * Value or slope of a table by weights from `cubicWeights`.
 *
 * @param table row by row
 * @param first index of the first of the 4 x 4 knots
 * @param across index in `weights` of the four weights along a row
 * @param down index in `weights` of the four weights over rows
 */
export function weighted(
  table: Float64Array,
  first: number,
  columns: number,
  weights: Float64Array,
  across: number,
  down: number,
): number {
  const a = weights[across] as number;
  const b = weights[across + 1] as number;
  const c = weights[across + 2] as number;
  const d = weights[across + 3] as number;
  let sum = 0;
  for (let row = 0; row < 4; row++) {
    const k = first + row * columns;
    sum +=
      (weights[down + row] as number) *
      (a * (table[k] as number) +
        b * (table[k + 1] as number) +
        c * (table[k + 2] as number) +
        d * (table[k + 3] as number));
  }
  return sum;
}
