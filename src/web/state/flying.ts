import { proxy } from 'comlink';
import { create } from 'zustand';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { FlyAsk, FlyView } from '../worker/flyProtocol.ts';
import { type ExtraWorker, extraWorker, layOwnParts } from './extraWorker.ts';

interface Flying {
  readonly is: 'idle' | 'flying' | 'stopped' | 'done';
  /** 0 to 1, of the flight under way. */
  readonly share: number;
  readonly ask?: FlyAsk;
  readonly view?: FlyView;
}

export const useFlying = create<Flying>()(() => ({ is: 'idle', share: 0 }));

let flyer: ExtraWorker | undefined;

/** Flies in a worker of its own, so that nothing else waits; a new flight sends the one under way home. */
export async function startFlying(ask: FlyAsk): Promise<void> {
  flyer?.end();
  const own = extraWorker();
  flyer = own;
  useFlying.setState({ is: 'flying', share: 0, ask }, true);
  const settle = (view: FlyView) => {
    if (flyer === own) useFlying.setState({ is: 'done', share: 1, ask, view }, true);
  };
  try {
    await layOwnParts(own);
    const tell = proxy((share: number) => {
      if (flyer === own) useFlying.setState({ share });
    });
    settle(await own.answer(own.desk.fly(ask, tell)));
  } catch (error) {
    settle({ ok: false, reason: error instanceof Error ? error.message : String(error) });
  } finally {
    own.end();
  }
}

export function stopFlying(): void {
  flyer?.end();
  flyer = undefined;
  const { ask } = useFlying.getState();
  useFlying.setState({ is: 'stopped', share: 0, ...(ask ? { ask } : {}) }, true);
}

/** What was flown of this very build under this brief; changed, it has not flown yet. */
export const flownOf = ({ ask, view }: Flying, build: Build, brief: Brief): FlyView | undefined =>
  ask?.build === build && ask.brief === brief ? view : undefined;
