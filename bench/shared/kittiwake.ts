import { readFileSync } from 'node:fs';
import { prepareFlight } from '../../src/assess/prepareFlight.ts';
import { unpackShelf } from '../../src/build/read/packedShelf.ts';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { resolveBuild } from '../../src/build/resolve/resolveBuild.ts';
import { sectionTables } from '../../src/rotor/sections.ts';

export const demo = 'demo/first-freestyle';

/** The dead cat of the demo under its brief, with everything a part of the assessment may look at. */
export function kittiwake() {
  const shelf = unpackShelf(readFileSync('dist/cli/shelf.json', 'utf8'));
  const read = readBuild(readFileSync(`${demo}/kittiwake.yaml`, 'utf8'), 'kittiwake');
  const told = readBrief(readFileSync(`${demo}/brief.yaml`, 'utf8'), 'brief');
  if (!read.ok || !told.ok) throw new Error('the demo does not read');
  const resolved = resolveBuild(read.value.build, shelf);
  if (!resolved.ok) throw new Error('the demo does not resolve');
  const [craft, brief, sections] = [resolved.value, told.value, sectionTables()];
  const flight = prepareFlight(craft, { brief, sections }, true);
  if (!flight.ok) throw new Error(flight.reason);
  return { craft, brief, shelf, sections, flight: flight.value };
}
