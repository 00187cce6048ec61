import { type Remote, wrap } from 'comlink';
import type { Desk } from '../worker/protocol.ts';
import { useAnswers } from './answers.ts';

/** A worker of the page, and how it is sent home; all run the same file. */
export interface ExtraWorker {
  readonly desk: Remote<Desk>;
  /** An answer of its own; fails in words where the worker can not start or breaks down, which no answer tells. */
  readonly answer: <P extends Promise<unknown>>(asked: P) => Promise<Awaited<P>>;
  readonly end: () => void;
}

const LOST =
  'the worker that does it could not start, or broke down; load the page again, your builds are kept';

export function extraWorker(): ExtraWorker {
  const worker = new Worker(new URL('../worker/desk.worker.ts', import.meta.url), { type: 'module' });
  const lost = new Promise<never>((_, fail) => {
    worker.addEventListener('error', () => fail(new Error(LOST)));
  });
  // Nobody may be waiting when it happens.
  lost.catch(() => undefined);
  return {
    desk: wrap<Desk>(worker),
    answer: (asked) => Promise.race([asked, lost]),
    end: () => worker.terminate(),
  };
}

/** Lays the user's own parts over the shelf of a worker: it comes with the shipped ones. */
export async function layOwnParts({ desk, answer }: ExtraWorker): Promise<void> {
  await answer(desk.layShelf(useAnswers.getState().ownShelf));
}
