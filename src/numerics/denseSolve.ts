/**
 * Solves A x = b for one or more right sides by Gaussian elimination with partial pivoting
 * (Golub and Van Loan, Matrix Computations, 3.4). For small dense systems; banded: `factorBanded`.
 *
 * @param a size x size, row-major, left alone
 * @param b size x columns, row-major, left alone
 * @returns x like b, or undefined when A is singular to working precision
 */
export function denseSolve(a: Float64Array, b: Float64Array, size: number): Float64Array | undefined {
  const m = Float64Array.from(a);
  const x = Float64Array.from(b);
  const columns = b.length / size;
  const largest = m.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  for (let p = 0; p < size; p++) {
    let best = p;
    for (let i = p + 1; i < size; i++) {
      if (Math.abs(m[i * size + p] as number) > Math.abs(m[best * size + p] as number)) best = i;
    }
    const pivot = m[best * size + p] as number;
    if (!(Math.abs(pivot) > Number.EPSILON ** 2 * largest)) return undefined;
    if (best !== p) {
      swapRows(m, p, best, size);
      swapRows(x, p, best, columns);
    }
    for (let i = p + 1; i < size; i++) {
      const factor = (m[i * size + p] as number) / pivot;
      if (factor === 0) continue;
      for (let j = p; j < size; j++)
        m[i * size + j] = (m[i * size + j] as number) - factor * (m[p * size + j] as number);
      for (let j = 0; j < columns; j++) {
        x[i * columns + j] = (x[i * columns + j] as number) - factor * (x[p * columns + j] as number);
      }
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let j = 0; j < columns; j++) {
      let sum = x[i * columns + j] as number;
      for (let k = i + 1; k < size; k++) sum -= (m[i * size + k] as number) * (x[k * columns + j] as number);
      x[i * columns + j] = sum / (m[i * size + i] as number);
    }
  }
  return x;
}

function swapRows(m: Float64Array, i: number, j: number, width: number): void {
  for (let k = 0; k < width; k++) {
    const kept = m[i * width + k] as number;
    m[i * width + k] = m[j * width + k] as number;
    m[j * width + k] = kept;
  }
}
