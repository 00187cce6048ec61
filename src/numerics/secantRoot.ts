/**
 * Root of a rising function inside a known bracket, by the secant method guarded by bisection, for hot loops that
 * hold a good first guess. The caller vouches for f(low) <= 0 <= f(high) without evaluating them; when that
 * is untrue the result is the nearer end. Use `bracketedRoot` where the bracket itself is in doubt.
 *
 * @param f rising on [low, high]
 * @param guess inside the bracket (held to it)
 * @param slopeAt about the slope of f at the guess, asked right after f there: saves a call
 * @returns the root, to a relative error of 1e-12 or better; 1e-9 at a kink of f
 */
export function secantRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  guess: number,
  slopeAt?: (x: number) => number,
): number {
  let a = low;
  let b = high;
  let previous = guess > low && guess < high ? guess : 0.5 * (low + high);
  let fPrevious = f(previous);
  if (fPrevious === 0) return previous;
  if (fPrevious > 0) b = previous;
  else a = previous;
  // A first step so small that it measures the slope, towards the root.
  const nudge = Math.max(1e-4 * Math.abs(previous), 1e-9 * (b - a));
  let x = fPrevious > 0 ? Math.max(previous - nudge, a) : Math.min(previous + nudge, b);
  if (slopeAt !== undefined) {
    const newton = previous - fPrevious / slopeAt(previous);
    if (Math.abs(newton - previous) <= 1e-13 * Math.abs(previous)) return previous;
    if (newton > a && newton < b) x = newton;
  }
  let width = b - a;
  for (let iteration = 0; iteration < 200; iteration++) {
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0) b = x;
    else a = x;
    const secant = x - (fx * (x - previous)) / (fx - fPrevious);
    const inside = secant > a && secant < b;
    // Secant errors multiply: where this step times the last is small, rounding only is left.
    const step = Math.abs(secant - x);
    if (inside && step <= 1e-9 * Math.abs(x) && step * Math.abs(x - previous) <= 1e-14 * x * x) return secant;
    if (b - a <= 4e-16 * Math.max(Math.abs(a), Math.abs(b))) return 0.5 * (a + b);
    previous = x;
    fPrevious = fx;
    // Bisect when the secant leaves the bracket, and whenever three steps have not halved it.
    const stuck = iteration % 3 === 2 && b - a > 0.5 * width;
    if (iteration % 3 === 2) width = b - a;
    x = inside && !stuck ? secant : 0.5 * (a + b);
  }
  return x;
}
