/**
 * Share of a standard normal population below x: (1 + erf(x/sqrt 2))/2, with erf by Abramowitz and
 * Stegun 7.1.26, absolute error under 1e-7. Draws: `standardNormal`.
 */
export function normalShare(x: number): number {
  const z = Math.abs(x) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * z);
  const series =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (series * Math.exp(-z * z)) / 2;
  return x > 0 ? 1 - tail : tail;
}
