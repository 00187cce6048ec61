import { styleOf } from '../../assess/prepareFlight.ts';
import type { PreparedRotors } from '../../assess/prepareRotors.ts';
import type { Style } from '../../flight/types.ts';
import { type EvaluationContext, evaluationContext } from './evaluate.ts';
import type { PreparedSearch } from './prepare.ts';
import type { SearchContext } from './types.ts';
import { type WakeRelief, wakeReliefOf } from './wakeRelief.ts';

/** All that a worker holds between tasks. */
export interface Searcher {
  readonly prepared: PreparedSearch;
  readonly context: EvaluationContext;
  readonly style: Style;
  /** By propeller's id. */
  readonly wakeReliefs: ReadonlyMap<string, WakeRelief>;
}

export function searcherOf(
  prepared: PreparedSearch,
  context: SearchContext,
  rotors: PreparedRotors,
): Searcher {
  return {
    prepared,
    context: evaluationContext({ ...context, rotors }, prepared.air),
    style: styleOf(context.brief),
    wakeReliefs: new Map([...rotors].map(([id, rotor]) => [id, wakeReliefOf(rotor, prepared.air)])),
  };
}
