import { type AssessContext, assessCraft } from '../assess/assess.ts';
import type { Assessment } from '../assess/assessment.ts';
import type { Measure } from '../assess/types.ts';
import type { Craft } from '../build/craft.ts';
import { doubtedCraft } from './doubtedCraft.ts';
import { latinHypercube } from './latinHypercube.ts';
import { normalQuantile } from './normalQuantile.ts';

/** How sure an order is. */
export interface RankStability {
  readonly draws: number;
  /** One a build, in the order given: share of the draws in which it comes first, second, ... */
  readonly places: readonly (readonly number[])[];
  /** Shares of draws are themselves known to this, one standard error of a half. */
  readonly error: number;
}

/** One standard deviation of a listed price, relative; as the money bands take it (common practice, no source). */
const PRICE_SPREAD = 0.08;

/**
 * In how many draws each of some builds comes first, second and so on. Every input is drawn within
 * its doubt (Latin hypercube, log-normal); an input that two builds share, such as the same motor, the same
 * price line or the pilot, is drawn once for both: what they have in common cannot turn their order.
 * Findings keep their nominal severity; measures without a doubted figure keep their value.
 *
 * @param orderOf indices of the assessments, the leader first: `compare(...).order`, or a shortlist's standing
 * @param seed whole number; the same seed gives the same shares
 */
export function rankStability(
  crafts: readonly Craft[],
  context: AssessContext,
  orderOf: (drawn: readonly Assessment[]) => readonly number[],
  draws: number,
  seed: number,
): RankStability {
  const assessments = crafts.map((craft) => assessCraft(craft, context));
  const doubted = crafts.map((craft) => doubtedCraft(craft, context));
  const keys = new Map<string, number>();
  const know = (key: string) => keys.set(key, keys.get(key) ?? keys.size);
  for (const each of doubted) {
    if (!each.ok) continue;
    for (const factor of each.value.factors) for (const { key } of factor.inputs) know(key);
  }
  for (const { money } of assessments) for (const line of money.lines) know(priceKey(line.id));

  const sample = latinHypercube(draws, Math.max(keys.size, 1), seed);
  const counts = crafts.map(() => new Float64Array(crafts.length));
  for (let draw = 0; draw < draws; draw++) {
    const normal = (key: string) => normalQuantile(sample[draw * keys.size + (keys.get(key) ?? 0)] as number);
    const drawn = assessments.map((assessment, index): Assessment => {
      const own = doubted[index];
      const figures: Readonly<Record<string, number>> = own?.ok ? own.value.figuresAt(normal) : {};
      const values = { ...figures, 'first-flight-cost': costOf(assessment, normal) };
      return { ...assessment, measures: assessment.measures.map((measure) => moved(measure, values)) };
    });
    for (const [place, index] of orderOf(drawn).entries()) {
      const row = counts[index];
      if (row !== undefined) row[place] = (row[place] ?? 0) + 1;
    }
  }
  return {
    draws,
    places: counts.map((row) => Array.from(row, (count) => count / draws)),
    error: 0.5 / Math.sqrt(draws),
  };
}

const priceKey = (line: string) => `price|${line}`;

const moved = (measure: Measure, values: Readonly<Record<string, number | undefined>>): Measure => {
  const value = values[measure.id];
  return value === undefined ? measure : { ...measure, value };
};

function costOf({ money }: Assessment, normal: (key: string) => number): number {
  return money.lines
    .filter((line) => !line.owned)
    .reduce(
      (sum, line) => sum + line.count * line.unitPrice * Math.exp(PRICE_SPREAD * normal(priceKey(line.id))),
      0,
    );
}
