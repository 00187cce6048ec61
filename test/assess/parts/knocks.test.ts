import { describe, expect, it } from 'vitest';
import { hitsOf } from '../../../src/assess/parts/hits/hitsPart.ts';
import { knocksOf, knocksPart } from '../../../src/assess/parts/knocks/knocksPart.ts';
import { knockPlan } from '../../../src/assess/parts/knocks/plan.ts';
import { seedOf } from '../../../src/assess/parts/knocks/seedOf.ts';
import type { PartContext } from '../../../src/assess/parts/types.ts';
import type { Brief } from '../../../src/build/schema/brief.ts';
import { crashCountChances } from '../../../src/knocks/crashCount.ts';
import { contextOf, DEMOS } from './crafts.ts';

const forecast = ({ craft, brief }: PartContext, change: Partial<Brief> = {}) => {
  const hits = hitsOf(craft, brief);
  if (!hits.ok) throw new Error(hits.reason);
  return knocksOf(craft, { ...brief, ...change }, hits.value);
};
const turnstone = contextOf('first-freestyle/turnstone', {}, false);

describe('the seed of a build', () => {
  it('is FNV-1a of its name: test values of the algorithm’s authors (from memory)', () => {
    expect(seedOf('')).toBe(0x811c9dc5);
    expect(seedOf('a')).toBe(0xe40c292c);
    expect(seedOf('foobar')).toBe(0xbf9cf968);
  });
});

describe('the knocks part', () => {
  it('tells the same twice', () => {
    expect(knocksPart.run(turnstone)).toEqual(knocksPart.run(turnstone));
  });

  it.each(DEMOS)('%s: spent never falls, percentiles lie in order, money adds up', (name) => {
    const context = contextOf(name, {}, false);
    const { forecast: found, report } = forecast(context);
    const { mean, p10, p90 } = report.curve;
    for (let flight = 1; flight < mean.length; flight++) {
      expect(mean[flight]!).toBeGreaterThanOrEqual(mean[flight - 1]!);
      expect(p10[flight]!).toBeLessThanOrEqual(p90[flight]!);
    }
    const parts = report.parts.reduce((sum, { money }) => sum + money, 0);
    const shipping = found.orders.mean * (context.brief.shippingPerOrder?.amount ?? 0);
    expect(parts + shipping).toBeCloseTo(found.money.mean, 6);
    expect(report.unpriced).toEqual([]);
  });

  it('crashes as often as the exact law of the learning curve says', () => {
    const hits = hitsOf(turnstone.craft, turnstone.brief);
    if (!hits.ok) throw new Error(hits.reason);
    const { plan } = knockPlan(turnstone.craft, turnstone.brief, hits.value);
    const law = crashCountChances(plan.learning, plan.flights);
    const expected = law.reduce((sum, chance, count) => sum + count * chance, 0);
    const variance = law.reduce((sum, chance, count) => sum + (count - expected) ** 2 * chance, 0);
    // Four standard errors of 10 000 histories.
    expect(Math.abs(forecast(turnstone).forecast.crashes.mean - expected)).toBeLessThan(
      4 * Math.sqrt(variance / 10_000),
    );
  });

  it('a practised pilot pays less, more flights cost more', () => {
    const novice = forecast(turnstone, { pilot: { flightsFlown: 0, simulatorHours: 0 } });
    const seasoned = forecast(turnstone, { pilot: { flightsFlown: 400, simulatorHours: 50 } });
    expect(seasoned.forecast.money.mean).toBeLessThan(0.6 * novice.forecast.money.mean);
    const twice = forecast(turnstone, { flightsPlanned: 60 });
    expect(twice.forecast.money.mean).toBeGreaterThan(forecast(turnstone).forecast.money.mean);
  });

  it('counts a price without an exchange rate as free, aloud', () => {
    const { report } = forecast(turnstone, { currency: 'EUR' });
    expect(report.unpriced.length).toBeGreaterThan(3);
    const context = { ...turnstone, brief: { ...turnstone.brief, currency: 'EUR' } };
    expect(knocksPart.run(context).findings.some(({ id }) => id === 'knocks-unpriced')).toBe(true);
  });
});
