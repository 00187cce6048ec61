import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandedMeasures, type MeasureForm, type Numbers } from '../../src/assess/parts/banded.ts';
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

describe('a state of doubt without a solution', () => {
  const mass = { input: 'mass', trust: 'maker' as const, raised: 2, lowered: () => 0 };
  const chord = { input: 'chord', trust: 'maker' as const, raised: 3 };

  it('takes the difference from the other side, and is counted', () => {
    const { banded, lost } = propagate({ hover: 1 }, [mass, chord], (state) =>
      state === 2 ? {} : { hover: state === 0 ? 0.9 : 1.1 },
    );
    const [low, high] = banded.hover!.band;
    expect(Math.log(high / low)).toBeCloseTo(2 * 1.28155 * Math.hypot(0.1, 0.1), 1);
    expect(lost.hover).toMatchObject({ states: ['mass a step up'], of: 3, record: {} });
  });

  it('looks at both sides where it is told to', () => {
    const see = (state: number) => (state === 0 ? {} : { hover: 1.1 });
    expect(propagate({ hover: 1 }, [mass, chord], see).lost.hover).toBeUndefined();
    const { banded, lost } = propagate({ hover: 1 }, [mass, chord], see, true);
    expect(banded.hover).toBeDefined();
    expect(lost.hover).toMatchObject({ states: ['mass a step down'], of: 3 });
  });

  it('leaves a result unbanded that no state has', () => {
    const { banded, unbanded } = propagate({ hover: 1 }, [mass], () => ({}));
    expect(banded.hover).toBeUndefined();
    expect(unbanded).toEqual(['hover']);
  });
});

// A winding at 70 degC was once guessed at -100 to 240 degC: half of its kelvins either way.
it('guesses a temperature by its rise above the air', () => {
  const [low, high] = guessedBand(343.15, 283.15);
  expect(low).toBeCloseTo(313.15, 9);
  expect(high).toBeCloseTo(373.15, 9);
  expect(guessedBand(10)).toEqual([5, 15]);
});

describe('an open end is told in words', () => {
  const form = (id: string, quantity: 'temperature' | 'time', bears = {}): MeasureForm => ({
    ...bears,
    id,
    label: id,
    sheet: 'heat',
    quantity,
    better: 'less',
    how: 'By balance.',
    source: 'none',
  });
  const forms = [form('winding', 'temperature', { bears: 513.15 }), form('time-to-limit', 'time')];
  const nominal = { winding: 343.15, 'time-to-limit': 40 };
  const measured = (raised: Numbers) =>
    bandedMeasures(forms, nominal, [{ input: 'drag', trust: 'inferred', raised }], (state) => state, 283.15);

  it('of a winding that runs away, and of a motor never too hot', () => {
    const [winding, time] = measured({
      winding: Number.POSITIVE_INFINITY,
      'time-to-limit': Number.POSITIVE_INFINITY,
    });
    expect(winding?.open).toBe('never settles in 1 of 1 states of doubt');
    expect(winding?.band[0]).toBeGreaterThan(283.15);
    expect(winding?.how).toContain('drag a step up');
    expect(time?.open).toMatch(/^never too hot/);
  });

  it('of what cannot be flown then', () => {
    for (const { open } of measured({})) expect(open).toMatch(/^cannot be flown/);
  });

  it('and not where there is none', () => {
    for (const measure of measured({ winding: 350, 'time-to-limit': 30 }))
      expect(measure.open).toBeUndefined();
  });
});
