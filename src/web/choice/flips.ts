import type { SoftWant } from '../../choose/shortlist/softWants.ts';
import { type Candidate, orderOf } from '../../choose/standing.ts';

/** A change of one weight that puts another candidate in the lead. */
export interface Flip {
  readonly measure: string;
  readonly from: number;
  readonly to: number;
  /** Index of the candidate that would lead. */
  readonly leader: number;
}

export const HEAVIEST = 10;
const STEP = 0.5;

/**
 * For each want the nearest weight, others left as they are, at which another candidate leads. Wants
 * that never turn the order are left out; nearest first.
 */
export function flips(candidates: readonly Candidate[], wants: readonly SoftWant[]): readonly Flip[] {
  const leaderWith = (weights: readonly SoftWant[]) => orderOf(candidates, weights)[0];
  const now = leaderWith(wants);
  const found = wants.flatMap(({ measure, weight }): Flip[] => {
    for (let away = STEP; away <= HEAVIEST; away += STEP) {
      for (const to of [weight + away, weight - away]) {
        if (to < 0 || to > HEAVIEST) continue;
        const leader = leaderWith(
          wants.map((want) => (want.measure === measure ? { ...want, weight: to } : want)),
        );
        if (leader !== undefined && leader !== now) return [{ measure, from: weight, to, leader }];
      }
    }
    return [];
  });
  return found.toSorted((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from));
}
