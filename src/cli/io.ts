import type { CraftRotor } from '../build/craft.ts';
import type { Shelf } from '../build/shelf.ts';
import type { WorkerPool, WorkerStart } from './searchJobs.ts';

/** All that a verb may touch of the machine, so that tests can stand in for it. */
export interface Io {
  /** Text of a file; throws BadInput in words when it cannot be read. */
  readonly readText: (path: string) => string;
  /** The shelf that ships with the program. */
  readonly shippedShelf: () => Shelf;
  /** Its propellers with measured points, their blades matched to them when it was packed. */
  readonly shippedRotors: () => ReadonlyMap<string, CraftRotor>;
  readonly writeOut: (text: string) => void;
  readonly writeError: (text: string) => void;
  /** True on a terminal that wants colour. */
  readonly colours: boolean;
  /** Columns of the terminal; undefined in a pipe. */
  readonly columns: number | undefined;
  /** What only long work needs; absent where there is none to be had, as in tests. */
  readonly machine?: Machine;
}

/** Files to write, a clock, workers. */
export interface Machine {
  /** All of it or nothing: a file that is read after any end is whole. */
  readonly writeFile: (path: string, content: string | Uint8Array) => void;
  readonly exists: (path: string) => boolean;
  /** [ms] */
  readonly now: () => number;
  /** Whether messages go to a terminal, where a line may be written over. */
  readonly messagesOnTerminal: boolean;
  readonly cores: number;
  /**
   * Has `then` called at the first Ctrl-C instead of ending at once; the second ends it. Gives back how to stop
   * listening. Absent where there is no keyboard to interrupt from.
   */
  readonly onInterrupt?: (then: () => void) => () => void;
  readonly openPool: (workers: number, start: WorkerStart) => Promise<WorkerPool>;
}

/** Exit codes, documented in docs/command-line.md; scripts lean on them. */
export const exitCode = { fine: 0, stopFindings: 1, badInput: 2, internal: 3, interrupted: 130 } as const;

export type ExitCode = (typeof exitCode)[keyof typeof exitCode];

/** Long work was stopped by the person; the message says what was kept and how to go on. */
export class Interrupted extends Error {
  override readonly name = 'Interrupted';
}

/** What the person gave cannot be used; the message says where, what, what is allowed and what to do. */
export class BadInput extends Error {
  override readonly name = 'BadInput';
}
