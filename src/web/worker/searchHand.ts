import type { Air } from '../../air/standardAtmosphere.ts';
import type { CraftRotor } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { PreparedSearch, SearchTask } from '../../choose/shortlist/prepare.ts';
import { type MappedRotor, mapRotor, rotorsOfMaps } from '../../choose/shortlist/rotors.ts';
import {
  type Bar,
  type Promised,
  promiseOf,
  runTask,
  type TaskResult,
} from '../../choose/shortlist/runTask.ts';
import { type Searcher, searcherOf } from '../../choose/shortlist/searcher.ts';
import { sectionTables } from '../../rotor/sections.ts';

/** One of several workers that do the pieces of a search, as its foreman asks. */
export interface SearchHand {
  /** Nothing when the blade has no map. */
  readonly map: (facts: CraftRotor, air: Air) => Promise<MappedRotor | undefined>;
  readonly open: (prepared: PreparedSearch, brief: Brief, maps: readonly MappedRotor[]) => Promise<void>;
  readonly promise: (task: SearchTask) => Promise<Promised>;
  readonly run: (task: SearchTask, bar: Bar, promised: Promised) => Promise<TaskResult>;
}

export function searchHand(shelf: () => Shelf): SearchHand {
  const sections = sectionTables();
  let searcher: Searcher | undefined;
  const opened = (): Searcher => {
    if (searcher === undefined) throw new RangeError('search: a task before the search was opened');
    return searcher;
  };
  return {
    map: async (facts, air) => {
      const part = shelf().parts.get(facts.partId);
      if (part?.kind !== 'propeller') throw new RangeError(`propeller: ${facts.partId} is not on the shelf`);
      const made = mapRotor(part, air, sections, facts);
      return made.ok ? made.value : undefined;
    },
    open: async (prepared, brief, maps) => {
      const blades = new Map(prepared.rotors.map((rotor) => [rotor.partId, rotor]));
      searcher = searcherOf(
        prepared,
        { brief, shelf: shelf(), sections, blades },
        rotorsOfMaps(maps, prepared.air),
      );
    },
    promise: async (task) => promiseOf(opened(), task),
    run: async (task, bar, promised) => runTask(opened(), task, bar, promised),
  };
}
