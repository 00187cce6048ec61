import { expose, wrap } from 'comlink';
import { airframeOf } from '../../assess/assess.ts';
import { assessParts } from '../../assess/parts/index.ts';
import type { Shelf } from '../../build/shelf.ts';
import { drivesOf } from './drivesOf.ts';
import { patchOf } from './patch.ts';
import type {
  BuildView,
  Desk,
  FollowAnswer,
  FollowAsk,
  KeptFiles,
  KeptRead,
  OpenBuild,
  Opened,
  ShelfLaid,
  ShelfRow,
} from './protocol.ts';
import type { SearchHand } from './searchHand.ts';
import { shelfRow } from './shelfRow.ts';
import { shippedFiles } from './shipped.ts';
import { openWorkshop } from './workshop.ts';

/** The readers of files and their checker: only who brings files of their own needs them. */
const readers = async () => await import('./readers.ts');

/** The desk of one page: the shipped files and the user's, and the workshop that works builds out. */
export function openDesk(): Desk {
  const shipped = shippedFiles();
  let shelf: Shelf = shipped.shelf;
  let workshop = openWorkshop(shelf);

  // Files read whole for parts to be based on: a second's work, and asked for at every letter typed.
  let under: { readonly text: string | undefined; readonly shelf: Shelf } | undefined;

  const isOwn = (id: string): boolean => !shipped.shelf.parts.has(id) || shelf.replaced.includes(id);
  const rows = (): readonly ShelfRow[] =>
    Array.from(shelf.parts.values(), (part) => shelfRow(part, isOwn(part.id)));

  async function layShelf(text: string | undefined): Promise<ShelfLaid> {
    if (text === undefined) shelf = shipped.shelf;
    else {
      const { inWords, readOwnShelf } = await readers();
      const read = readOwnShelf(text);
      if (!read.ok) return { ok: false, reasons: inWords(read.errors) };
      shelf = read.value;
    }
    workshop = openWorkshop(shelf);
    const all = rows();
    return { ok: true, shelf: all, own: all.filter(({ own }) => own).length };
  }

  async function open(kept?: KeptFiles): Promise<Opened> {
    const demo = {
      brief: shipped.brief,
      builds: shipped.builds.map(({ id, build }): OpenBuild => ({ id, build, came: build })),
    };
    const laid = kept?.shelf === undefined ? undefined : await layShelf(kept.shelf);
    const read = kept ? await readKept(kept) : { ...demo, faults: [] };
    return {
      brief: read.brief,
      builds: read.builds.length > 0 ? read.builds : demo.builds,
      shelf: rows(),
      parts: assessParts.map(({ id, label }) => ({ id, label })),
      demo,
      faults: [...(laid?.ok === false ? laid.reasons : []), ...read.faults],
    };
  }

  async function readKept(files: KeptFiles): Promise<KeptRead> {
    const { readKeptBrief, readKeptBuild } = await readers();
    const faults: string[] = [];
    const builds = files.builds.flatMap((each) => readKeptBuild(each, faults));
    return { brief: readKeptBrief(files.brief, faults) ?? shipped.brief, builds, faults };
  }

  /** The last answer told of each build on the desk, as the page has it too. */
  const told = new Map<string, { readonly number: number; readonly view: BuildView }>();
  let number = 0;

  function follow({ id, build, brief, since, slid = false }: FollowAsk): FollowAnswer {
    const last = told.get(id);
    const known = last !== undefined && last.number === since ? last : undefined;
    const airframe = slid && known?.view.ok ? airframeOf(known.view.assessment) : undefined;
    const view = workshop.view(build, brief, airframe);
    number += 1;
    told.set(id, { number, view });
    return {
      number,
      ...(known === undefined ? {} : { since: known.number }),
      patch: patchOf(known?.view, view),
    };
  }

  let stopped = false;

  return {
    partsList: async (ask) => {
      const { partsListView, wholeShelf } = await readers();
      return partsListView(ask, wholeShelf());
    },
    tune: async (ask) => {
      const { tuneView } = await import('./tuneView.ts');
      return tuneView(ask, shelf);
    },
    draw: async (builds, brief, tell) => await workshop.draw(builds, brief, tell),
    fly: async (ask, tell) => {
      const { flyView } = await import('./flyView.ts');
      return flyView(ask, shelf, tell);
    },
    judgeLog: async (ask) => {
      const { crashLogView } = await import('./crashLogView.ts');
      return crashLogView(ask, shelf);
    },
    readLog: async (text, file) => (await readers()).readLog(text, file),
    lend: async (port) => {
      const { searchHand } = await import('./searchHand.ts');
      expose(
        searchHand(() => shelf),
        port,
      );
    },
    search: async (ask, ports, kept, tell) => {
      stopped = false;
      const { runForeman } = await import('./searchForeman.ts');
      const hands = ports.map((port) => wrap<SearchHand>(port));
      return await runForeman({ ask, shelf, hands, kept, tell, isStopped: () => stopped });
    },
    stopSearch: async () => {
      stopped = true;
    },
    open,
    layShelf,
    assess: async (build, brief) => workshop.view(build, brief),
    follow: async (ask) => follow(ask),
    part: async (build, brief, id) => workshop.part(build, brief, id),
    whole: async (build, brief) => workshop.whole(build, brief),
    solids: async (build) => workshop.solids(build),
    glance: async (build, brief) => workshop.glance(build, brief),
    readKept,
    partFields: async (kind) => (await readers()).partFields(kind),
    draftPart: async (draft, ownShelf) => {
      const { draftPart, shelfWith } = await readers();
      if (under?.text !== ownShelf || under === undefined)
        under = { text: ownShelf, shelf: shelfWith(ownShelf) };
      return draftPart(draft, under.shelf);
    },
    drives: async (raw, build, brief, ownShelf) => {
      const { ontoShelf, readOwnShelf } = await readers();
      const read = readOwnShelf(ontoShelf(ownShelf, [raw]));
      return read.ok ? drivesOf(read.value, raw, build, brief) : [];
    },
    ownParts: async (ownShelf) => (await readers()).ownParts(ownShelf),
    withPart: async (ownShelf, raw) => (await readers()).ontoShelf(ownShelf, [raw]),
    withoutPart: async (ownShelf, id) => (await readers()).offShelf(ownShelf, id),
    read: async (text, file) => (await readers()).readAny(text, file),
  };
}
