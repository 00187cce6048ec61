import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bracketedRoot } from '../../src/numerics/bracketedRoot.ts';

it('finds the root of any rising cubic', () => {
  fc.assert(
    fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (root) => {
      const found = bracketedRoot((x) => (x - root) ** 3 + (x - root), -100, 100, 1e-12);
      expect(found.ok && Math.abs(found.value - root)).toBeLessThan(1e-9);
    }),
  );
});

it('says so when there is no sign change', () => {
  const outcome = bracketedRoot((x) => x * x + 1, -1, 1);
  expect(outcome.ok).toBe(false);
});
