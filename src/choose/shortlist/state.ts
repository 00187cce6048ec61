import { type Archive, costsOf, EMPTY_ARCHIVE, mergeFront, mergeTop } from './archive.ts';
import { addCounts, NO_COUNTS, type SearchCounts } from './counts.ts';
import { type PreparedSearch, stopAt } from './prepare.ts';
import type { Bar, TaskResult } from './runTask.ts';
import { sizesOf } from './tables.ts';
import type { Scored } from './types.ts';

/**
 * How far a search has come: plain JSON, so that a file of it resumes the search after any end. Tasks
 * that were under way are done again; as merging does not hang on order, the shortlist is the same.
 */
export interface SearchState extends Archive {
  readonly format: 'quadwright-search-1';
  /** Of question, brief and shelf: a checkpoint of another search is refused. */
  readonly fingerprint: string;
  /** Indices into the tasks, sorted. */
  readonly done: readonly number[];
  readonly counts: SearchCounts;
}

/** A search not begun, with what pairs of frame and motor take out beforehand already counted. */
export function startState(prepared: PreparedSearch, fingerprint: string): SearchState {
  const sizes = sizesOf(prepared.question.space);
  const below = sizes.propeller * sizes.pack * sizes.electronics * sizes.camera;
  const excluded: Record<string, number> = {};
  for (let frame = 0; frame < sizes.frame; frame++) {
    for (let motor = 0; motor < sizes.motor; motor++) {
      const stop = prepared.tables.flatMap((table) => stopAt(table, { frame, motor }) ?? [])[0];
      const because = prepared.crafts[frame] === undefined ? 'no aircraft' : stop;
      if (because !== undefined) excluded[because] = (excluded[because] ?? 0) + below;
    }
  }
  return {
    format: 'quadwright-search-1',
    fingerprint,
    ...EMPTY_ARCHIVE,
    done: [],
    counts: addCounts(NO_COUNTS, { ...NO_COUNTS, excluded }),
  };
}

/** The state with one task's findings in it. */
export function takeResult(
  state: SearchState,
  task: number,
  result: TaskResult,
  { question }: PreparedSearch,
): SearchState {
  return {
    ...state,
    top: mergeTop(state.top, result.top, question.top),
    front: mergeFront(state.front, result.front, question.front),
    done: [...state.done, task].sort((a, b) => a - b),
    counts: addCounts(state.counts, result.counts),
  };
}

/** A state read from JSON, which knows no Infinity: heat never reached comes as null there. */
export function revived(state: SearchState): SearchState {
  const each = (scored: Scored): Scored => ({
    ...scored,
    values: Object.fromEntries(
      Object.entries(scored.values as Readonly<Record<string, number | null>>).map(([id, value]) => [
        id,
        value ?? (id === 'full-throttle-time-to-limit' ? Number.POSITIVE_INFINITY : Number.NaN),
      ]),
    ),
  });
  return { ...state, top: state.top.map(each), front: state.front.map(each) };
}

/** What the next task must beat. */
export function barOf(state: SearchState, { question }: PreparedSearch): Bar {
  return {
    standing: state.top[question.top - 1]?.standing ?? Number.NEGATIVE_INFINITY,
    front: state.front.map((scored) => costsOf(scored, question.front)),
  };
}

/**
 * A short name for whatever a result hangs on (FNV-1a, 64 bits in two halves): no secret, only a guard
 * against resuming with another brief or shelf.
 */
export function fingerprintOf(...texts: readonly string[]): string {
  let [low, high] = [0x811c9dc5, 0xcbf29ce4];
  for (const text of texts) {
    for (let i = 0; i < text.length; i++) {
      low = Math.imul(low ^ text.charCodeAt(i), 0x01000193);
      high = Math.imul(high ^ text.charCodeAt(i) ^ (low >>> 7), 0x01000193);
    }
    low = Math.imul(low ^ 0x1f, 0x01000193);
  }
  return [high, low].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}
