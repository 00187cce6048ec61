/** One round of a fixed-point iteration: what it was given, and how far what it asks for is from that. */
interface Round {
  readonly given: Float64Array;
  readonly moved: Float64Array;
}

/**
 * Anderson's mixing (1965, J. ACM 12:547; in the form of Walker and Ni 2011, SIAM J. Numer. Anal. 49:1715): where a fixed-point
 * iteration x -> x + moved(x) crawls or swings, the step that is least in the mean square over the last rounds. Hand each
 * round to what is returned, and take what comes back as the next x.
 *
 * @param memory rounds looked back on, 1 to 8
 */
export function andersonMixer(memory: number): (given: Float64Array, moved: Float64Array) => Float64Array {
  const rounds: Round[] = [];
  return (given, moved) => {
    const next = given.map((value, i) => value + (moved[i] as number));
    const latest = { given: given.slice(), moved: moved.slice() };
    rounds.unshift(latest);
    rounds.length = Math.min(rounds.length, memory + 1);
    if (rounds.length === 1) return next;
    // Least squares of moved - sum g_k (moved - moved_k): the normal equations, a hair lifted against dependence.
    const steps = rounds.slice(1).map((earlier) => difference(latest, earlier));
    const matrix = steps.map((a) => steps.map((b) => dot(a.moved, b.moved)));
    const right = steps.map(({ moved: step }) => dot(step, moved));
    matrix.forEach((row, k) => {
      row[k] = (row[k] as number) * (1 + 1e-12) + Number.MIN_VALUE;
    });
    const shares = eliminated(matrix, right);
    shares.forEach((share, k) => {
      if (!Number.isFinite(share)) return;
      const { given: a, moved: b } = steps[k] as Round;
      for (let i = 0; i < next.length; i++) {
        next[i] = (next[i] as number) - share * ((a[i] as number) + (b[i] as number));
      }
    });
    return next;
  };
}

const dot = (a: Float64Array, b: Float64Array): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);

const difference = (now: Round, before: Round): Round => ({
  given: less(now.given, before.given),
  moved: less(now.moved, before.moved),
});

function less(a: Float64Array, b: Float64Array): Float64Array {
  const found = new Float64Array(a.length);
  for (let i = 0; i < a.length; i++) found[i] = (a[i] as number) - (b[i] as number);
  return found;
}

/** Gaussian elimination of a small positive definite system, the largest diagonal first; a vanishing pivot leaves 0. */
function eliminated(matrix: number[][], right: number[]): readonly number[] {
  const n = right.length;
  const used: boolean[] = right.map(() => false);
  const largest = Math.max(...matrix.map((row, i) => row[i] ?? 0));
  for (let step = 0; step < n; step++) {
    let best = -1;
    let pivot = 1e-14 * largest;
    for (let i = 0; i < n; i++) {
      if (!used[i] && (matrix[i]?.[i] ?? 0) > pivot) [best, pivot] = [i, matrix[i]?.[i] ?? 0];
    }
    if (best < 0) break;
    used[best] = true;
    const top = matrix[best] as number[];
    for (let i = 0; i < n; i++) {
      const row = matrix[i] as number[];
      const factor = (row[best] as number) / pivot;
      if (i === best || factor === 0) continue;
      for (let c = 0; c < n; c++) row[c] = (row[c] as number) - factor * (top[c] as number);
      right[i] = (right[i] as number) - factor * (right[best] as number);
    }
  }
  return right.map((value, i) => (used[i] ? value / (matrix[i]?.[i] as number) : 0));
}
