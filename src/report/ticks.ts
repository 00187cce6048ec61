/**
 * Round numbers across a range, about `count` of them: steps of 1, 2 or 5 times a power of ten.
 * An empty range gives its one number.
 */
export function ticks(low: number, high: number, count: number): readonly number[] {
  if (!(high > low)) return [low];
  const rough = (high - low) / Math.max(count, 1);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough) ?? 10 * power;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  // Counting in whole steps keeps 0.3 from becoming 0.30000000000000004.
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toFixed(decimals)));
}
