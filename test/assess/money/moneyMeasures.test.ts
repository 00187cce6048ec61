import { describe, expect, it } from 'vitest';
import { costLines } from '../../../src/assess/money/costLines.ts';
import { moneyFindings, moneyMeasures, moneyReport } from '../../../src/assess/money/moneyMeasures.ts';
import type { Brief } from '../../../src/build/schema/brief.ts';
import { contextOf } from '../fit/variations.ts';

function moneyOf(brief: (brief: Brief) => void = () => {}) {
  const context = contextOf({ brief });
  const report = moneyReport(costLines(context.craft, context.brief, context.shelf), context.brief);
  const measures = moneyMeasures(report);
  return { report, measures, findings: moneyFindings(report, measures, context.brief) };
}

const budget =
  (amount: number, currency = 'GBP') =>
  (brief: Brief) => {
    brief.budget = { amount, currency };
  };

describe('measures of money', () => {
  it('split the whole into its groups', () => {
    const { measures } = moneyOf((brief) => {
      brief.shippingPerOrder = { amount: 4.5, currency: 'GBP' };
    });
    const value = (id: string) => measures.find((each) => each.id === id)?.value ?? Number.NaN;
    const groups = ['aircraft-cost', 'missing-cost', 'kit-cost', 'spares-cost', 'shipping-cost'];
    const sum = groups.reduce((total, id) => total + value(id), 0);
    expect(value('first-flight-cost')).toBeCloseTo(sum, 9);
    expect(value('shipping-cost')).toBeCloseTo(6 * 4.5, 9);
  });

  // Independent spreads of 8 % add as squares: far less than 8 % of the sum, never more.
  it('have a band narrower than 8 % of the whole', () => {
    const cost = moneyOf().measures.find(({ id }) => id === 'first-flight-cost');
    const half = ((cost?.band[1] ?? 0) - (cost?.band[0] ?? 0)) / 2;
    expect(half).toBeGreaterThan(0);
    expect(half).toBeLessThan(1.29 * 0.08 * (cost?.value ?? 0));
  });
});

describe('findings of money', () => {
  const found = (brief: (brief: Brief) => void) =>
    moneyOf(brief).findings.map(({ id, severity }) => [id, severity]);

  // To the first flight it is 1216.20.
  it('hold the budget against the sum', () => {
    expect(found(budget(1217))).toEqual([]);
    expect(found(budget(1216))).toEqual([['over-budget', 'risk']]);
    expect(found(budget(900))).toEqual([['over-budget', 'stop']]);
  });

  it('say when the budget is in other money', () => {
    expect(found(budget(2000, 'EUR'))).toEqual([['budget-currency', 'note']]);
  });

  it('say what the sum leaves out', () => {
    expect(
      found((brief) => {
        brief.currency = 'EUR';
        delete brief.budget;
      }),
    ).toEqual([['unpriced', 'risk']]);
  });
});
