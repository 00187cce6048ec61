/**
 * The new value, with every branch that is equal to the old one's taken from the old: what shows a branch that has
 * not changed then knows so by its identity. For plain data alone (what a worker's answer is).
 *
 * @param depth of branches that are looked into, where those further down are known to keep their identity
 */
export function sameKept<T>(old: unknown, fresh: T, depth = Number.POSITIVE_INFINITY): T {
  if (depth === 0 || Object.is(old, fresh)) return fresh;
  if (Array.isArray(old) && Array.isArray(fresh)) {
    const list = fresh.map((each, i) => sameKept(old[i], each, depth - 1));
    const same = old.length === list.length && list.every((each, i) => Object.is(each, old[i]));
    return (same ? old : list) as T;
  }
  if (!isPlain(old) || !isPlain(fresh)) return fresh;
  const own = (key: string): unknown => (Object.hasOwn(old, key) ? old[key] : undefined);
  const made = Object.entries(fresh).map(
    ([key, each]) => [key, sameKept(own(key), each, depth - 1)] as const,
  );
  const same =
    made.length === Object.keys(old).length &&
    made.every(([key, each]) => Object.hasOwn(old, key) && Object.is(each, old[key]));
  // From entries: a key that an object inherits is a key like any other.
  return (same ? old : Object.fromEntries(made)) as T;
}

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
