import { noSolution, type Outcome, solved } from './outcome.ts';

export interface LinearProgram {
  /** Maximise objective . x */
  readonly objective: readonly number[];
  /** Rows of the equations A x = b. */
  readonly rows: readonly (readonly number[])[];
  readonly right: readonly number[];
  /** 0 <= x <= upper; may be Infinity. */
  readonly upper: readonly number[];
}

const TINY = 1e-11;

/**
 * A small dense linear program by the two-phase simplex method with Bland's rule, which cannot cycle
 * (Bland 1977). Exact up to rounding; meant for tens of variables, scaled to about 1 by the caller: coefficients
 * under 1e-7 count as nothing.
 *
 * @returns the best x, or words when the equations have no solution inside the bounds or it has no bound
 */
export function linearProgram(program: LinearProgram): Outcome<Float64Array> {
  const { objective, rows, right, upper } = program;
  const n = objective.length;
  const bounded = upper.flatMap((u, i) => (Number.isFinite(u) ? [i] : []));
  const m = rows.length + bounded.length;
  // Columns: x, slacks of the upper bounds, right side. An artificial variable a row stands in the basis alone: once it
  // has left it never returns, so its column is not kept. Two cost rows at the bottom.
  const artificial = n + bounded.length;
  const width = artificial + 1;
  const last = artificial;
  const table = new Float64Array((m + 2) * width);
  const basis = new Int32Array(m);
  const entry = (row: number, column: number): number => table[row * width + column] as number;
  rows.forEach((row, r) => {
    const sign = (right[r] ?? 0) < 0 ? -1 : 1;
    row.forEach((value, c) => {
      table[r * width + c] = sign * value;
    });
    table[r * width + last] = sign * (right[r] ?? 0);
  });
  bounded.forEach((variable, k) => {
    const r = rows.length + k;
    table[r * width + variable] = 1;
    table[r * width + n + k] = 1;
    table[r * width + last] = upper[variable] ?? 0;
  });
  const phaseOne = m * width;
  for (let r = 0; r < m; r++) {
    basis[r] = artificial + r;
    for (let c = 0; c < width; c++) table[phaseOne + c] = entry(m, c) - entry(r, c);
  }
  const phaseTwo = (m + 1) * width;
  objective.forEach((value, c) => {
    table[phaseTwo + c] = -value;
  });

  const pivot = (r: number, c: number): void => {
    const row = r * width;
    const scale = 1 / entry(r, c);
    for (let k = 0; k < width; k++) table[row + k] = (table[row + k] as number) * scale;
    for (let i = 0; i < m + 2; i++) {
      const factor = entry(i, c);
      if (i === r || factor === 0) continue;
      const other = i * width;
      for (let k = 0; k < width; k++)
        table[other + k] = (table[other + k] as number) - factor * (table[row + k] as number);
    }
    basis[r] = c;
  };
  /** True when done, false when unbounded. */
  const improve = (costs: number): boolean => {
    for (;;) {
      let c = 0;
      while (c < artificial && (table[costs + c] as number) >= -TINY) c++;
      if (c === artificial) return true;
      let r = -1;
      let best = Number.POSITIVE_INFINITY;
      for (let i = 0; i < m; i++) {
        const value = entry(i, c);
        if (value <= TINY) continue;
        const ratio = entry(i, last) / value;
        const earlier = r >= 0 && (basis[i] as number) < (basis[r] as number);
        if (ratio < best - TINY || (ratio < best + TINY && earlier)) {
          best = Math.min(best, ratio);
          r = i;
        }
      }
      if (r < 0) return false;
      pivot(r, c);
    }
  };

  improve(phaseOne);
  if ((table[phaseOne + last] as number) < -1e-9)
    return noSolution('the equations have no solution inside the bounds');
  // An artificial left in the basis at zero would drift in phase two: pivot it out, or its row is redundant.
  for (let r = 0; r < m; r++) {
    if ((basis[r] as number) < artificial) continue;
    let c = 0;
    while (c < artificial && Math.abs(entry(r, c)) <= 1e-7) c++;
    if (c < artificial) pivot(r, c);
    else table.fill(0, r * width, (r + 1) * width);
  }
  if (!improve(phaseTwo)) return noSolution('the objective has no bound');
  const x = new Float64Array(n);
  for (let r = 0; r < m; r++) {
    const variable = basis[r] as number;
    if (variable < n) x[variable] = entry(r, last);
  }
  return solved(x);
}
