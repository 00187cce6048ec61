/** Which way a column of a point is better. */
export type Better = 'more' | 'less';

/**
 * Indices of the points that no other point beats: at least as good in every column and better in one.
 * Equal points do not beat each other, so all of them stay. In the order given.
 *
 * Sorted by the first column, then each point is held against those found so far: a point can only be
 * beaten by one sorted before it (Kung, Luccio and Preparata 1975, J. ACM 22(4), sec. 2: the sort
 * that their divide and conquer starts from). n log n + n times the size of the front.
 *
 * @param points rows of equally many finite numbers, one a column of `better`
 * @throws RangeError when a row has another length or holds a number that is not finite
 */
export function paretoFront(
  points: readonly (readonly number[])[],
  better: readonly Better[],
): readonly number[] {
  const costs = points.map((point) => toCosts(point, better));
  const order = costs
    .map((_, index) => index)
    .sort((a, b) => lexical(costs[a] ?? [], costs[b] ?? []) || a - b);
  const front: number[] = [];
  for (const index of order) {
    const cost = costs[index] ?? [];
    if (!front.some((other) => beats(costs[other] ?? [], cost))) front.push(index);
  }
  return front.sort((a, b) => a - b);
}

/** A point as costs: columns where more is better are negated, so that less is better in all. */
export function toCosts(point: readonly number[], better: readonly Better[]): readonly number[] {
  if (point.length !== better.length) {
    throw new RangeError(`point must have ${better.length} columns; found ${point.length}`);
  }
  return point.map((value, column) => {
    if (!Number.isFinite(value)) throw new RangeError(`point must hold finite numbers; found ${value}`);
    return better[column] === 'less' ? value : -value;
  });
}

/** Whether costs `a` are at most `b` in every column and less in one. */
export function beats(a: readonly number[], b: readonly number[]): boolean {
  let less = false;
  for (let column = 0; column < a.length; column++) {
    const [own, other] = [a[column] ?? 0, b[column] ?? 0];
    if (own > other) return false;
    if (own < other) less = true;
  }
  return less;
}

function lexical(a: readonly number[], b: readonly number[]): number {
  for (let column = 0; column < a.length; column++) {
    const difference = (a[column] ?? 0) - (b[column] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
