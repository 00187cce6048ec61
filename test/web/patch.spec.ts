import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patched, patchOf } from '../../src/web/worker/patch.ts';

const data = () => fc.jsonValue({ noUnicodeString: false } as object);

describe('what has changed of an answer', () => {
  it('makes the new one of the old one, for any two pieces of data', () => {
    fc.assert(
      fc.property(data(), data(), (old, fresh) => {
        // Across the border it is cloned.
        expect(patched(old, structuredClone(patchOf(old, fresh)))).toEqual(fresh);
      }),
    );
  });

  it('is nothing for an equal one, which stays the very same', () => {
    fc.assert(
      fc.property(data(), (value) => {
        const patch = patchOf(value, structuredClone(value));
        expect(patch).toBeUndefined();
        expect(patched(value, patch)).toBe(value);
      }),
    );
  });

  it('tells of lists and records only what is other, and keeps the rest', () => {
    const old = {
      name: 'one',
      list: [{ a: 1, says: 'long' }, { b: [2, 3] }, { c: 4 }],
      rest: { d: 5 },
      e: 6,
    };
    const fresh = { name: 'one', list: [{ a: 7, says: 'long' }, { b: [2, 8] }], rest: { d: 5 }, f: 9 };
    const patch = patchOf(old, fresh);
    expect(JSON.stringify(patch)).not.toMatch(/long|rest|"name"/);
    const now = patched(old, patch) as typeof fresh;
    expect(now).toEqual(fresh);
    expect(now.rest).toBe(old.rest);
    expect(patched([1, 2], patchOf([1, 2], [1]))).toEqual([1]);
    expect(patched({ a: Number.NaN }, patchOf({ a: Number.NaN }, { a: undefined }))).toEqual({
      a: undefined,
    });
  });
});
