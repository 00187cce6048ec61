import type { Air } from '../air/standardAtmosphere.ts';
import type { CraftRotor } from '../build/craft.ts';
import type { Brief } from '../build/schema/brief.ts';
import type { Shelf } from '../build/shelf.ts';
import type { PreparedSearch, SearchTask } from '../choose/shortlist/prepare.ts';
import type { MappedRotor } from '../choose/shortlist/rotors.ts';
import type { Bar, Promised, TaskResult } from '../choose/shortlist/runTask.ts';

/** What a worker is given once. Plain data: it is copied. */
export interface WorkerStart {
  readonly brief: Brief;
  readonly shelf: Shelf;
  readonly blades?: ReadonlyMap<string, CraftRotor>;
  /** Absent while maps are made. */
  readonly prepared?: PreparedSearch;
  readonly maps?: readonly MappedRotor[];
}

export type WorkerJob =
  | { readonly kind: 'map'; readonly propeller: string; readonly air: Air }
  | { readonly kind: 'promise'; readonly task: SearchTask }
  | { readonly kind: 'run'; readonly task: SearchTask; readonly bar: Bar; readonly promised: Promised };

/** Of a map nothing when the blade has none. */
export type WorkerAnswer = MappedRotor | undefined | Promised | TaskResult;

/** Some workers that answer jobs. */
export interface WorkerPool {
  readonly ask: (job: WorkerJob) => Promise<WorkerAnswer>;
  readonly close: () => Promise<void>;
}
