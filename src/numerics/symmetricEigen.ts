import { noSolution, type Outcome, solved } from './outcome.ts';

/** Eigenvalues, in the units of the matrix, and orthonormal eigenvectors. */
export interface EigenPairs {
  /** Rising. */
  readonly values: Float64Array;
  /** Vector k in entries k * size to (k + 1) * size. */
  readonly vectors: Float64Array;
}

/**
 * All eigenvalues and vectors of A x = lambda B x for dense symmetric A and positive definite B
 * (row-major, size x size): B = L L^T, then Householder to tridiagonal and implicit QL, after
 * Martin, Reinsch and Wilkinson (Handbook for Automatic Computation II, 1971; tred2, tql2).
 * Vectors are B-orthonormal. For up to about 100; larger and banded: `lowestModes`.
 */
export function generalisedEigen(a: Float64Array, b: Float64Array, size: number): Outcome<EigenPairs> {
  const lower = cholesky(b, size);
  if (lower === undefined) return noSolution('the mass matrix is not positive definite');
  const c = Float64Array.from(a);
  for (let j = 0; j < size; j++) forward(lower, size, c, j, size);
  for (let i = 0; i < size; i++) forward(lower, size, c, i * size, 1);
  const solution = symmetricEigen(c, size);
  if (!solution.ok) return solution;
  const { values, vectors } = solution.value;
  for (let k = 0; k < size; k++) {
    const base = k * size;
    for (let i = size - 1; i >= 0; i--) {
      let sum = vectors[base + i] as number;
      for (let j = i + 1; j < size; j++)
        sum -= (lower[j * size + i] as number) * (vectors[base + j] as number);
      vectors[base + i] = sum / (lower[i * size + i] as number);
    }
  }
  return solved({ values, vectors });
}

/** Lower Cholesky factor of a dense positive definite matrix, or undefined. */
export function cholesky(matrix: Float64Array, size: number): Float64Array | undefined {
  const l = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j] as number;
      for (let k = 0; k < j; k++) sum -= (l[i * size + k] as number) * (l[j * size + k] as number);
      if (i === j) {
        if (!(sum > 0)) return undefined;
        l[i * size + i] = Math.sqrt(sum);
      } else {
        l[i * size + j] = sum / (l[j * size + j] as number);
      }
    }
  }
  return l;
}

/** Solves L y = v in place for a strided vector. */
function forward(lower: Float64Array, size: number, v: Float64Array, offset: number, stride: number): void {
  for (let i = 0; i < size; i++) {
    let sum = v[offset + i * stride] as number;
    for (let k = 0; k < i; k++) sum -= (lower[i * size + k] as number) * (v[offset + k * stride] as number);
    v[offset + i * stride] = sum / (lower[i * size + i] as number);
  }
}

/** All eigenpairs of one dense symmetric matrix (row-major); vectors orthonormal. */
export function symmetricEigen(matrix: Float64Array, n: number): Outcome<EigenPairs> {
  const z = Float64Array.from(matrix);
  const d = new Float64Array(n);
  const e = new Float64Array(n);
  tridiagonal(z, n, d, e);
  if (!implicitQl(z, n, d, e)) return noSolution('the eigenvalues did not settle in 60 sweeps');
  const order = Array.from(d.keys()).sort((i, j) => (d[i] as number) - (d[j] as number));
  const vectors = new Float64Array(n * n);
  for (const [k, column] of order.entries()) {
    for (let i = 0; i < n; i++) vectors[k * n + i] = z[i * n + column] as number;
  }
  return solved({ values: Float64Array.from(order, (k) => d[k] as number), vectors });
}

