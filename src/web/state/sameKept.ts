/**
 * The new value, with every branch that is equal to the old one's taken from the old: what shows a branch that has
 * not changed then knows so by its identity. For plain data alone (what a worker's answer is).
 */
export function sameKept<T>(old: unknown, fresh: T): T {
  if (Object.is(old, fresh)) return fresh;
  if (Array.isArray(old) && Array.isArray(fresh)) {
    const list = fresh.map((each, i) => sameKept(old[i], each));
    const same = old.length === list.length && list.every((each, i) => each === old[i]);
    return (same ? old : list) as T;
  }
  if (!isPlain(old) || !isPlain(fresh)) return fresh;
  const keys = Object.keys(fresh);
  let same = keys.length === Object.keys(old).length;
  const made: Record<string, unknown> = {};
  for (const key of keys) {
    made[key] = sameKept(old[key], fresh[key]);
    same &&= key in old && Object.is(made[key], old[key]);
  }
  return (same ? old : made) as T;
}

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
