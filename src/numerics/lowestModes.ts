import { type Banded, factorBanded, multiplyBanded, solveBanded } from './banded.ts';
import { noSolution, type Outcome, solved } from './outcome.ts';
import { type EigenPairs, generalisedEigen } from './symmetricEigen.ts';

/** Slowest shrinking of a change still taken at its word. */
const SLOWEST = 0.999;
/** Changes below this, relative, are rounding. */
const ROUNDING = 1e-14;

/**
 * The lowest `count` eigenpairs of K x = lambda M x with banded symmetric K and M, by subspace
 * iteration (Bathe, Finite Element Procedures, 11.6) on K + shift M. An unsupported structure needs a
 * positive `shift` (that is, a point below zero); eigenvalues come back unshifted. Vectors are
 * M-orthonormal. Small dense problems: `generalisedEigen`.
 *
 * @param tolerance relative error of every eigenvalue, judged from how its last changes shrink: where values crowd
 * they shrink slowly, and a small change alone would stop too early
 * @param iterated how many vectors are iterated on, `count` or more: few do where the values above lie far apart
 */
export function lowestModes(
  stiffness: Banded,
  mass: Banded,
  count: number,
  shift = 0,
  tolerance = 1e-10,
  iterated = Math.max(2 * count, count + 8),
): Outcome<EigenPairs> {
  const { size, width } = stiffness;
  if (!(count >= 1 && count <= size)) throw new RangeError(`count: must be 1 to ${size}, got ${count}`);
  if (mass.size !== size || mass.width !== width)
    throw new RangeError('mass: must have the band of stiffness');
  const shifted =
    shift === 0 ? stiffness.values : stiffness.values.map((k, i) => k + shift * (mass.values[i] as number));
  const factors = factorBanded({ size, width, values: shifted });
  if (factors === undefined)
    return noSolution('the stiffness is singular: the structure is loose, or needs a shift');

  const q = Math.min(size, iterated);
  // Where the subspace is half the whole there is nothing to win, and crowded values would settle slowly.
  if (2 * q >= size) return fewOfAll(stiffness, mass, count);
  const x = startVectors(mass, q);
  const mx = new Float64Array(q * size);
  const reducedK = new Float64Array(q * q);
  const reducedM = new Float64Array(q * q);
  let previous = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  let lastChanges = new Float64Array(count).fill(Number.NaN);
  for (let iteration = 0; iteration < 200; iteration++) {
    for (let k = 0; k < q; k++)
      multiplyBanded(mass, x.subarray(k * size, (k + 1) * size), mx.subarray(k * size, (k + 1) * size));
    x.set(mx);
    for (let k = 0; k < q; k++) solveBanded(factors, x.subarray(k * size, (k + 1) * size));
    gram(x, mx, size, q, reducedK);
    for (let k = 0; k < q; k++)
      multiplyBanded(mass, x.subarray(k * size, (k + 1) * size), mx.subarray(k * size, (k + 1) * size));
    gram(x, mx, size, q, reducedM);
    const reduced = generalisedEigen(reducedK, reducedM, q);
    if (!reduced.ok) return reduced;
    combine(x, reduced.value.vectors, size, q, mx);
    const values = reduced.value.values.slice(0, count);
    const changes = values.map((value, k) => Math.abs(value - (previous[k] as number)));
    const settled = values.every((value, k) => {
      const change = changes[k] as number;
      const ratio = Math.min(change / (lastChanges[k] as number), SLOWEST);
      const remaining = (change * ratio) / (1 - ratio);
      const scale = Math.abs(value);
      return Math.max(change, remaining) <= tolerance * scale || change <= ROUNDING * scale;
    });
    if (settled) {
      return solved({ values: values.map((value) => value - shift), vectors: x.slice(0, count * size) });
    }
    previous = values;
    lastChanges = changes;
  }
  return noSolution('the modes did not settle in 200 subspace iterations');
}

/** Columns that stir every degree of freedom alike: a fixed fill, scaled so that each moves equal mass. */
function startVectors(mass: Banded, q: number): Float64Array {
  const { size, width } = mass;
  const x = new Float64Array(q * size);
  let state = 12345;
  for (let k = 0; k < q; k++) {
    for (let i = 0; i < size; i++) {
      state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
      x[k * size + i] = (state / 0x40000000 - 1) / Math.sqrt(mass.values[i * (width + 1) + width] as number);
    }
  }
  return x;
}

/** out = X^T Y, symmetric. */
function gram(x: Float64Array, y: Float64Array, size: number, q: number, out: Float64Array): void {
  for (let i = 0; i < q; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k < size; k++) sum += (x[i * size + k] as number) * (y[j * size + k] as number);
      out[i * q + j] = sum;
      out[j * q + i] = sum;
    }
  }
}

/** X <- X V, with V's columns as stored eigenvectors; `work` is scratch of X's size. */
function combine(x: Float64Array, vectors: Float64Array, size: number, q: number, work: Float64Array): void {
  work.fill(0);
  for (let k = 0; k < q; k++) {
    for (let j = 0; j < q; j++) {
      const share = vectors[k * q + j] as number;
      for (let i = 0; i < size; i++) {
        work[k * size + i] = (work[k * size + i] as number) + share * (x[j * size + i] as number);
      }
    }
  }
  x.set(work);
}

/** The lowest of all modes of a small problem, solved densely. */
function fewOfAll(stiffness: Banded, mass: Banded, count: number): Outcome<EigenPairs> {
  const { size } = stiffness;
  const all = generalisedEigen(dense(stiffness), dense(mass), size);
  if (!all.ok) return all;
  return solved({
    values: all.value.values.slice(0, count),
    vectors: all.value.vectors.slice(0, count * size),
  });
}

function dense(matrix: Banded): Float64Array {
  const { size } = matrix;
  const full = new Float64Array(size * size);
  const unit = new Float64Array(size);
  for (let column = 0; column < size; column++) {
    unit.fill(0);
    unit[column] = 1;
    // Symmetric, so a column may stand as a row.
    multiplyBanded(matrix, unit, full.subarray(column * size, (column + 1) * size));
  }
  return full;
}