/** Householder reduction; z becomes the transformation, d the diagonal, e the off-diagonal from 1. */
function tridiagonal(z: Float64Array, n: number, d: Float64Array, e: Float64Array): void {
  const at = (i: number, j: number): number => z[i * n + j] as number;
  for (let i = n - 1; i > 0; i--) {
    let scale = 0;
    let h = 0;
    for (let k = 0; k < i; k++) scale += Math.abs(at(i, k));
    if (i === 1 || scale === 0) {
      e[i] = at(i, i - 1);
      d[i] = 0;
      continue;
    }
    for (let k = 0; k < i; k++) {
      const value = at(i, k) / scale;
      z[i * n + k] = value;
      h += value * value;
    }
    const f = at(i, i - 1);
    const g = f >= 0 ? -Math.sqrt(h) : Math.sqrt(h);
    e[i] = scale * g;
    h -= f * g;
    z[i * n + i - 1] = f - g;
    let fold = 0;
    for (let j = 0; j < i; j++) {
      z[j * n + i] = at(i, j) / h;
      let sum = 0;
      for (let k = 0; k <= j; k++) sum += at(j, k) * at(i, k);
      for (let k = j + 1; k < i; k++) sum += at(k, j) * at(i, k);
      e[j] = sum / h;
      fold += (e[j] as number) * at(i, j);
    }
    const hh = fold / (h + h);
    for (let j = 0; j < i; j++) {
      const fj = at(i, j);
      const gj = (e[j] as number) - hh * fj;
      e[j] = gj;
      for (let k = 0; k <= j; k++) z[j * n + k] = at(j, k) - (fj * (e[k] as number) + gj * at(i, k));
    }
    d[i] = h;
  }
  d[0] = 0;
  e[0] = 0;
  for (let i = 0; i < n; i++) {
    if (d[i] !== 0) {
      for (let j = 0; j < i; j++) {
        let sum = 0;
        for (let k = 0; k < i; k++) sum += at(i, k) * at(k, j);
        for (let k = 0; k < i; k++) z[k * n + j] = at(k, j) - sum * at(k, i);
      }
    }
    d[i] = at(i, i);
    z[i * n + i] = 1;
    for (let j = 0; j < i; j++) {
      z[j * n + i] = 0;
      z[i * n + j] = 0;
    }
  }
}

function implicitQl(z: Float64Array, n: number, d: Float64Array, e: Float64Array): boolean {
  for (let i = 1; i < n; i++) e[i - 1] = e[i] as number;
  if (n > 0) e[n - 1] = 0;
  for (let l = 0; l < n; l++) {
    for (let sweep = 0; ; sweep++) {
      let m = l;
      for (; m < n - 1; m++) {
        const size = Math.abs(d[m] as number) + Math.abs(d[m + 1] as number);
        if (Math.abs(e[m] as number) <= Number.EPSILON * size) break;
      }
      if (m === l) break;
      if (sweep === 60) return false;
      qlSweep(z, n, d, e, l, m);
    }
  }
  return true;
}

function qlSweep(z: Float64Array, n: number, d: Float64Array, e: Float64Array, l: number, m: number): void {
  const dl = d[l] as number;
  let g = ((d[l + 1] as number) - dl) / (2 * (e[l] as number));
  const r0 = Math.hypot(g, 1);
  g = (d[m] as number) - dl + (e[l] as number) / (g + (g >= 0 ? r0 : -r0));
  let [s, c, p] = [1, 1, 0];
  for (let i = m - 1; i >= l; i--) {
    const f = s * (e[i] as number);
    const b = c * (e[i] as number);
    const r = Math.hypot(f, g);
    e[i + 1] = r;
    if (r === 0) {
      d[i + 1] = (d[i + 1] as number) - p;
      e[m] = 0;
      return;
    }
    s = f / r;
    c = g / r;
    g = (d[i + 1] as number) - p;
    const t = ((d[i] as number) - g) * s + 2 * c * b;
    p = s * t;
    d[i + 1] = g + p;
    g = c * t - b;
    for (let k = 0; k < n; k++) {
      const [a0, a1] = [z[k * n + i] as number, z[k * n + i + 1] as number];
      z[k * n + i + 1] = s * a0 + c * a1;
      z[k * n + i] = c * a0 - s * a1;
    }
  }
  d[l] = (d[l] as number) - p;
  e[l] = g;
  e[m] = 0;
}
