import { beats } from '../pareto.ts';
import { FRONT_MEASURES } from './bounds.ts';
import { byStanding, type Scored } from './types.ts';

/** The best so far, and the front so far. Merging in any order gives the same. */
export interface Archive {
  /** One of each frame, motor, propeller and pack, best first. */
  readonly top: readonly Scored[];
  readonly front: readonly Scored[];
}

export const EMPTY_ARCHIVE: Archive = { top: [], front: [] };

/** Same frame, motor, propeller and pack: the same aircraft to a newcomer, whatever boards are on it. */
export const groupOf = ({ choice }: Scored): string =>
  [choice.frame, choice.motor, choice.propeller, choice.pack].join('|');

/** The best `count` of both, one a group; a total order, so nothing hangs on which came first. */
export function mergeTop(a: readonly Scored[], b: readonly Scored[], count: number): readonly Scored[] {
  const seen = new Set<string>();
  const best: Scored[] = [];
  for (const scored of [...a, ...b].sort(byStanding)) {
    const group = groupOf(scored);
    if (seen.has(group)) continue;
    seen.add(group);
    best.push(scored);
    if (best.length === count) break;
  }
  return best;
}

/** A candidate as costs on the front's measures. */
export const costsOf = (scored: Scored, front: readonly string[]): readonly number[] =>
  front.map((measure) => {
    const value = scored.values[measure] ?? Number.NaN;
    return FRONT_MEASURES[measure] === 'less' ? value : -value;
  });

/** What no other beats; of equals on every measure only the first by key stays. */
export function mergeFront(
  a: readonly Scored[],
  b: readonly Scored[],
  front: readonly string[],
): readonly Scored[] {
  if (front.length === 0) return [];
  const all = [...a, ...b]
    .map((scored) => ({ scored, costs: costsOf(scored, front) }))
    .sort((x, y) => (x.scored.key < y.scored.key ? -1 : x.scored.key > y.scored.key ? 1 : 0));
  return all
    .filter(
      ({ costs }, index) =>
        !all.some((other) => beats(other.costs, costs)) &&
        !all.slice(0, index).some((other) => other.costs.every((cost, column) => cost === costs[column])),
    )
    .map(({ scored }) => scored);
}

/** Whether something already found beats the best that could be found, so that looking is in vain. */
export function frontIsAhead(front: readonly (readonly number[])[], bound: readonly number[]): boolean {
  return front.some((costs) => beats(costs, bound));
}
