import { airOf } from '../assess/dayOf.ts';
import type { PreparedSearch } from '../choose/shortlist/prepare.ts';
import { type MappedRotor, mapRotor, rotorsOfMaps } from '../choose/shortlist/rotors.ts';
import { type Promised, promiseOf, runTask, type TaskResult } from '../choose/shortlist/runTask.ts';
import { type SearchProgress, type SearchRun, searchAll } from '../choose/shortlist/searchAll.ts';
import { searcherOf } from '../choose/shortlist/searcher.ts';
import { fingerprintOf, revived, type SearchState, startState } from '../choose/shortlist/state.ts';
import type { SearchContext } from '../choose/shortlist/types.ts';
import { BadInput, Interrupted, type Io, type Machine } from './io.ts';
import { progressLine } from './print/progressLine.ts';
import type { WorkerPool } from './searchJobs.ts';
import { writeFile } from './writeFile.ts';

interface HowToRun {
  readonly workers: number;
  /** File of the checkpoint. */
  readonly keep?: string | undefined;
  /** Maps made before in the same air. */
  readonly maps?: readonly MappedRotor[];
}

/** A checkpoint at most so often [ms]. */
const KEEP_EVERY = 1000;

/**
 * Runs a search here or in workers, keeping a checkpoint and telling how far it is.
 *
 * @throws Interrupted after Ctrl-C, when the tasks under way are done and the checkpoint is written
 */
export async function runSearch(
  prepared: PreparedSearch,
  context: SearchContext,
  how: HowToRun,
  io: Io,
): Promise<{ readonly state: SearchState; readonly maps: readonly MappedRotor[] }> {
  const { machine } = io;
  const parallel = machine !== undefined && how.workers > 1;
  const maps =
    how.maps ??
    (parallel ? await mapsInPool(prepared, context, how.workers, machine) : mapsHere(prepared, context));
  const start = startOf(prepared, context, how.keep, io);
  const told = teller(how.keep, io);
  const stop = stopper(io);
  const ended = (state: SearchState) => {
    stop.forget();
    told.end(state);
    if (state.done.length < prepared.tasks.length) {
      throw new Interrupted(afterStop(how.keep, state.done.length, prepared.tasks.length));
    }
    return { state, maps };
  };
  if (!parallel) {
    const searcher = searcherOf(prepared, context, rotorsOfMaps(maps, prepared.air));
    const run: SearchRun = {
      promise: async (task) => {
        await breath();
        return promiseOf(searcher, task);
      },
      run: async (task, bar, promised) => {
        await breath();
        return runTask(searcher, task, bar, promised);
      },
      workers: 1,
      onProgress: told.progress,
      isCancelled: stop.isAsked,
    };
    return ended(await searchAll(prepared, start, run));
  }
  const { brief, shelf, blades } = context;
  const pool = await machine.openPool(how.workers, {
    brief,
    shelf,
    prepared,
    maps,
    ...(blades === undefined ? {} : { blades }),
  });
  try {
    const state = await searchAll(prepared, start, {
      isCancelled: stop.isAsked,
      promise: (task) => pool.ask({ kind: 'promise', task }) as Promise<Promised>,
      run: (task, bar, promised) => pool.ask({ kind: 'run', task, bar, promised }) as Promise<TaskResult>,
      workers: how.workers,
      onProgress: told.progress,
    });
    return ended(state);
  } finally {
    await pool.close();
  }
}

/** Lets a Ctrl-C be heard between two pieces of work done here. */
const breath = (): Promise<void> => new Promise((done) => setImmediate(done));

/** Listens for Ctrl-C while a search runs. */
function stopper({ machine, writeError }: Io) {
  let asked = false;
  const forget = machine?.onInterrupt?.(() => {
    asked = true;
    writeError('\nStopping when what is under way is done; Ctrl-C again stops at once.\n');
  });
  return { isAsked: () => asked, forget: () => forget?.() };
}

function afterStop(keep: string | undefined, done: number, of: number): string {
  const far = `Stopped with ${done} of ${of} pieces searched.`;
  return keep === undefined
    ? `${far} Nothing is kept: give --keep FILE to be able to go on next time.`
    : `${far} They are kept in ${keep}: give the same command again, with --keep ${keep}, and it goes on from there.`;
}

function mapsHere(
  prepared: PreparedSearch,
  { shelf, sections, blades }: SearchContext,
): readonly MappedRotor[] {
  return prepared.usedPropellers.flatMap((id) => {
    const part = shelf.parts.get(id);
    const made =
      part?.kind === 'propeller' ? mapRotor(part, prepared.air, sections, blades?.get(id)) : undefined;
    return made?.ok ? [made.value] : [];
  });
}

async function mapsInPool(
  prepared: PreparedSearch,
  { brief, shelf, blades }: SearchContext,
  workers: number,
  machine: Machine,
): Promise<readonly MappedRotor[]> {
  const pool: WorkerPool = await machine.openPool(workers, {
    brief,
    shelf,
    ...(blades === undefined ? {} : { blades }),
  });
  try {
    const made = await Promise.all(
      prepared.usedPropellers.map((propeller) => pool.ask({ kind: 'map', propeller, air: airOf(brief) })),
    );
    return made.flatMap((each) => (each === undefined ? [] : [each as MappedRotor]));
  } finally {
    await pool.close();
  }
}

/** A fresh start, or where a kept one left off. A checkpoint of another search is refused, never mixed in. */
function startOf(
  prepared: PreparedSearch,
  context: SearchContext,
  keep: string | undefined,
  io: Io,
): SearchState {
  const { question } = prepared;
  const fingerprint = fingerprintOf(
    JSON.stringify(question),
    JSON.stringify(context.brief),
    JSON.stringify([...context.shelf.parts.values()]),
  );
  if (keep === undefined || io.machine?.exists(keep) !== true) return startState(prepared, fingerprint);
  let found: SearchState;
  try {
    found = JSON.parse(io.readText(keep)) as SearchState;
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw new BadInput(
      `--keep: ${keep} is no checkpoint. Give a file of a search, or one that does not exist yet.`,
    );
  }
  if (found.format !== 'quadwright-search-1' || found.fingerprint !== fingerprint) {
    throw new BadInput(
      `--keep: ${keep} belongs to another search (question, brief or shelf differ). Give another file, or take it away.`,
    );
  }
  return revived(found);
}

/** Writes the checkpoint and the line of progress. */
function teller(keep: string | undefined, io: Io) {
  const { machine } = io;
  const began = machine?.now() ?? 0;
  let kept = Number.NEGATIVE_INFINITY;
  const save = (state: SearchState) => {
    if (keep !== undefined) writeFile('--keep', keep, JSON.stringify(state), io);
  };
  return {
    progress: (state: SearchState, progress: SearchProgress) => {
      if (machine === undefined) return;
      const now = machine.now();
      if (progress.stage === 'searching' && now - kept > KEEP_EVERY) {
        kept = now;
        save(state);
      }
      if (machine.messagesOnTerminal) io.writeError(`\r${progressLine(progress, (now - began) / 1000)}`);
    },
    end: (state: SearchState) => {
      save(state);
      if (machine?.messagesOnTerminal) io.writeError(`\r${' '.repeat(70)}\r`);
    },
  };
}
