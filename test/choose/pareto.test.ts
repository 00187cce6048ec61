import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldAlike } from '../../src/choose/foldAlike.ts';
import { type Better, beats, paretoFront, toCosts } from '../../src/choose/pareto.ts';

const better: readonly Better[] = ['less', 'more', 'less'];
const value = fc.integer({ min: 0, max: 6 });
const points = fc.array(fc.tuple(value, value, value), { maxLength: 60 });

describe('Pareto front', () => {
  it('is what holding every pair against each other leaves', () => {
    fc.assert(
      fc.property(points, (rows) => {
        const costs = rows.map((row) => toCosts(row, better));
        const brute = rows.flatMap((_, i) => (costs.some((other) => beats(other, costs[i]!)) ? [] : [i]));
        expect(paretoFront(rows, better)).toEqual(brute);
      }),
    );
  });

  it('does not hang on the order the points come in', () => {
    fc.assert(
      fc.property(points, (rows) => {
        const front = (list: typeof rows) =>
          paretoFront(list, better)
            .map((i) => JSON.stringify(list[i]))
            .sort();
        expect(front([...rows].reverse())).toEqual(front(rows));
      }),
    );
  });

  it('refuses what is not a number', () => {
    expect(() => paretoFront([[Number.NaN]], ['more'])).toThrow(RangeError);
    expect(() => paretoFront([[1, 2]], ['more'])).toThrow(RangeError);
  });
});

it('folds what lies within a step of the first of its like, and nothing else', () => {
  const rows = [
    [10, 1],
    [10.4, 1.05],
    [11.5, 1],
    [10.9, 1.2],
    [11.6, 1],
  ];
  expect(foldAlike(rows, [1, 0.1])).toEqual([
    { kept: 0, alike: [1] },
    { kept: 2, alike: [4] },
    { kept: 3, alike: [] },
  ]);
});
