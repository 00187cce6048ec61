import type { Craft } from '../../../build/craft.ts';
import type { Brief } from '../../../build/schema/brief.ts';
import { forecastKnocks, meanCost } from '../../../knocks/forecastKnocks.ts';
import type { KnockForecast, KnockPlan } from '../../../knocks/types.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';
import type { HitsReport, KnocksReport } from '../airframeData.ts';
import { hitsOf } from '../hits/hitsPart.ts';
import type { AssessPart, PartContext, PartResult } from '../types.ts';
import { knockFindings, knockMeasures } from './knockMeasures.ts';
import { type Cut, knockPlan } from './plan.ts';
import { seedOf } from './seedOf.ts';

/** Histories of the craft itself, and of the same craft cut the other way. */
const HISTORIES = 10_000;
const OTHER_HISTORIES = 4000;

/** What the brief's flights break and cost. */
export const knocksPart: AssessPart = {
  id: 'knocks',
  label: 'what crashing will cost',
  run: ({ craft, brief }: PartContext): PartResult => {
    const hits = hitsOf(craft, brief);
    if (!hits.ok) return { measures: [], findings: [] };
    const { forecast, report } = knocksOf(craft, brief, hits.value);
    return {
      measures: knockMeasures(craft, forecast, report),
      findings: knockFindings(craft, brief, forecast, report),
      data: { knocks: report },
    };
  },
};

export function knocksOf(
  craft: Craft,
  brief: Brief,
  hits: HitsReport,
  seed = seedOf(craft.build.name),
): { readonly plan: KnockPlan; readonly forecast: KnockForecast; readonly report: KnocksReport } {
  const { plan, unpriced } = knockPlan(craft, brief, hits);
  const forecast = forecastKnocks(plan, seed, HISTORIES);
  const construction: Cut =
    craft.frame.construction === 'one-piece plate' ? 'separate arms' : 'one-piece plate';
  const other = knockPlan(craft, brief, hits, construction);
  const otherwise = meanCost(other.plan, seed, OTHER_HISTORIES);
  // The difference of the same histories, laid on the mean of all of them: one sum of money on every face.
  const moneyAsIs = forecast.money.mean;
  const prices = new Map(plan.parts.map(({ id, price }) => [id, price]));
  const { curve } = forecast;
  return {
    plan,
    forecast,
    report: {
      flights: plan.flights,
      histories: HISTORIES,
      seed,
      curve: { mean: [...curve.mean], p10: [...curve.p10], p90: [...curve.p90] },
      parts: forecast.parts.map(({ id, broken, money }) => ({
        id,
        price: prices.get(id) ?? 0,
        broken: broken.mean,
        p90: broken.p90,
        money,
      })),
      otherCut: {
        construction,
        price: other.structure.price,
        priceInferred: other.structure.inferred,
        money: moneyAsIs + otherwise.money - mean(forecast.each.money.subarray(0, OTHER_HISTORIES)),
        moneyAsIs,
        benchTime: otherwise.benchTime,
      },
      benchTime: forecast.benchTime.mean,
      unpriced,
    },
  };
}

const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The forecast of a craft with everything it leans on, for the command line. */
export function forecastOf(craft: Craft, brief: Brief, seed?: number): Outcome<ReturnType<typeof knocksOf>> {
  const hits = hitsOf(craft, brief);
  return hits.ok ? solved(knocksOf(craft, brief, hits.value, seed)) : hits;
}
