import { noSolution, type Outcome, solved } from './outcome.ts';

/**
 * Root of a continuous scalar function inside a bracket, by Brent's method
 * (Brent 1973, Algorithms for Minimization without Derivatives, ch. 4): inverse quadratic
 * interpolation guarded by bisection, so it always converges once the bracket holds a sign change.
 *
 * @param f function of one variable, finite on [low, high]
 * @param low, high bracket ends, any units; f(low) and f(high) must differ in sign
 * @param tolerance absolute tolerance on the root, same unit as the bracket
 * @returns the root, or words when the bracket holds no sign change
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-10,
  maxIterations = 200,
): Outcome<number> {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (!Number.isFinite(fa) || !Number.isFinite(fb)) {
    return noSolution(`the function is not finite at the ends of the bracket ${low} to ${high}`);
  }
  if (fa === 0) return solved(a);
  if (fb === 0) return solved(b);
  if (fa > 0 === fb > 0) return noSolution(`no sign change between ${low} and ${high}`);

  let c = a;
  let fc = fa;
  let step = b - a;
  let previousStep = step;
  for (let iteration = 0; iteration < maxIterations; iteration++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      previousStep = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const closeEnough = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const half = 0.5 * (c - b);
    if (Math.abs(half) <= closeEnough || fb === 0) return solved(b);

    if (Math.abs(previousStep) >= closeEnough && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      const acceptable =
        2 * p < Math.min(3 * half * q - Math.abs(closeEnough * q), Math.abs(previousStep * q));
      previousStep = acceptable ? step : half;
      step = acceptable ? p / q : half;
    } else {
      step = half;
      previousStep = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > closeEnough ? step : Math.sign(half) * closeEnough;
    fb = f(b);
  }
  return noSolution(`no root to within ${tolerance} after ${maxIterations} steps`);
}
