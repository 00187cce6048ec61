import { type AssessContext, assess } from '../assess/assess.ts';
import type { Build } from '../build/schema/build.ts';
import { type Seat, swapsBetween } from './swaps.ts';

/** How much of the difference between two builds one seat makes. */
export interface Cause {
  readonly seat: Seat;
  /** Difference it makes to each measure, SI, by id. */
  readonly effects: Readonly<Record<string, number>>;
}

/**
 * What makes one build differ from another: its seats are exchanged one after the other, frame first (`swapsBetween`), and
 * each step is assessed anew. The effects of all causes add up to the whole difference exactly;
 * how a shared effect is split between two seats hangs on the order, which is always that of `SEATS`.
 * A step whose craft has no value for a measure leaves that measure out of the step's effects.
 *
 * @returns causes from `from` to `to`, only seats that differ; undefined when a step cannot be resolved
 */
export function causes(from: Build, to: Build, context: AssessContext): readonly Cause[] | undefined {
  const list: Cause[] = [];
  let before = valuesOf(from, context);
  for (const { seat, build } of swapsBetween(from, to)) {
    const after = valuesOf(build, context);
    if (before === undefined || after === undefined) return undefined;
    const effects: Record<string, number> = {};
    for (const [id, value] of after) {
      const earlier = before.get(id);
      if (earlier !== undefined && value !== earlier) effects[id] = value - earlier;
    }
    list.push({ seat, effects });
    before = after;
  }
  return list;
}

function valuesOf(build: Build, context: AssessContext): ReadonlyMap<string, number> | undefined {
  const assessed = assess(build, context);
  return assessed.ok
    ? new Map(assessed.value.measures.map((measure) => [measure.id, measure.value]))
    : undefined;
}
