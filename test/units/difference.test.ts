import fc from 'fast-check';
import { expect, it } from 'vitest';
import { toldDifference } from '../../src/units/difference.ts';
import { formatQuantity } from '../../src/units/formatQuantity.ts';

const said = (difference: number, half?: number) => {
  const told = toldDifference(difference, half);
  return told && formatQuantity(told.value, 'time', { band: told.band }).replace('\u00a0', ' ');
};

// Told before: '-41.3 ms' of five minutes that are known to half a minute.
it('tells two digits, no finer than a tenth of what is unsure, and nothing where less than a twentieth is left', () => {
  expect(said(-0.0413, 27)).toBeUndefined();
  expect(said(14.4, 27)).toBe('14 s');
  expect(said(31.4, 27)).toBe('31 s');
  expect(said(106)).toBe('110 s');
  expect(said(2.24)).toBe('2.2 s');
});

it('never moves a difference by more than a twentieth of itself or of what is unsure', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
      fc.double({ min: 0, max: 1e4, noNaN: true }),
      (difference, half) => {
        const told = toldDifference(difference, half);
        if (told === undefined) expect(difference).toBeLessThanOrEqual(half / 20);
        if (told === undefined) return;
        const step = (told.band[1] - told.band[0]) / 5;
        expect(step / 2).toBeLessThanOrEqual(0.0501 * Math.max(difference, half));
      },
    ),
  );
});
