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
  const width = n + bounded.length + m + 1;
  const last = width - 1;
  // Columns: x, slacks of the upper bounds, one artificial a row, right side. Two cost rows at the bottom.
  const table = Array.from({ length: m + 2 }, () => new Float64Array(width));
  const basis = new Int32Array(m);
  const at = (row: number): Float64Array => table[row] as Float64Array;
  rows.forEach((row, r) => {
    const sign = (right[r] ?? 0) < 0 ? -1 : 1;
    row.forEach((value, c) => {
      at(r)[c] = sign * value;
    });
    at(r)[last] = sign * (right[r] ?? 0);
  });
  bounded.forEach((variable, k) => {
    const r = rows.length + k;
    at(r)[variable] = 1;
    at(r)[n + k] = 1;
    at(r)[last] = upper[variable] ?? 0;
  });
  const artificial = n + bounded.length;
  const phaseOne = at(m);
  for (let r = 0; r < m; r++) {
    at(r)[artificial + r] = 1;
    basis[r] = artificial + r;
    for (let c = 0; c < artificial; c++) phaseOne[c] = (phaseOne[c] as number) - (at(r)[c] as number);
    phaseOne[last] = (phaseOne[last] as number) - (at(r)[last] as number);
  }
  const phaseTwo = at(m + 1);
  objective.forEach((value, c) => {
    phaseTwo[c] = -value;
  });

  const pivot = (r: number, c: number): void => {
    const row = at(r);
    const scale = 1 / (row[c] as number);
    for (let k = 0; k < width; k++) row[k] = (row[k] as number) * scale;
    for (let i = 0; i < m + 2; i++) {
      const other = at(i);
      const factor = other[c] as number;
      if (i === r || factor === 0) continue;
      for (let k = 0; k < width; k++) other[k] = (other[k] as number) - factor * (row[k] as number);
    }
    basis[r] = c;
  };
  /** True when done, false when unbounded. */
  const improve = (costs: Float64Array): boolean => {
    for (;;) {
      let c = 0;
      while (c < artificial && (costs[c] as number) >= -TINY) c++;
      if (c === artificial) return true;
      let r = -1;
      let best = Number.POSITIVE_INFINITY;
      for (let i = 0; i < m; i++) {
        const value = at(i)[c] as number;
        if (value <= TINY) continue;
        const ratio = (at(i)[last] as number) / value;
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
  if ((phaseOne[last] as number) < -1e-9)
    return noSolution('the equations have no solution inside the bounds');
  // An artificial left in the basis at zero would drift in phase two: pivot it out, or its row is redundant.
  for (let r = 0; r < m; r++) {
    if ((basis[r] as number) < artificial) continue;
    let c = 0;
    while (c < artificial && Math.abs(at(r)[c] as number) <= 1e-7) c++;
    if (c < artificial) pivot(r, c);
    else at(r).fill(0);
  }
  if (!improve(phaseTwo)) return noSolution('the objective has no bound');
  const x = new Float64Array(n);
  for (let r = 0; r < m; r++) {
    const variable = basis[r] as number;
    if (variable < n) x[variable] = at(r)[last] as number;
  }
  return solved(x);
}
