import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { propagateHeat } from '../../src/assess/propagateHeat.ts';

const AIR = 323.15;
const BEARS = 513.15;

const told = (rise: number, ...raised: readonly number[]) =>
  propagateHeat(
    { winding: AIR + rise },
    raised.map((each) => ({ input: 'drag', trust: 'inferred' as const, raised: AIR + each })),
    (winding) => ({ winding }),
    { air: AIR, bears: () => BEARS },
  ).banded.winding!;

// A winding in air of 50 degC was once told `0 degC, 0 to 50000 degC`: its band was a share of its kelvins.
it('never tells a heated thing colder than the air, nor hotter than its insulation bears', () => {
  const rise = fc.double({ min: 0.2, max: 5000, noNaN: true });
  fc.assert(
    fc.property(
      rise,
      fc.array(rise, { minLength: 1, maxLength: 6 }),
      fc.boolean(),
      (settles, raised, runaway) => {
        const { value, band } = told(settles, ...raised, ...(runaway ? [Number.POSITIVE_INFINITY] : []));
        for (const each of [value, ...band]) {
          expect(each).toBeGreaterThan(AIR);
          expect(each).toBeLessThanOrEqual(BEARS);
        }
        expect(band[0]).toBeLessThanOrEqual(value);
        expect(band[1]).toBeGreaterThanOrEqual(value - 1e-9);
      },
    ),
  );
});

// Rise = heat / cooling. A tenth more cooling is a deviation of a tenth of 1/rise: JCGM 100:2008 eq. 10 by hand, log-normal.
it('doubts it by how well it is cooled', () => {
  const { band, leansOn } = told(60, 60 / 1.1);
  const spread = Math.exp(1.2815515655446 * Math.sqrt(Math.log1p(0.1 ** 2)));
  expect(band[0] - AIR).toBeCloseTo(60 / spread, 9);
  expect(band[1] - AIR).toBeCloseTo(60 * spread, 9);
  expect(leansOn[0]?.share).toBeCloseTo(1, 9);
});

describe('beyond what insulation bears it is told in words', () => {
  it('of an end of the band', () => {
    expect(told(100, 300)).toMatchObject({ open: 'burnt', band: [expect.any(Number), BEARS] });
    expect(told(60, 70).open).toBeUndefined();
  });

  it('of the temperature itself, with the best there may be', () => {
    expect(told(1600, 1800)).toMatchObject({
      value: BEARS,
      band: [BEARS, BEARS],
      words: 'burnt: over 240\u00a0degC',
    });
    expect(told(220, 600).words).toMatch(/^burnt: over 240\u00a0degC, at best 1\d0\u00a0degC$/);
  });

  it('of one that never settles', () => {
    // A random craft's never settled, and could not be flown with one input raised: its value was Infinity.
    expect(told(Number.POSITIVE_INFINITY, Number.NaN)).toMatchObject({
      value: BEARS,
      words: 'never settles',
    });
    expect(told(Number.POSITIVE_INFINITY, 900).words).toBe('never settles');
    // Its states are counted by `propagate`; the end lies open all the same.
    expect(told(60, 66, Number.POSITIVE_INFINITY).band[1]).toBe(BEARS);
  });
});
