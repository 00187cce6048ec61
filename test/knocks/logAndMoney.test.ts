import { expect, it } from 'vitest';
import { charging } from '../../src/knocks/charging.ts';
import { judgeCrashLog } from '../../src/knocks/crashLog.ts';
import { firstFlightCost } from '../../src/knocks/firstFlightCost.ts';
import { forecastKnocks } from '../../src/knocks/forecastKnocks.ts';
import type { CostLine } from '../../src/knocks/types.ts';
import { beginnerPlan, plainPlan } from './plans.ts';

it('judges an even pilot by the binomial tails', () => {
  const { learning } = plainPlan(0.3, 0, 10);
  const judged = judgeCrashLog(learning, { flights: 10, crashedOn: [1, 2, 4, 5, 7, 8] });
  // Binomial(10, 0.3) tables: P(X >= 6) = 0.0473, P(X <= 6) = 0.9894.
  expect(Math.abs(judged.crashes.atLeast - 0.0473)).toBeLessThan(6e-5);
  expect(Math.abs(judged.crashes.atMost - 0.9894)).toBeLessThan(6e-5);
  expect(judged.crashes.twoSided).toBeCloseTo(2 * judged.crashes.atLeast, 12);
  expect(judged.crashes.forecast).toBeCloseTo(3, 9);
  expect(judged.logLikelihood).toBeCloseTo(6 * Math.log(0.3) + 4 * Math.log(0.7), 9);
  expect(judged.pilotFactor.mean).toBeGreaterThan(1);
});

it('updates the pilot as gamma and Poisson do', () => {
  // Small chances: posterior gamma(shape + crashes, shape + expected), mean (3 + 6) / (3 + 2).
  const { learning } = plainPlan(0.001, 0, 2000);
  const crashedOn = [100, 300, 350, 700, 1500, 1900];
  const judged = judgeCrashLog({ ...learning, pilotShape: 3 }, { flights: 2000, crashedOn });
  expect(Math.abs(judged.pilotFactor.mean - 9 / 5)).toBeLessThan(0.01);
  // Gamma with shape 9: 10th and 90th percentile of chi-squared with 18 degrees, 10.865 and 25.989, over 2 x 5.
  expect(Math.abs(judged.pilotFactor.p10 - 1.0865)).toBeLessThan(0.05);
  expect(Math.abs(judged.pilotFactor.p90 - 2.5989)).toBeLessThan(0.1);
});

it('finds the forecast median unsurprising and ten times it surprising, in money and parts', () => {
  const forecast = forecastKnocks(beginnerPlan, 6);
  const log = (money: number, arms: number) => ({
    flights: 30,
    crashedOn: [2, 3, 5, 9, 12, 14, 18, 22, 26, 29],
    money,
    broken: { arm: arms },
  });
  const { learning } = beginnerPlan;
  const usual = judgeCrashLog(learning, log(forecast.money.p50, 2), forecast);
  expect(usual.money?.twoSided).toBeGreaterThan(0.9);
  const dear = judgeCrashLog(learning, log(10 * forecast.money.p50, 30), forecast);
  expect(dear.money?.twoSided).toBeLessThan(0.01);
  expect(dear.broken[0]?.twoSided).toBeLessThan(0.01);
  // Another number of flights cannot be held against the histories.
  expect(judgeCrashLog(learning, { ...log(9, 1), flights: 31 }, forecast).money).toBeUndefined();
});

it('refuses a log that is not in order', () => {
  const { learning } = beginnerPlan;
  expect(() => judgeCrashLog(learning, { flights: 5, crashedOn: [3, 3] })).toThrow(/crashedOn/);
  expect(() => judgeCrashLog(learning, { flights: 5, crashedOn: [6] })).toThrow(/crashedOn/);
});

const line = (id: string, group: CostLine['group'], count: number, unitPrice: number): CostLine => ({
  id,
  what: id,
  group,
  count,
  unitPrice,
  why: 'made up',
});

it('adds up the first flight by hand, less what is owned', () => {
  const lines = [
    line('craft', 'aircraft', 1, 240),
    line('mount', 'missing from the box', 2, 6.5),
    line('goggles', 'kit', 1, 150),
    line('packs', 'kit', 4, 25),
    line('props', 'spares', 5, 3),
    line('post', 'shipping', 1, 12),
  ];
  const cost = firstFlightCost(lines, ['goggles']);
  expect(cost.worth).toBe(530); // 240 + 13 + 150 + 100 + 15 + 12
  expect(cost.toPay).toBe(380);
  expect(cost.byGroup.find(({ group }) => group === 'kit')).toEqual({ group: 'kit', toPay: 100, worth: 250 });
  expect(cost.besideTheAircraft).toBeCloseTo(140 / 380, 12);
  expect(() => firstFlightCost([line('a', 'kit', 1, 1), line('a', 'kit', 1, 1)])).toThrow(/twice/);
  expect(() => firstFlightCost([line('a', 'kit', 1, -1)])).toThrow(/unitPrice/);
});

it('a cheap frame plus what it lacks can cost what a complete one does (common practice, no source)', () => {
  const cheap = firstFlightCost([
    line('frame', 'aircraft', 1, 32),
    line('camera mount', 'missing from the box', 1, 9),
    line('antenna tube', 'missing from the box', 1, 4),
    line('pads and straps', 'missing from the box', 1, 8),
    line('arms', 'spares', 2, 5),
    line('second parcel', 'shipping', 1, 7),
  ]);
  const complete = firstFlightCost([line('frame', 'aircraft', 1, 65), line('arms', 'spares', 2, 0)]);
  expect(cheap.toPay).toBeGreaterThanOrEqual(complete.toPay);
});

it('charging power is S x 4.2 V x Ah x C-rate, and a small charger stretches the time', () => {
  const pack = { cells: 6, capacity: 1.3 * 3600, rate: 1, packs: 5, atOnce: 2, usedShare: 0.8 };
  const free = charging({ ...pack, chargerPower: Number.POSITIVE_INFINITY });
  expect(free.powerOnePack).toBeCloseTo(32.76, 9); // 6 x 4.2 x 1.3
  expect(free.power).toBeCloseTo(65.52, 9);
  expect(free.limitedBy).toBe('rate');
  expect(free.sessionTime).toBeCloseTo(3 * 3600, 6); // three rounds of 0.8 + 0.2 h
  const small = charging({ ...pack, chargerPower: 32.76 });
  expect(small.limitedBy).toBe('charger');
  expect(small.sessionTime).toBeCloseTo(2 * free.sessionTime, 6);
  expect(() => charging({ ...pack, usedShare: 2, chargerPower: 50 })).toThrow(/usedShare/);
});
