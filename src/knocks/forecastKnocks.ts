import { simulateKnocks } from './simulateKnocks.ts';
import { spreadInPlace, spreadOf, spreadOfCounts } from './spread.ts';
import type { KnockForecast, KnockPlan } from './types.ts';

/** Mean and percentiles of `simulateKnocks`, with the same arguments. */
export function forecastKnocks(plan: KnockPlan, seed: number, histories = 10_000): KnockForecast {
  const { flights, parts } = plan;
  const { crashes, orders, lost, broken, waiting, spent } = simulateKnocks(plan, seed, histories);
  const curve = {
    mean: new Float64Array(flights),
    p10: new Float64Array(flights),
    p90: new Float64Array(flights),
  };
  const money = spent.slice((flights - 1) * histories);
  for (let flight = 0; flight < flights; flight++) {
    const { mean, p10, p90 } = spreadInPlace(spent.subarray(flight * histories, (flight + 1) * histories));
    curve.mean[flight] = mean;
    curve.p10[flight] = p10;
    curve.p90[flight] = p90;
  }
  const benchTime = new Float64Array(histories);
  const ofParts = parts.map((part, column) => {
    const counts = new Uint16Array(histories);
    for (let history = 0; history < histories; history++) {
      const count = broken[history * parts.length + column] as number;
      counts[history] = count;
      benchTime[history] = (benchTime[history] as number) + count * part.benchTime;
    }
    const spread = spreadOfCounts(counts);
    return { id: part.id, broken: spread, money: spread.mean * part.price };
  });
  let lostOnce = 0;
  for (const count of lost) if (count > 0) lostOnce++;
  return {
    histories,
    flights,
    crashes: spreadOfCounts(crashes),
    money: spreadOf(money),
    orders: spreadOfCounts(orders),
    daysWaiting: spreadOf(waiting),
    flightsLost: spreadOf(waiting.map((days) => days * plan.flightsPerDay)),
    benchTime: spreadOf(benchTime),
    parts: ofParts,
    lossChance: lostOnce / histories,
    curve,
    each: { crashes, money, daysWaiting: waiting, broken },
  };
}

/** Mean money and bench time [s] of the same histories alone, quicker. */
export function meanCost(
  plan: KnockPlan,
  seed: number,
  histories: number,
): { readonly money: number; readonly benchTime: number } {
  const { spent, broken } = simulateKnocks(plan, seed, histories);
  const money = spent.subarray((plan.flights - 1) * histories).reduce((sum, value) => sum + value, 0);
  let benchTime = 0;
  for (const [cell, count] of broken.entries()) {
    if (count > 0) benchTime += count * (plan.parts[cell % plan.parts.length]?.benchTime ?? 0);
  }
  return { money: money / histories, benchTime: benchTime / histories };
}
