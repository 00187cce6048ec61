import { assessParts } from '../../assess/parts/index.ts';
import { fileErrorText } from '../../build/read/fileError.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { Desk, KeptFiles, KeptRead, OpenBuild, Opened, ShelfLaid, ShelfRow } from './protocol.ts';
import { readDemo } from './readDemo.ts';
import { readAny, readKeptBrief, readKeptBuild } from './readFiles.ts';
import { shelfRow } from './shelfRow.ts';
import { openWorkshop } from './workshop.ts';

/** The desk of one page: the shipped files and the user's, and the workshop that works builds out. */
export function openDesk(): Desk {
  const shipped = readDemo();
  let shelf: Shelf = shipped.shelf;
  let workshop = openWorkshop(shelf);

  const rows = (): readonly ShelfRow[] =>
    Array.from(shelf.parts.values(), (part) => shelfRow(part, part !== shipped.shelf.parts.get(part.id)));

  function layShelf(text: string | undefined): ShelfLaid {
    if (text === undefined) shelf = shipped.shelf;
    else {
      const read = readShelf(text, 'your shelf', shipped.shelf);
      if (!read.ok) return { ok: false, reasons: read.errors.map(fileErrorText) };
      shelf = read.value;
    }
    workshop = openWorkshop(shelf);
    const all = rows();
    return { ok: true, shelf: all, own: all.filter(({ own }) => own).length };
  }

  function open(kept?: KeptFiles): Opened {
    const demo = {
      brief: shipped.brief,
      builds: shipped.builds.map(({ id, build }): OpenBuild => ({ id, build, came: build })),
    };
    const laid = kept?.shelf === undefined ? undefined : layShelf(kept.shelf);
    const read = kept ? readKept(kept) : { ...demo, faults: [] };
    return {
      brief: read.brief,
      builds: read.builds.length > 0 ? read.builds : demo.builds,
      shelf: rows(),
      parts: assessParts.map(({ id, label }) => ({ id, label })),
      demo,
      faults: [...(laid?.ok === false ? laid.reasons : []), ...read.faults],
    };
  }

  function readKept(files: KeptFiles): KeptRead {
    const faults: string[] = [];
    const builds = files.builds.flatMap((each) => readKeptBuild(each, faults));
    return { brief: readKeptBrief(files.brief, faults) ?? shipped.brief, builds, faults };
  }

  return {
    open: async (kept) => open(kept),
    layShelf: async (text) => layShelf(text),
    assess: async (build, brief) => workshop.view(build, brief),
    part: async (build, brief, id) => workshop.part(build, brief, id),
    whole: async (build, brief) => workshop.whole(build, brief),
    glance: async (build, brief) => workshop.glance(build, brief),
    readKept: async (files) => readKept(files),
    read: async (text, file) => readAny(text, file, shipped.shelf),
  };
}
