import { wrap } from 'comlink';
import { create } from 'zustand';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import { compare } from '../../choose/compare.ts';
import { usualWants } from '../../choose/wants.ts';
import { latestWins } from '../worker/latestWins.ts';
import type { BuildView, Desk, ShelfRow } from '../worker/protocol.ts';
import { layOut, openBuild, useDesk } from './desk.ts';
import { usePlace } from './place.ts';

interface Answers {
  readonly brief?: Brief;
  readonly shelf: readonly ShelfRow[];
  /** The latest answer for each build; an older one stays up until the newer arrives. */
  readonly views: Readonly<Record<string, BuildView>>;
  /** Builds asked about and not yet answered. */
  readonly waiting: readonly string[];
  /** Why nothing can be shown at all. */
  readonly trouble?: string;
}

export const useAnswers = create<Answers>()(() => ({ shelf: [], views: {}, waiting: [] }));

/** Starts the worker, lays the demo out and keeps an answer for every build as it changes. */
export async function startWork(): Promise<void> {
  const worker = new Worker(new URL('../worker/desk.worker.ts', import.meta.url), { type: 'module' });
  const desk = wrap<Desk>(worker);
  const ask = latestWins(
    async (build: Build) => await desk.assess(build),
    (id, answer, stillWaiting) => receive(id, answer, stillWaiting),
  );
  try {
    const { brief, builds, shelf } = await desk.open();
    useAnswers.setState({ brief, shelf });
    useDesk.subscribe((now, past) => {
      for (const [id, build] of Object.entries(now.builds)) {
        if (build === past.builds[id]) continue;
        useAnswers.setState(({ waiting }) => ({ waiting: [...waiting.filter((other) => other !== id), id] }));
        ask(id, build, id === now.open ? 'first' : 'last');
      }
    });
    layOut(builds, usualWants(brief.purpose));
  } catch (error) {
    useAnswers.setState({ trouble: inWords(error) });
  }
}

/** The sheets of a build open on the one that leads, unless the user has opened or changed one before. */
function openLeader(): void {
  const { views } = useAnswers.getState();
  const { builds, asShipped, open, wants } = useDesk.getState();
  const ids = Object.keys(builds);
  if (usePlace.getState().sheet !== 'choice' || open !== ids[0] || builds !== asShipped) return;
  const assessments = ids.flatMap((id) => {
    const view = views[id];
    return view?.ok === true ? [view.assessment] : [];
  });
  if (assessments.length !== ids.length || assessments.length < 2) return;
  const leader = ids[compare(assessments, wants).order[0] ?? 0];
  if (leader !== undefined) openBuild(leader);
}

function receive(id: string, answer: PromiseSettledResult<BuildView>, stillWaiting: boolean): void {
  const view: BuildView =
    answer.status === 'fulfilled' ? answer.value : { ok: false, reasons: [inWords(answer.reason)] };
  useAnswers.setState(({ views, waiting }) => ({
    views: { ...views, [id]: view },
    waiting: stillWaiting ? waiting : waiting.filter((other) => other !== id),
  }));
  if (useAnswers.getState().waiting.length === 0) openLeader();
}

const inWords = (error: unknown): string => (error instanceof Error ? error.message : String(error));
