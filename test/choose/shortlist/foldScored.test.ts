import { expect, it } from 'vitest';
import { foldScored } from '../../../src/choose/shortlist/foldScored.ts';
import type { SoftWant } from '../../../src/choose/shortlist/softWants.ts';
import type { Scored } from '../../../src/choose/shortlist/types.ts';

const wants: readonly SoftWant[] = [
  { measure: 'all-up-mass', weight: 1, scale: { kind: 'ramp', worst: 1, best: 0.5 } },
];
const of = (mass: number) => ({ values: { 'all-up-mass': mass } }) as unknown as Scored;

// A hundredth of half a kilogram is 5 g.
it('folds what no want tells apart by a hundredth of its scale, and nothing else', () => {
  expect(foldScored([of(0.6), of(0.604), of(0.606)], wants)).toEqual([
    { kept: 0, alike: [1] },
    { kept: 2, alike: [] },
  ]);
});
