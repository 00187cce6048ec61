import { create } from 'zustand';
import type { TuneAsk, TuneView } from '../worker/tuneProtocol.ts';
import { extraWorker, layOwnParts } from './extraWorker.ts';

interface Tuning {
  readonly busy: boolean;
  readonly view?: TuneView;
  /** The build it was asked of. */
  readonly of?: string;
}

export const useTuning = create<Tuning>()(() => ({ busy: false }));

/** Tunes in a worker of its own, sent home afterwards. */
export async function startTuning(ask: TuneAsk): Promise<void> {
  if (useTuning.getState().busy) return;
  useTuning.setState({ busy: true, of: ask.build.name }, true);
  const worker = extraWorker();
  try {
    await layOwnParts(worker);
    const view = await worker.answer(worker.desk.tune(ask));
    useTuning.setState({ busy: false, of: ask.build.name, view }, true);
  } catch (error) {
    const trouble = error instanceof Error ? error.message : String(error);
    const view = { build: ask.build, evaluations: 0, settled: false, turned: [], trace: [], trouble };
    useTuning.setState({ busy: false, of: ask.build.name, view }, true);
  } finally {
    worker.end();
  }
}
