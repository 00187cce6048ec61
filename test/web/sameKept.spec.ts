import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameKept } from '../../src/web/state/sameKept.ts';

// Plain data as a worker's answer has it: no prototype but the usual one.
const data = () => fc.jsonValue({ noUnicodeString: false } as object);

describe('keeping what is the same', () => {
  it('never changes the value told', () => {
    fc.assert(
      fc.property(data(), data(), (old, fresh) => {
        expect(sameKept(old, fresh)).toEqual(fresh);
      }),
    );
  });

  // The story: a key that every object inherits was taken for one it has, found by the property above one run in many.
  it('takes a key that objects inherit for a key like any other', () => {
    const fresh = JSON.parse('{"__proto__":false,"toString":1}');
    expect(sameKept({}, fresh)).toEqual(fresh);
    expect(sameKept([0], [-0])).toEqual([-0]);
  });

  it('gives the old one back for an equal one', () => {
    fc.assert(
      fc.property(data(), (value) => {
        expect(sameKept(value, structuredClone(value))).toBe(value);
      }),
    );
  });

  it('keeps the branches that have not changed, in lists and records', () => {
    const old = { list: [{ a: 1 }, { b: [2] }], rest: { c: 3 } };
    const now = sameKept(old, { list: [{ a: 1 }, { b: [4] }], rest: { c: 3 } });
    expect(now.rest).toBe(old.rest);
    expect(now.list[0]).toBe(old.list[0]);
    expect(now.list[1]).not.toBe(old.list[1]);
    expect(sameKept({ a: undefined }, {})).toEqual({});
    expect(sameKept([1, 2], [1])).toEqual([1]);
  });
});
