import { styleOf } from '../../assess/prepareFlight.ts';
import type { PreparedRotors } from '../../assess/prepareRotors.ts';
import type { Style } from '../../flight/types.ts';
import { type EvaluationContext, evaluationContext } from './evaluate.ts';
import type { PreparedSearch } from './prepare.ts';
import type { SearchContext } from './types.ts';

/** All that a worker holds between tasks. */
export interface Searcher {
  readonly prepared: PreparedSearch;
  readonly context: EvaluationContext;
  readonly style: Style;
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
  };
}
