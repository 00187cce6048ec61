import { expose } from 'comlink';
import { openDesk } from './openDesk.ts';
import type { Desk } from './protocol.ts';

let desk: Desk | undefined;

/** Opened at the first call, so that a fault in a file reaches the page as that call's error. */
function opened(): Desk {
  desk ??= openDesk();
  return desk;
}

const door: Desk = {
  open: async (kept) => await opened().open(kept),
  layShelf: async (text) => await opened().layShelf(text),
  assess: async (build, brief) => await opened().assess(build, brief),
  follow: async (ask) => await opened().follow(ask),
  part: async (build, brief, part) => await opened().part(build, brief, part),
  whole: async (build, brief) => await opened().whole(build, brief),
  solids: async (build) => await opened().solids(build),
  glance: async (build, brief) => await opened().glance(build, brief),
  partsList: async (ask) => await opened().partsList(ask),
  tune: async (ask) => await opened().tune(ask),
  draw: async (builds, brief, tell) => await opened().draw(builds, brief, tell),
  fly: async (ask, tell) => await opened().fly(ask, tell),
  judgeLog: async (ask) => await opened().judgeLog(ask),
  readLog: async (text, file) => await opened().readLog(text, file),
  lend: async (port) => await opened().lend(port),
  search: async (ask, ports, kept, tell) => await opened().search(ask, ports, kept, tell),
  stopSearch: async () => await opened().stopSearch(),
  readKept: async (files) => await opened().readKept(files),
  partFields: async (kind) => await opened().partFields(kind),
  draftPart: async (draft, ownShelf) => await opened().draftPart(draft, ownShelf),
  drives: async (raw, build, brief, ownShelf) => await opened().drives(raw, build, brief, ownShelf),
  ownParts: async (ownShelf) => await opened().ownParts(ownShelf),
  withPart: async (ownShelf, raw) => await opened().withPart(ownShelf, raw),
  withoutPart: async (ownShelf, id) => await opened().withoutPart(ownShelf, id),
  read: async (text, file) => await opened().read(text, file),
};
expose(door);
