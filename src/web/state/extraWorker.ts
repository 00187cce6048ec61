import { type Remote, wrap } from 'comlink';
import type { Desk } from '../worker/protocol.ts';

/** A worker beside the two that every page has, and how it is sent home. */
export interface ExtraWorker {
  readonly desk: Remote<Desk>;
  readonly end: () => void;
}

export function extraWorker(): ExtraWorker {
  const worker = new Worker(new URL('../worker/desk.worker.ts', import.meta.url), { type: 'module' });
  return { desk: wrap<Desk>(worker), end: () => worker.terminate() };
}
