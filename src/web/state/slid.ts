/**
 * Whether one piece of plain data differs from another in its numbers alone: the same parts in the same places, slid
 * to and fro. Any data that is the same is slid by nothing.
 */
export function isSlid(past: unknown, now: unknown): boolean {
  if (Object.is(past, now)) return true;
  if (typeof past === 'number') return typeof now === 'number';
  if (typeof past !== 'object' || typeof now !== 'object' || past === null || now === null) return false;
  if (Array.isArray(past) !== Array.isArray(now)) return false;
  const [before, after] = [Object.entries(past), new Map<string, unknown>(Object.entries(now))];
  return (
    before.length === after.size &&
    before.every(([key, value]) => after.has(key) && isSlid(value, after.get(key)))
  );
}
