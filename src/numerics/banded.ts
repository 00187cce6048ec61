/**
 * A symmetric band matrix by its lower half: entry (i, j), j <= i, i - j <= width, at
 * `i * (width + 1) + (j - i + width)`.
 */
export interface Banded {
  /** Rows. */
  readonly size: number;
  /** Half bandwidth: diagonals below the main one. */
  readonly width: number;
  /** size x (width + 1) */
  readonly values: Float64Array;
}

export const banded = (size: number, width: number): Banded => ({
  size,
  width,
  values: new Float64Array(size * (width + 1)),
});

/** Adds to entry (i, j) and, being symmetric, (j, i); call once a pair, outside the band is an error. */
export function addBanded(matrix: Banded, i: number, j: number, value: number): void {
  const [row, column] = i >= j ? [i, j] : [j, i];
  if (row - column > matrix.width) throw new RangeError(`entry ${i}, ${j} lies outside the band`);
  const at = row * (matrix.width + 1) + column - row + matrix.width;
  matrix.values[at] = (matrix.values[at] as number) + value;
}

/** y = A x, written into `out`, which must not be `x`. */
export function multiplyBanded(matrix: Banded, x: Float64Array, out: Float64Array): void {
  const { size, width, values } = matrix;
  out.fill(0);
  for (let i = 0; i < size; i++) {
    const base = i * (width + 1) + width - i;
    const xi = x[i] as number;
    let sum = (values[base + i] as number) * xi;
    for (let j = Math.max(0, i - width); j < i; j++) {
      const a = values[base + j] as number;
      sum += a * (x[j] as number);
      out[j] = (out[j] as number) + a * xi;
    }
    out[i] = (out[i] as number) + sum;
  }
}

/**
 * L D L^T factors of a symmetric band matrix without pivoting (Golub and Van Loan, Matrix
 * Computations, 4.3.6), in the same storage with D on the diagonal. Safe for positive definite ones;
 * shift an unsupported stiffness first.
 *
 * @returns undefined when a pivot vanishes
 */
export function factorBanded(matrix: Banded): Banded | undefined {
  const { size, width } = matrix;
  const v = Float64Array.from(matrix.values);
  const stride = width + 1;
  const scaled = new Float64Array(stride);
  for (let i = 0; i < size; i++) {
    const first = Math.max(0, i - width);
    const base = i * stride + width - i;
    let pivot = v[base + i] as number;
    const size0 = Math.abs(pivot);
    for (let j = first; j < i; j++) {
      const other = j * stride + width - j;
      let sum = v[base + j] as number;
      for (let k = Math.max(first, j - width); k < j; k++) {
        sum -= (scaled[k - first] as number) * (v[other + k] as number);
      }
      scaled[j - first] = sum;
      const l = sum / (v[other + j] as number);
      v[base + j] = l;
      pivot -= l * sum;
    }
    if (!(Math.abs(pivot) > 1e-14 * size0)) return undefined;
    v[base + i] = pivot;
  }
  return { size, width, values: v };
}

/** Solves A x = b in place from the factors of `factorBanded`. */
export function solveBanded(factors: Banded, b: Float64Array): void {
  const { size, width, values } = factors;
  const stride = width + 1;
  for (let i = 0; i < size; i++) {
    const base = i * stride + width - i;
    let sum = b[i] as number;
    for (let j = Math.max(0, i - width); j < i; j++) sum -= (values[base + j] as number) * (b[j] as number);
    b[i] = sum;
  }
  for (let i = 0; i < size; i++) b[i] = (b[i] as number) / (values[i * stride + width] as number);
  for (let i = size - 1; i >= 0; i--) {
    const base = i * stride + width - i;
    const bi = b[i] as number;
    for (let j = Math.max(0, i - width); j < i; j++)
      b[j] = (b[j] as number) - (values[base + j] as number) * bi;
  }
}
