import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Recalled, recall, sameData } from '../../src/numerics/recall.ts';

const data = () => fc.jsonValue();

describe('recalling the last answer', () => {
  it('does the work once for the same question, anew for another, always without a memory', () => {
    const memory: Recalled<readonly number[], { readonly sum: number }> = {};
    let done = 0;
    const sum = (numbers: readonly number[]) =>
      recall(memory, numbers, () => {
        done += 1;
        return { sum: numbers.reduce((a, b) => a + b, 0) };
      });
    const first = sum([1, 2]);
    expect(sum([1, 2])).toBe(first);
    expect(done).toBe(1);
    expect(sum([1, 3]).sum).toBe(4);
    expect(sum([1, 2]).sum).toBe(3);
    expect(done).toBe(3);
    expect(recall(undefined, [1], () => 5)).toBe(5);
  });

  it('tells data apart to the last bit', () => {
    expect(sameData([0.1 + 0.2], [0.3])).toBe(false);
    expect(sameData([Number.NaN], [Number.NaN])).toBe(true);
    expect(sameData({ a: undefined }, {})).toBe(false);
    expect(sameData({ a: undefined }, { b: undefined })).toBe(false);
    expect(sameData([1], { 0: 1 })).toBe(false);
    // Of what is no plain data nothing is known but whether it is the very same.
    expect(sameData(new Float64Array([1]), new Float64Array([1]))).toBe(false);
  });

  it('agrees with the data as text, whatever it is', () => {
    fc.assert(
      fc.property(data(), data(), (a, b) => {
        expect(sameData(a, structuredClone(a))).toBe(true);
        if (JSON.stringify(a) !== JSON.stringify(b) && JSON.stringify(a).length !== JSON.stringify(b).length)
          expect(sameData(a, b)).toBe(false);
      }),
    );
  });
});
