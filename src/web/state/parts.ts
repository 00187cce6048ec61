import type { Remote } from 'comlink';
import type { Assessment } from '../../assess/assessment.ts';
import type { PartResult } from '../../assess/parts/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Desk, Opened } from '../worker/protocol.ts';
import { useAnswers } from './answers.ts';
import { useDesk } from './desk.ts';
import { joined } from './joined.ts';
import { sameKept } from './sameKept.ts';

interface Done {
  readonly build: Build;
  readonly brief: Brief;
}

/** After the last change [ms]. */
const REST = 200;

/**
 * Works the full assessment out part by part, the open build first, and stops between two parts when
 * the build has changed: then what was begun is dropped and begun anew.
 *
 * @param fillIn has the quick answers completed that were left short while builds were slid
 */
export function startParts(worker: Remote<Desk>, list: Opened['parts'], fillIn: () => Promise<void>): void {
  const done = new Map<string, Done>();
  let busy = false;
  let touched = 0;

  const key = (id: string, part: string): string => `${id} ${part}`;

  /** The next part that is missing or older than its build. */
  function next() {
    const { builds, brief, open, aside } = useDesk.getState();
    const { quick, waiting } = useAnswers.getState();
    if (brief === undefined) return undefined;
    const ids = [open, ...Object.keys(builds).filter((id) => id !== open && !aside.includes(id))];
    for (const id of ids) {
      const build = builds[id];
      if (build === undefined || waiting.includes(id) || quick[id]?.ok !== true) continue;
      for (const { id: part } of list) {
        const last = done.get(key(id, part));
        if (last?.build !== build || last.brief !== brief) return { id, build, brief, part };
      }
    }
    return undefined;
  }

  async function work(): Promise<void> {
    if (busy) return;
    busy = true;
    for (;;) {
      await rest();
      await fillIn();
      const job = next();
      if (job === undefined) break;
      const { id, build, brief, part } = job;
      const result = await worker.part(build, brief, part).catch((error: unknown): PartResult => {
        console.error(error);
        return { measures: [], findings: [] };
      });
      const now = useDesk.getState();
      if (now.builds[id] !== build || now.brief !== brief) continue;
      done.set(key(id, part), { build, brief });
      const last = list.every(({ id: each }) => {
        const had = done.get(key(id, each));
        return had?.build === build && had.brief === brief;
      });
      // With every part at hand the rules that lean on them can be held against their figures.
      const assessment = last ? await worker.whole(build, brief) : undefined;
      receive(id, part, result, assessment);
    }
    busy = false;
  }

  function receive(id: string, part: string, result: PartResult, whole: Assessment | undefined): void {
    useAnswers.setState(({ parts, views, quick }) => {
      const own = { ...parts[id], [part]: result };
      const view = quick[id];
      const told = view?.ok && whole ? { ...view, assessment: whole } : view && joined(view, own);
      return {
        parts: { ...parts, [id]: own },
        ...(told === undefined ? {} : { views: { ...views, [id]: sameKept(views[id], told) } }),
      };
    });
    tellBehind();
  }

  /** Until nothing has changed for a while: a hand that drags needs the machine for the quick answers. */
  async function rest(): Promise<void> {
    const left = () => touched + REST - performance.now();
    while (left() > 0) await new Promise((done) => setTimeout(done, left()));
  }

  /** Which parts on show are older than their build. */
  function tellBehind(): void {
    const { builds, brief } = useDesk.getState();
    const behind = Object.fromEntries(
      Object.entries(builds).map(([id, build]) => [
        id,
        list.flatMap(({ id: part, label }) => {
          const last = done.get(key(id, part));
          return last?.build === build && last.brief === brief ? [] : [label];
        }),
      ]),
    );
    useAnswers.setState((past) => ({ behind: sameKept(past.behind, behind) }));
  }

  useDesk.subscribe((now, past) => {
    if (now.builds !== past.builds || now.brief !== past.brief) {
      touched = performance.now();
      tellBehind();
    }
    void work();
  });
  useAnswers.subscribe((now, past) => {
    if (now.waiting !== past.waiting && now.waiting.length === 0) void work();
  });
}
