import { proxy, type Remote, transfer } from 'comlink';
import { create } from 'zustand';
import type { SearchProgress } from '../../choose/shortlist/searchAll.ts';
import type { SearchState } from '../../choose/shortlist/state.ts';
import type { Desk } from '../worker/protocol.ts';
import type { SearchAsk, SearchReport } from '../worker/searchProtocol.ts';
import { extraWorker, layOwnParts } from './extraWorker.ts';
import { readStore, writeStore } from './store.ts';

/** More hands than this bring little and hold much memory. */
const MOST_HANDS = 6;

interface Search {
  readonly is: 'idle' | 'running' | 'stopping' | 'done' | 'failed';
  readonly progress?: SearchProgress;
  /** The limit that is a tenth wider in what is searched now. */
  readonly wider?: string;
  /** When it began [ms since the page was opened], and what was done by then. */
  readonly began?: number;
  readonly report?: SearchReport;
  readonly trouble?: string;
  /** A search that was not finished, to go on with. */
  readonly unfinished?: KeptSearch;
}

/** What the browser keeps of a search under way. */
interface KeptSearch {
  readonly version: 1;
  readonly ask: SearchAsk;
  readonly state: SearchState;
}

export const useSearch = create<Search>()(() => ({ is: 'idle' }));

let foreman: Remote<Desk> | undefined;

/** Looks for a search that an earlier visit left unfinished. */
export async function findUnfinished(): Promise<void> {
  const raw = await readStore('search').catch(() => undefined);
  if (isKept(raw) && useSearch.getState().is === 'idle') useSearch.setState({ unfinished: raw });
}

const isKept = (raw: unknown): raw is KeptSearch =>
  typeof raw === 'object' &&
  raw !== null &&
  'version' in raw &&
  raw.version === 1 &&
  'ask' in raw &&
  'state' in raw;

/** Searches in workers of its own, so that the sheets answer as before. One at a time. */
export async function startSearch(ask: SearchAsk, kept?: SearchState): Promise<void> {
  const { is } = useSearch.getState();
  if (is === 'running' || is === 'stopping') return;
  const began = performance.now();
  useSearch.setState({ is: 'running', began }, true);
  const workers = Array.from({ length: handsAtOnce() + 1 }, extraWorker);
  try {
    await Promise.all(workers.map(layOwnParts));
    const [first, ...hands] = workers;
    if (first === undefined) return;
    foreman = first.desk;
    const ports = await Promise.all(
      hands.map(async ({ desk }) => {
        const { port1, port2 } = new MessageChannel();
        await desk.lend(transfer(port1, [port1]));
        return port2;
      }),
    );
    const report = await first.answer(
      foreman.search(
        ask,
        transfer(ports, [...ports]),
        kept,
        proxy(({ progress, state, wider }) => {
          useSearch.setState({ progress, ...(wider === undefined ? {} : { wider }) });
          if (state !== undefined) void keep({ version: 1, ask, state });
        }),
      ),
    );
    useSearch.setState({ is: 'done', began, report }, true);
    if (report.finished) await forget();
    else await findLeft();
  } catch (error) {
    useSearch.setState(
      { is: 'failed', trouble: error instanceof Error ? error.message : String(error) },
      true,
    );
  } finally {
    foreman = undefined;
    for (const { end } of workers) end();
  }
}

/** One a core: the foreman mostly waits, and the page needs little meanwhile. */
const handsAtOnce = (): number => Math.min(Math.max(navigator.hardwareConcurrency, 1), MOST_HANDS);

/** Ends it after what is under way; what was found is shown, and it can be gone on with. */
export function stopSearch(): void {
  if (useSearch.getState().is !== 'running') return;
  useSearch.setState({ is: 'stopping' });
  void foreman?.stopSearch();
}

export async function goOn(): Promise<void> {
  const { unfinished } = useSearch.getState();
  if (unfinished !== undefined) await startSearch(unfinished.ask, unfinished.state);
}

/** Checkpoints follow one another: the last one written is the last one made. */
let writing: Promise<void> = Promise.resolve();
const keep = (kept: KeptSearch): Promise<void> => {
  writing = writing.then(async () => await writeStore('search', kept)).catch(() => undefined);
  return writing;
};

async function findLeft(): Promise<void> {
  await writing;
  const raw = await readStore('search').catch(() => undefined);
  if (isKept(raw)) useSearch.setState({ unfinished: raw });
}

export async function forget(): Promise<void> {
  await writing;
  await writeStore('search', undefined).catch(() => undefined);
  const { unfinished: _, ...rest } = useSearch.getState();
  useSearch.setState(rest, true);
}
