/**
 * What makes one piece of plain data of another: absent where they are equal, else the new value whole, or what has
 * changed of a record or list. A build slid a little changes a tenth of its answer; only that crosses to the page.
 */
export type Patch =
  | undefined
  | { readonly whole: unknown }
  | { readonly fields: readonly (readonly [key: string, patch: Patch])[]; readonly gone: readonly string[] }
  | { readonly length: number; readonly items: readonly (readonly [index: number, patch: Patch])[] };

type PlainRecord = Readonly<Record<string, unknown>>;

export function patchOf(old: unknown, fresh: unknown): Patch {
  if (Object.is(old, fresh)) return undefined;
  if (Array.isArray(old) && Array.isArray(fresh)) return patchOfList(old, fresh);
  if (isPlain(old) && isPlain(fresh)) return patchOfRecord(old, fresh);
  return { whole: fresh };
}

function patchOfList(old: readonly unknown[], fresh: readonly unknown[]): Patch {
  const items = fresh.flatMap((each, i): readonly (readonly [number, Patch])[] => {
    const patch = i < old.length ? patchOf(old[i], each) : { whole: each };
    return patch === undefined ? [] : [[i, patch]];
  });
  if (items.length === 0 && old.length === fresh.length) return undefined;
  // Of a pair of numbers its places would take more words than the pair.
  return fresh.every(isSimple) ? { whole: fresh } : { length: fresh.length, items };
}

function patchOfRecord(old: PlainRecord, fresh: PlainRecord): Patch {
  const fields = Object.keys(fresh).flatMap((key): readonly (readonly [string, Patch])[] => {
    const patch = Object.hasOwn(old, key) ? patchOf(old[key], fresh[key]) : { whole: fresh[key] };
    return patch === undefined ? [] : [[key, patch]];
  });
  const gone = Object.keys(old).filter((key) => !Object.hasOwn(fresh, key));
  return fields.length + gone.length === 0 ? undefined : { fields, gone };
}

/** The old data with the patch on it; branches that have not changed stay the very same. */
export function patched(old: unknown, patch: Patch): unknown {
  if (patch === undefined) return old;
  if ('whole' in patch) return patch.whole;
  if ('items' in patch) {
    const list = Array.isArray(old) ? old.slice(0, patch.length) : [];
    for (const [i, each] of patch.items) list[i] = patched(list[i], each);
    return list;
  }
  const record = isPlain(old) ? old : {};
  const changes = new Map(patch.fields);
  const kept = Object.keys(record).filter((key) => !changes.has(key) && !patch.gone.includes(key));
  return Object.fromEntries([
    ...kept.map((key) => [key, record[key]]),
    ...patch.fields.map(([key, each]) => [
      key,
      patched(Object.hasOwn(record, key) ? record[key] : undefined, each),
    ]),
  ]);
}

const isSimple = (value: unknown): boolean => typeof value !== 'object' || value === null;

const isPlain = (value: unknown): value is PlainRecord =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
