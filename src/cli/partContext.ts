import type { PartContext } from '../assess/parts/types.ts';
import { prepareFlight } from '../assess/prepareFlight.ts';
import { resolveBuild } from '../build/resolve/resolveBuild.ts';
import { sectionTables } from '../rotor/sections.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from './context.ts';
import { mustRead } from './files.ts';
import type { Io } from './io.ts';

/** What every verb that asks one part of the assessment takes. */
export interface AskPartOptions {
  readonly brief?: string;
  readonly for?: string;
  readonly shelf: readonly string[];
  readonly json?: boolean;
}

/**
 * Everything a part may look at, for a build's file.
 *
 * @param flies false leaves the hover out, for parts that need none
 */
export function loadPartContext(file: string, options: AskPartOptions, io: Io, flies = true): PartContext {
  const shelf = loadShelf(options.shelf, io);
  const brief = loadBrief(options.brief, options.for, io);
  const read = loadBuild(file, io);
  const craft = mustRead(resolveBuild(read.build, shelf, read, loadBlades(options.shelf, io)));
  const sections = sectionTables();
  const flight = flies ? prepareFlight(craft, { brief, sections }, true) : undefined;
  return { craft, brief, shelf, sections, ...(flight?.ok ? { flight: flight.value } : {}) };
}
