import { checkPlan } from './checkPlan.ts';
import { crashHazard } from './learningCurve.ts';
import { normalShare } from './normalShare.ts';
import { type RandomSource, randomSource } from './randomSource.ts';
import { spreadOf, spreadOfCounts } from './spread.ts';
import type { BreakablePart, HitKind, KnockForecast, KnockPlan } from './types.ts';

/**
 * What a run of flights costs in parts, money and waiting, as many histories of chance. In each flight
 * the pilot crashes or not by the learning curve; a crash is of one kind at one speed; every part it
 * reaches breaks or not by its breaking speed and scatter. A spare is fitted if there is one; if any is
 * missing one order is placed for it and for all spares used so far, and flying waits for it.
 * Money counts what breaks at its price, plus shipping an order; spares held at the start were paid for
 * before (`firstFlightCost`). The same seed crashes the same way whatever the parts are, so
 * that two frames are compared over the same crashes.
 *
 * @param seed whole number
 * @param histories whole number >= 1; 10 000 gives a mean to about 1 % of its deviation
 * @throws RangeError for a plan out of range
 */
export function forecastKnocks(plan: KnockPlan, seed: number, histories = 10_000): KnockForecast {
  checkPlan(plan, histories);
  const { flights, parts } = plan;
  const crashing = randomSource(seed, 0);
  const breaking = randomSource(seed, 1);
  const hits = readyHits(plan);
  const hazards = Float64Array.from({ length: flights }, (_, flight) => crashHazard(plan.learning, flight));
  const crashes = new Uint16Array(histories);
  const orders = new Uint16Array(histories);
  const lost = new Uint16Array(histories);
  const broken = new Uint16Array(histories * parts.length);
  const waiting = new Float64Array(histories);
  // Row by flight, so that each flight's percentiles lie together.
  const spent = new Float64Array(flights * histories);
  const stock = new Int32Array(parts.length);

  for (let history = 0; history < histories; history++) {
    const shape = plan.learning.pilotShape;
    const factor = shape === undefined ? 1 : crashing.gamma(shape);
    for (let part = 0; part < parts.length; part++) stock[part] = parts[part]?.spares ?? 0;
    let money = 0;
    for (let flight = 0; flight < flights; flight++) {
      const hazard = factor * (hazards[flight] as number);
      const chance = crashing.uniform();
      // 1 - exp(-x) is never over x, which settles most flights.
      if (chance < hazard && chance < 1 - Math.exp(-hazard)) {
        crashes[history] = (crashes[history] as number) + 1;
        money += crash(history);
      }
      spent[flight * histories + history] = money;
    }
  }
  return summary();

  /** One crash; returns the money it costs. */
  function crash(history: number): number {
    const hit = pickHit(hits, crashing.uniform());
    const wild = hit.medianSpeed * Math.exp(hit.logDeviation * crashing.normal());
    const isLost = crashing.uniform() < (plan.loss?.share ?? 0);
    if (isLost) {
      lost[history] = (lost[history] as number) + 1;
      waiting[history] = (waiting[history] as number) + (plan.loss?.days ?? 0);
      return plan.loss?.price ?? 0;
    }
    const logSpeed = Math.log(Math.min(wild, plan.topSpeed));
    let money = 0;
    let missing = false;
    for (const { part, logMedian, logDeviation, reached, price } of hit.reaches) {
      const count = brokenOf(reached, (logSpeed - logMedian) / logDeviation, breaking);
      if (count === 0) continue;
      const cell = history * parts.length + part;
      broken[cell] = (broken[cell] as number) + count;
      stock[part] = (stock[part] as number) - count;
      missing ||= (stock[part] as number) < 0;
      money += count * price;
    }
    if (!missing) return money;
    for (let part = 0; part < parts.length; part++) stock[part] = parts[part]?.spares ?? 0;
    orders[history] = (orders[history] as number) + 1;
    waiting[history] = (waiting[history] as number) + plan.order.days;
    return money + plan.order.shipping;
  }

  function summary(): KnockForecast {
    const curve = {
      mean: new Float64Array(flights),
      p10: new Float64Array(flights),
      p90: new Float64Array(flights),
    };
    for (let flight = 0; flight < flights; flight++) {
      const { mean, p10, p90 } = spreadOf(spent.subarray(flight * histories, (flight + 1) * histories));
      curve.mean[flight] = mean;
      curve.p10[flight] = p10;
      curve.p90[flight] = p90;
    }
    const money = spent.slice((flights - 1) * histories);
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
}

interface ReadyHit extends HitKind {
  /** Cumulative share of the kinds up to and with this one. */
  readonly upTo: number;
  readonly reaches: readonly {
    readonly part: number;
    readonly logMedian: number;
    readonly logDeviation: number;
    readonly reached: number;
    readonly price: number;
  }[];
}

function readyHits({ hits, parts }: KnockPlan): ReadyHit[] {
  const total = hits.reduce((sum, { weight }) => sum + weight, 0);
  let upTo = 0;
  return hits.map((hit) => {
    upTo += hit.weight / total;
    return { ...hit, upTo, reaches: parts.flatMap((part, i) => reachesOf(part, i, hit.id)) };
  });
}

function reachesOf(part: BreakablePart, index: number, hit: string) {
  return part.breaks
    .filter((speed) => speed.hit === hit)
    .map(({ median, logDeviation, reached }) => ({
      part: index,
      logMedian: Math.log(median),
      // Without scatter the step at the median stays finite.
      logDeviation: Math.max(logDeviation, 1e-9),
      reached,
      price: part.price,
    }));
}

function pickHit(hits: readonly ReadyHit[], at: number): ReadyHit {
  for (const hit of hits) if (at < hit.upTo) return hit;
  return hits[hits.length - 1] as ReadyHit;
}

function brokenOf(reached: number, z: number, source: RandomSource): number {
  const chance = normalShare(z);
  let count = 0;
  for (let i = 0; i < reached; i++) if (source.uniform() < chance) count++;
  return count;
}
