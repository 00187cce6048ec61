import { checkPlan } from './checkPlan.ts';
import { crashHazard } from './learningCurve.ts';
import { normalShare } from './normalShare.ts';
import { type RandomSource, randomSource } from './randomSource.ts';
import type { BreakablePart, HitKind, KnockPlan } from './types.ts';

/** Histories of chance, one value each unless told otherwise. */
export interface KnockHistories {
  readonly crashes: Uint16Array;
  readonly orders: Uint16Array;
  /** How often the aircraft was not found. */
  readonly lost: Uint16Array;
  /** Row by history, column by part. */
  readonly broken: Uint16Array;
  /** [days] */
  readonly waiting: Float64Array;
  /** Money spent by the end of each flight: row by flight, so that each flight's percentiles lie together. */
  readonly spent: Float64Array;
}

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
export function simulateKnocks(plan: KnockPlan, seed: number, histories: number): KnockHistories {
  checkPlan(plan, histories);
  const { flights, parts } = plan;
  const crashing = randomSource(seed, 0);
  const breaking = randomSource(seed, 1);
  const hits = readyHits(plan);
  const below = normalTable();
  const hazards = Float64Array.from({ length: flights }, (_, flight) => crashHazard(plan.learning, flight));
  const crashes = new Uint16Array(histories);
  const orders = new Uint16Array(histories);
  const lost = new Uint16Array(histories);
  const broken = new Uint16Array(histories * parts.length);
  const waiting = new Float64Array(histories);
  const spent = new Float64Array(flights * histories);
  const spares = Int32Array.from(parts, (part) => part.spares);
  const stock = new Int32Array(parts.length);
  const lossShare = plan.loss?.share ?? 0;
  const fastest = Math.log(plan.topSpeed);
  const block = new Float64Array(flights * BLOCK);

  for (let history = 0; history < histories; history++) {
    const shape = plan.learning.pilotShape;
    const factor = shape === undefined ? 1 : crashing.gamma(shape);
    stock.set(spares);
    let money = 0;
    for (let flight = 0; flight < flights; flight++) {
      const hazard = factor * (hazards[flight] as number);
      const chance = crashing.uniform();
      // 1 - exp(-x) is never over x, which settles most flights.
      if (chance < hazard && chance < 1 - Math.exp(-hazard)) {
        crashes[history] = (crashes[history] as number) + 1;
        money += crash(history);
      }
      block[flight * BLOCK + (history % BLOCK)] = money;
    }
    if ((history + 1) % BLOCK === 0 || history + 1 === histories)
      hand(history - (history % BLOCK), history + 1);
  }
  return { crashes, orders, lost, broken, waiting, spent };

  /** A few histories at a time into their rows: one by one each money would lie far from the one before. */
  function hand(from: number, to: number): void {
    for (let flight = 0; flight < flights; flight++) {
      spent.set(block.subarray(flight * BLOCK, flight * BLOCK + to - from), flight * histories + from);
    }
  }

  /** One crash; returns the money it costs. */
  function crash(history: number): number {
    const { logSpeed: usual, logDeviation, reaches } = pickHit(hits, crashing.uniform());
    const wild = usual + logDeviation * crashing.normal();
    const isLost = crashing.uniform() < lossShare;
    if (isLost) {
      lost[history] = (lost[history] as number) + 1;
      waiting[history] = (waiting[history] as number) + (plan.loss?.days ?? 0);
      return plan.loss?.price ?? 0;
    }
    const logSpeed = Math.min(wild, fastest);
    let money = 0;
    let missing = false;
    for (let i = 0; i < reaches.part.length; i++) {
      const z = (logSpeed - (reaches.logMedian[i] as number)) / (reaches.logDeviation[i] as number);
      if (z <= -TABLE_REACH) continue;
      const count = brokenOf(reaches.reached[i] as number, below(z), breaking);
      if (count === 0) continue;
      const part = reaches.part[i] as number;
      const cell = history * parts.length + part;
      broken[cell] = (broken[cell] as number) + count;
      const left = (stock[part] as number) - count;
      stock[part] = left;
      missing ||= left < 0;
      money += count * (reaches.price[i] as number);
    }
    if (!missing) return money;
    stock.set(spares);
    orders[history] = (orders[history] as number) + 1;
    waiting[history] = (waiting[history] as number) + plan.order.days;
    return money + plan.order.shipping;
  }
}

/** Histories written down together. */
const BLOCK = 64;
/** Beyond this many deviations nothing breaks, or everything: one part in a thousand million. */
const TABLE_REACH = 6;
const TABLE_STEPS = 256;

/** `normalShare` from a table, straight between its rows: within 5e-7. */
function normalTable(): (z: number) => number {
  const table = Float64Array.from({ length: 2 * TABLE_REACH * TABLE_STEPS + 2 }, (_, i) =>
    normalShare(i / TABLE_STEPS - TABLE_REACH),
  );
  return (z) => {
    if (z >= TABLE_REACH) return 1;
    const at = (z + TABLE_REACH) * TABLE_STEPS;
    const row = Math.floor(at);
    const low = table[row] as number;
    return low + (at - row) * ((table[row + 1] as number) - low);
  };
}

interface ReadyHit extends HitKind {
  readonly logSpeed: number;
  /** Cumulative share of the kinds up to and with this one. */
  readonly upTo: number;
  /** What it may break, one entry a part. */
  readonly reaches: {
    readonly part: Int32Array;
    readonly logMedian: Float64Array;
    readonly logDeviation: Float64Array;
    readonly reached: Int32Array;
    readonly price: Float64Array;
  };
}

function readyHits({ hits, parts }: KnockPlan): ReadyHit[] {
  const total = hits.reduce((sum, { weight }) => sum + weight, 0);
  let upTo = 0;
  return hits.map((hit) => {
    upTo += hit.weight / total;
    const list = parts.flatMap((part, i) => reachesOf(part, i, hit.id));
    return {
      ...hit,
      logSpeed: Math.log(hit.medianSpeed),
      upTo,
      reaches: {
        part: Int32Array.from(list, ({ part }) => part),
        logMedian: Float64Array.from(list, ({ median }) => Math.log(median)),
        // Without scatter the step at the median stays finite.
        logDeviation: Float64Array.from(list, ({ logDeviation }) => Math.max(logDeviation, 1e-9)),
        reached: Int32Array.from(list, ({ reached }) => reached),
        price: Float64Array.from(list, ({ price }) => price),
      },
    };
  });
}

const reachesOf = ({ breaks, price }: BreakablePart, part: number, hit: string) =>
  breaks.filter((speed) => speed.hit === hit).map((speed) => ({ ...speed, part, price }));

function pickHit(hits: readonly ReadyHit[], at: number): ReadyHit {
  for (const hit of hits) if (at < hit.upTo) return hit;
  return hits[hits.length - 1] as ReadyHit;
}

function brokenOf(reached: number, chance: number, source: RandomSource): number {
  let count = 0;
  for (let i = 0; i < reached; i++) if (source.uniform() < chance) count++;
  return count;
}
