import { type Remote, wrap } from 'comlink';
import type { Desk } from '../worker/protocol.ts';

/** A worker of the page, and how it is sent home; all run the same file. */
export interface ExtraWorker {
  readonly desk: Remote<Desk>;
  readonly end: () => void;
}

export function extraWorker(): ExtraWorker {
  const worker = new Worker(new URL('../worker/desk.worker.ts', import.meta.url), { type: 'module' });
  return { desk: wrap<Desk>(worker), end: () => worker.terminate() };
}
