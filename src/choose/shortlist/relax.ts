import type { Brief } from '../../build/schema/brief.ts';
import type { SearchState } from './state.ts';
import type { Scored, ShortlistQuestion } from './types.ts';

/** What a limit a tenth wider would bring. */
export interface Relaxed {
  readonly limit: string;
  /** The best then. */
  readonly best?: Scored;
  /** Of its standing over the best now. */
  readonly gain: number;
  /** How many of the list would be new. */
  readonly entersList: number;
}

/** One limit a tenth wider, all else as asked. */
export interface Relaxation {
  readonly limit: string;
  readonly brief: Brief;
  readonly question: ShortlistQuestion;
}

/** Every limit of brief and question by itself a tenth wider. The front is left out: only the list is asked. */
export function relaxationsOf(brief: Brief, asked: ShortlistQuestion): readonly Relaxation[] {
  const question: ShortlistQuestion = { ...asked, front: [] };
  const tries: Relaxation[] = [];
  if (brief.budget !== undefined) {
    const budget = { ...brief.budget, amount: 1.1 * brief.budget.amount };
    tries.push({ limit: 'budget', brief: { ...brief, budget }, question });
  }
  if (brief.massLimit !== undefined) {
    tries.push({ limit: 'mass-limit', brief: { ...brief, massLimit: 1.1 * brief.massLimit }, question });
  }
  for (const [index, limit] of question.limits.entries()) {
    const wider = {
      ...limit,
      ...(limit.most === undefined ? {} : { most: 1.1 * limit.most }),
      ...(limit.least === undefined ? {} : { least: 0.9 * limit.least }),
    };
    const limits = question.limits.map((each, at) => (at === index ? wider : each));
    tries.push({ limit: limit.measure, brief, question: { ...question, limits } });
  }
  return tries;
}

/** What a search with one limit wider found over the search as asked. */
export function relaxedBy(limit: string, wider: SearchState, asked: SearchState): Relaxed {
  const [best] = wider.top;
  return {
    limit,
    ...(best === undefined ? {} : { best }),
    gain: (best?.standing ?? 0) - (asked.top[0]?.standing ?? 0),
    entersList: wider.top.filter(({ key }) => asked.top.every((known) => known.key !== key)).length,
  };
}
