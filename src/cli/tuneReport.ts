import type { SoftWant } from '../choose/shortlist/softWants.ts';
import type { HardLimit } from '../choose/shortlist/types.ts';
import type { KnobRange } from '../choose/tune.ts';

/** What `tune --json` prints. */
export interface TuneReport {
  readonly build: string;
  readonly wants: readonly SoftWant[];
  readonly limits: readonly HardLimit[];
  readonly knobs: readonly (KnobRange & { readonly before: number; readonly after: number })[];
  /** 0 to 1; null where a limit or a rule stops the build as it is. */
  readonly before: number | null;
  readonly after: number | null;
  /** The rule or limit that stops the build as it is. */
  readonly stoppedBy?: string;
  /** Wanted and limited measures, SI, by id. */
  readonly valuesBefore: Readonly<Record<string, number>>;
  readonly valuesAfter: Readonly<Record<string, number>>;
  readonly evaluations: number;
  /** False when it ran out of evaluations first. */
  readonly settled: boolean;
  /** Every improvement, first to last; `settings` in the order of `knobs`, SI. */
  readonly trace: readonly {
    readonly evaluations: number;
    readonly settings: readonly number[];
    readonly standing: number;
  }[];
  /** The file it was written to. */
  readonly written?: string;
}
