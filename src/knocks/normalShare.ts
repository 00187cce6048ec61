/**
 * Share of a standard normal below z, by Abramowitz and Stegun 1964 eq. 26.2.17; absolute error
 * below 7.5e-8, far under what 10 000 histories can show.
 */
export function normalShare(z: number): number {
  const size = Math.abs(z);
  const t = 1 / (1 + 0.2316419 * size);
  const tail =
    0.3989422804014327 *
    Math.exp((-size * size) / 2) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? 1 - tail : tail;
}
