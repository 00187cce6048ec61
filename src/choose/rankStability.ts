import type { DrawnBuilds } from './drawBuilds.ts';
import type { SoftWant } from './shortlist/softWants.ts';
import { orderOf } from './standing.ts';

/** How sure an order is. */
export interface RankStability {
  readonly draws: number;
  /** One a build, in the order given: share of the draws in which it comes first, second, ... */
  readonly places: readonly (readonly number[])[];
  /** Shares of draws are themselves known to this, one standard error of a half. */
  readonly error: number;
}

/** In how many draws each of some builds comes first, second and so on: the drawing is done by `drawBuilds`. */
export function rankStability(
  { draws }: DrawnBuilds,
  wants: readonly SoftWant[],
  riskCost?: number,
): RankStability {
  const count = draws[0]?.length ?? 0;
  const counts = Array.from({ length: count }, () => new Float64Array(count));
  for (const drawn of draws) {
    for (const [place, index] of orderOf(drawn, wants, riskCost).entries()) {
      const row = counts[index];
      if (row !== undefined) row[place] = (row[place] ?? 0) + 1;
    }
  }
  return {
    draws: draws.length,
    places: counts.map((row) => Array.from(row, (each) => each / draws.length)),
    error: 0.5 / Math.sqrt(draws.length),
  };
}
