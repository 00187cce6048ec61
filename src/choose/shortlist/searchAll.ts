import { EMPTY_ARCHIVE } from './archive.ts';
import type { PreparedSearch, SearchTask } from './prepare.ts';
import type { Bar, Promised, TaskResult } from './runTask.ts';
import { barOf, type SearchState, takeResult } from './state.ts';

/** How far it is. */
export interface SearchProgress {
  readonly stage: 'bounding' | 'searching';
  readonly done: number;
  readonly of: number;
}

/** How a search is run: who does a task, how many at once, and who is told. */
export interface SearchRun {
  /** Bounds one task, here or in a worker. */
  readonly promise: (task: SearchTask) => Promised | Promise<Promised>;
  /** Does one task, here or in a worker. */
  readonly run: (task: SearchTask, bar: Bar, promised: Promised) => TaskResult | Promise<TaskResult>;
  /** At once, >= 1. */
  readonly workers: number;
  /** After every task; the state is a checkpoint. */
  readonly onProgress?: (state: SearchState, progress: SearchProgress) => void;
  /** Looked at before every task: true stops after those under way. */
  readonly isCancelled?: () => boolean;
}

/**
 * Does all tasks that a state has not done yet, so many at once, each told the best found so far. The
 * shortlist and the front are the same whatever the number of workers and the order they end in; only how much
 * was left out by bounds may differ.
 *
 * @returns the last state; its `done` is shorter than the tasks when it was cancelled
 */
export async function searchAll(
  prepared: PreparedSearch,
  start: SearchState,
  { promise, run, workers, onProgress, isCancelled = () => false }: SearchRun,
): Promise<SearchState> {
  let state = start;
  const done = new Set(start.done);
  const waiting = prepared.tasks.flatMap((task, index) => (done.has(index) ? [] : [{ task, index }]));
  const each = async <T>(items: readonly T[], work: (item: T) => Promise<void>): Promise<void> => {
    let next = 0;
    const lane = async (): Promise<void> => {
      while (!isCancelled()) {
        const item = items[next++];
        if (item === undefined) return;
        await work(item);
      }
    };
    await Promise.all(Array.from({ length: Math.max(1, workers) }, lane));
  };
  const bounded: { readonly task: SearchTask; readonly index: number; readonly promised: Promised }[] = [];
  await each(waiting, async ({ task, index }) => {
    bounded.push({ task, index, promised: await promise(task) });
    onProgress?.(state, { stage: 'bounding', done: bounded.length, of: waiting.length });
  });
  bounded.sort((a, b) => b.promised.standing - a.promised.standing || a.index - b.index);
  const noFront = prepared.question.front.length === 0;
  await each(bounded, async ({ task, index, promised }) => {
    const bar = barOf(state, prepared);
    const hopeless = noFront && promised.standing < bar.standing;
    const result = hopeless ? { ...EMPTY_ARCHIVE, counts: promised.counts } : await run(task, bar, promised);
    state = takeResult(state, index, result, prepared);
    onProgress?.(state, { stage: 'searching', done: state.done.length, of: prepared.tasks.length });
  });
  return state;
}
