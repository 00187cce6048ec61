/** The last question put to a piece of work, and its answer: plain data, held by whoever asks again and again. */
export interface Recalled<Asked, Answer> {
  last?: { readonly asked: Asked; readonly answer: Answer };
}

/**
 * The last answer where the same is asked again, else a fresh one, which takes its place in the memory. Without a
 * memory the work is done. `work` must lean on `asked` alone.
 */
export function recall<Asked, Answer>(
  memory: Recalled<Asked, Answer> | undefined,
  asked: Asked,
  work: () => Answer,
): Answer {
  if (memory?.last !== undefined && sameData(memory.last.asked, asked)) return memory.last.answer;
  const answer = work();
  if (memory !== undefined) memory.last = { asked, answer };
  return answer;
}

/** Whether two pieces of plain data are equal to the last bit: lists, records, numbers, texts. */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) {
    if (!Array.isArray(b) || a.length !== b.length) return false;
    for (let i = 0; i < a.length; i++) if (!sameData(a[i], b[i])) return false;
    return true;
  }
  if (!isRecord(a) || !isRecord(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  for (const key of keys) if (!(key in b) || !sameData(a[key], b[key])) return false;
  return true;
}

const isRecord = (value: object): value is Readonly<Record<string, unknown>> =>
  Object.getPrototypeOf(value) === Object.prototype;
