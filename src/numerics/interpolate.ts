/**
 * Piecewise linear interpolation, held constant beyond both ends.
 *
 * @param x where to read
 * @param xs knots, rising
 * @param ys values at the knots, same length as `xs`
 */
export function interpolateLinear(x: number, xs: ArrayLike<number>, ys: ArrayLike<number>): number {
  const last = xs.length - 1;
  if (x <= (xs[0] as number)) return ys[0] as number;
  if (x >= (xs[last] as number)) return ys[last] as number;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((xs[middle] as number) <= x) low = middle;
    else high = middle;
  }
  const left = xs[low] as number;
  const share = (x - left) / ((xs[high] as number) - left);
  return (ys[low] as number) * (1 - share) + (ys[high] as number) * share;
}
