import type { Remote } from 'comlink';
import type { Shelf } from '../../build/shelf.ts';
import { prepareSearch, type SearchTask } from '../../choose/shortlist/prepare.ts';
import { type Relaxed, relaxationsOf, relaxedBy } from '../../choose/shortlist/relax.ts';
import type { MappedRotor } from '../../choose/shortlist/rotors.ts';
import type { Bar, Promised } from '../../choose/shortlist/runTask.ts';
import { searchAll } from '../../choose/shortlist/searchAll.ts';
import { sizeOfSpace, spaceOf } from '../../choose/shortlist/space.ts';
import { fingerprintOf, type SearchState, startState } from '../../choose/shortlist/state.ts';
import type { SearchContext, ShortlistQuestion } from '../../choose/shortlist/types.ts';
import { usualSoftWants } from '../../choose/shortlist/usualScales.ts';
import { RISK_COST } from '../../choose/standing.ts';
import { sectionTables } from '../../rotor/sections.ts';
import type { SearchHand } from './searchHand.ts';
import type { SearchAsk, SearchNews, SearchReport } from './searchProtocol.ts';
import { reportOf } from './searchReport.ts';

/** More than are shown: those that are much alike fold into one. */
const TOP = 24;
/** A checkpoint at most so often [ms]. */
const KEEP_EVERY = 1000;

export interface Foreman {
  readonly ask: SearchAsk;
  readonly shelf: Shelf;
  readonly hands: readonly Remote<SearchHand>[];
  /** Where an earlier search left off; one of another question, brief or shelf is passed over. */
  readonly kept: SearchState | undefined;
  readonly tell: (news: SearchNews) => void;
  readonly isStopped: () => boolean;
}

/** Runs a search with the hands it is lent, tells how far it is, and explains what was found. */
export async function runForeman({
  ask,
  shelf,
  hands,
  kept,
  tell,
  isStopped,
}: Foreman): Promise<SearchReport> {
  const context: SearchContext = { brief: ask.brief, shelf, sections: sectionTables() };
  const question: ShortlistQuestion = {
    template: ask.template,
    space: spaceOf(ask.template, shelf, ask.seats),
    wants: usualSoftWants(
      ask.brief,
      ask.wants.filter(({ weight }) => weight > 0),
    ),
    limits: ask.limits,
    riskCost: RISK_COST,
    top: TOP,
    front: ask.front ? ['first-flight-cost', 'all-up-mass', 'flown-time'] : [],
  };
  const prepared = prepareSearch(question, context);
  const fingerprint = fingerprintOf(
    JSON.stringify(question),
    JSON.stringify(ask.brief),
    JSON.stringify([...shelf.parts.values()]),
  );
  const start = kept?.fingerprint === fingerprint ? kept : startState(prepared, fingerprint);
  const free = [...hands];
  const waiting: ((hand: Remote<SearchHand>) => void)[] = [];
  /** Each piece of work to a hand that has none. */
  const lend = async <T>(work: (hand: Remote<SearchHand>) => Promise<T>): Promise<T> => {
    const hand = free.pop() ?? (await new Promise<Remote<SearchHand>>((take) => waiting.push(take)));
    try {
      return await work(hand);
    } finally {
      const next = waiting.shift();
      if (next === undefined) free.push(hand);
      else next(hand);
    }
  };
  const used = prepared.rotors.filter(({ partId }) => prepared.usedPropellers.includes(partId));
  const made = await Promise.all(
    used.map((facts) => lend(async (hand) => await hand.map(facts, prepared.air))),
  );
  const maps = made.filter((each): each is MappedRotor => each !== undefined);
  await Promise.all(hands.map(async (hand) => await hand.open(prepared, ask.brief, maps)));
  // The first task done is worth keeping: from then on a search can be gone on with.
  let last = Number.NEGATIVE_INFINITY;
  const run = {
    workers: hands.length,
    promise: (task: SearchTask) => lend(async (hand) => await hand.promise(task)),
    run: (task: SearchTask, bar: Bar, promised: Promised) =>
      lend(async (hand) => await hand.run(task, bar, promised)),
    isCancelled: isStopped,
  };
  const state = await searchAll(prepared, start, {
    ...run,
    onProgress: (now, progress) => {
      const due = progress.stage === 'searching' && performance.now() - last > KEEP_EVERY;
      if (due) last = performance.now();
      tell(due ? { progress, state: now } : { progress });
    },
  });
  tell({ progress: { stage: 'searching', done: state.done.length, of: prepared.tasks.length }, state });
  const finished = state.done.length === prepared.tasks.length;
  const relaxed: Relaxed[] = [];
  for (const { limit, ...wider } of ask.relax && finished ? relaxationsOf(ask.brief, question) : []) {
    const own = { ...prepared, question: wider.question };
    await Promise.all(hands.map(async (hand) => await hand.open(own, wider.brief, maps)));
    const found = await searchAll(own, startState(own, ''), {
      ...run,
      onProgress: (_, progress) => tell({ progress, wider: limit }),
    });
    // One that was stopped on the way tells nothing.
    if (found.done.length < own.tasks.length) break;
    relaxed.push(relaxedBy(limit, found, state));
  }
  return reportOf({
    question,
    context,
    maps,
    air: prepared.air,
    state,
    size: sizeOfSpace(question.space),
    finished,
    relaxed,
  });
}
