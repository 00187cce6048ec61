import { workerData } from 'node:worker_threads';
import type { PreparedSearch } from '../choose/shortlist/prepare.ts';
import { type MappedRotor, mapRotor, rotorsOfMaps } from '../choose/shortlist/rotors.ts';
import { promiseOf, runTask } from '../choose/shortlist/runTask.ts';
import { type Searcher, searcherOf } from '../choose/shortlist/searcher.ts';
import { sectionTables } from '../rotor/sections.ts';
import type { WorkerAnswer, WorkerJob, WorkerStart } from './searchJobs.ts';

// The pool lays its own data before ours.
const [, start] = workerData as readonly [unknown, WorkerStart];
const sections = sectionTables();
let searcher: Searcher | undefined;

/** One job of a search; what all jobs share came with the worker. */
export default function answer(job: WorkerJob): WorkerAnswer {
  if (job.kind === 'map') {
    const part = start.shelf.parts.get(job.propeller);
    if (part?.kind !== 'propeller') throw new RangeError(`propeller: ${job.propeller} is not on the shelf`);
    const made = mapRotor(part, job.air, sections, start.blades?.get(job.propeller));
    return made.ok ? made.value : undefined;
  }
  searcher ??= open(start.prepared, start.maps);
  return job.kind === 'promise'
    ? promiseOf(searcher, job.task)
    : runTask(searcher, job.task, job.bar, job.promised);
}

function open(prepared: PreparedSearch | undefined, maps: readonly MappedRotor[] = []): Searcher {
  if (prepared === undefined) throw new RangeError('prepared: a search job without a search');
  const { brief, shelf, blades } = start;
  const context = { brief, shelf, sections, ...(blades === undefined ? {} : { blades }) };
  return searcherOf(prepared, context, rotorsOfMaps(maps, prepared.air));
}
