import { denseSolve } from './denseSolve.ts';

/** Order of the Pade approximant: with the norm scaled to a half it errs by rounding only. */
const ORDER = 6;

/**
 * exp(A) of a small dense matrix by scaling and squaring of its diagonal Pade approximant (Golub and Van Loan, Matrix
 * Computations, algorithm 11.3.1; from memory). Steps a linear circuit exactly, however stiff.
 *
 * @param a size x size, row-major, finite, left alone
 * @returns like a
 * @throws RangeError for an entry that is not finite
 */
export function matrixExponential(a: Float64Array, size: number): Float64Array {
  const norm = rowNorm(a, size);
  if (!Number.isFinite(norm)) throw new RangeError(`a must be finite; its largest row adds to ${norm}`);
  const squarings = norm > 0.5 ? Math.ceil(Math.log2(norm / 0.5)) : 0;
  const scaled = a.map((value) => value / 2 ** squarings);
  const above = identity(size);
  const below = identity(size);
  let power = identity(size);
  let factor = 1;
  for (let k = 1; k <= ORDER; k++) {
    factor *= (ORDER - k + 1) / (k * (2 * ORDER - k + 1));
    power = product(scaled, power, size);
    const sign = k % 2 === 0 ? 1 : -1;
    for (const [at, value] of power.entries()) {
      above[at] = (above[at] as number) + factor * value;
      below[at] = (below[at] as number) + sign * factor * value;
    }
  }
  let result = denseSolve(below, above, size) as Float64Array; // not singular at a norm of a half
  for (let n = 0; n < squarings; n++) result = product(result, result, size);
  return result;
}

/** A B of square matrices, row-major. */
export function product(a: Float64Array, b: Float64Array, size: number): Float64Array {
  const c = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < size; k++) {
      const left = a[i * size + k] as number;
      for (let j = 0; j < size; j++) {
        c[i * size + j] = (c[i * size + j] as number) + left * (b[k * size + j] as number);
      }
    }
  }
  return c;
}

export function identity(size: number): Float64Array {
  const one = new Float64Array(size * size);
  for (let i = 0; i < size; i++) one[i * size + i] = 1;
  return one;
}

function rowNorm(a: Float64Array, size: number): number {
  let most = 0;
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let j = 0; j < size; j++) sum += Math.abs(a[i * size + j] as number);
    if (!(sum <= most)) most = sum;
  }
  return most;
}
