import { proxy } from 'comlink';
import { create } from 'zustand';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { DrawnBuilds } from '../../choose/drawBuilds.ts';
import { theWorkers } from './work.ts';

interface Ask {
  readonly builds: readonly Build[];
  readonly brief: Brief;
}

interface Drawing {
  readonly is: 'idle' | 'waiting' | 'drawing' | 'done' | 'failed';
  /** 0 to 1. */
  readonly share: number;
  readonly ask?: Ask;
  readonly drawn?: DrawnBuilds;
}

/** How sure the order of the compared builds is, drawn once they have been still for a while. */
export const useDrawing = create<Drawing>()(() => ({ is: 'idle', share: 0 }));

/** Builds that are being changed are not drawn at every step [ms]. */
const STILL = 700;

let timer: ReturnType<typeof setTimeout> | undefined;

/** Draws these builds under this brief. What is wanted of them asks for no new draws. */
export function askDraws(ask: Ask): void {
  const { ask: before, is } = useDrawing.getState();
  if (is !== 'failed' && before !== undefined && same(before, ask)) return;
  clearTimeout(timer);
  useDrawing.setState({ is: 'waiting', share: 0, ask }, true);
  timer = setTimeout(() => void draw(ask), STILL);
}

const same = (a: Ask, b: Ask): boolean =>
  a.brief === b.brief &&
  a.builds.length === b.builds.length &&
  a.builds.every((build, index) => build === b.builds[index]);

/** By the worker of the full assessments: it has the propellers ready, and nothing to do once all is worked out. */
async function draw(ask: Ask): Promise<void> {
  const settle = (rest: Pick<Drawing, 'is' | 'share' | 'drawn'>) => {
    // Others may be asked for by now.
    if (useDrawing.getState().ask === ask) useDrawing.setState({ ...rest, ask }, true);
  };
  settle({ is: 'drawing', share: 0 });
  try {
    // It comes by a port of its own, and may come after the answer.
    const tell = proxy((share: number) => {
      if (useDrawing.getState().is === 'drawing') settle({ is: 'drawing', share });
    });
    const drawn = await theWorkers().full.draw(ask.builds, ask.brief, tell);
    settle(drawn === undefined ? { is: 'failed', share: 0 } : { is: 'done', share: 1, drawn });
  } catch {
    settle({ is: 'failed', share: 0 });
  }
}

/** What was drawn of these very builds under this brief. */
export const drawnOf = ({ ask, drawn }: Drawing, now: Ask): DrawnBuilds | undefined =>
  ask !== undefined && same(ask, now) ? drawn : undefined;
