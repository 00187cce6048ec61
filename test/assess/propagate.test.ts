import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bandOf, guessedBand, propagate } from '../../src/assess/propagate.ts';

const unit = fc.double({ min: 0.001, max: 0.3, noNaN: true });

it('adds independent inputs in quadrature (JCGM 100:2008 eq. 10, a linear model is exact)', () => {
  fc.assert(
    fc.property(unit, unit, (first, second) => {
      const { banded } = propagate(
        { sum: 0 },
        [
          { input: 'first', trust: 'maker', raised: [first, 0] as const },
          { input: 'second', trust: 'inferred', raised: [0, second] as const },
        ],
        ([a, b]) => ({ sum: 3 * a - 4 * b }),
      );
      const deviation = Math.hypot(3 * first, 4 * second);
      expect(banded.sum!.band[1]).toBeCloseTo(1.2815515655 * deviation, 9);
      expect(banded.sum!.leansOn.reduce((total, leaning) => total + leaning.share, 0)).toBeGreaterThan(0.9);
    }),
  );
});

it('never lets the band of a positive result reach zero', () => {
  fc.assert(
    fc.property(unit, fc.double({ min: 0, max: 5, noNaN: true }), (value, deviation) => {
      const [low, high] = bandOf(value, deviation);
      expect(low).toBeGreaterThan(0);
      expect(low).toBeLessThanOrEqual(value);
      expect(high).toBeGreaterThanOrEqual(value);
    }),
  );
});

it('names a result it cannot band when one raised input has no solution', () => {
  const { banded, unbanded } = propagate(
    { hover: 1 },
    [{ input: 'mass', trust: 'maker', raised: 2 }],
    () => ({}),
  );
  expect(banded.hover).toBeUndefined();
  expect(unbanded).toEqual(['hover']);
});

// A winding at 70 degC was once guessed at -100 to 240 degC: half of its kelvins either way.
it('guesses a temperature by its rise above the air', () => {
  const [low, high] = guessedBand(343.15, 283.15);
  expect(low).toBeCloseTo(313.15, 9);
  expect(high).toBeCloseTo(373.15, 9);
  expect(guessedBand(10)).toEqual([5, 15]);
});
