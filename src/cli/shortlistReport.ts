import type { Assessment } from '../assess/assessment.ts';
import type { RankStability } from '../choose/rankStability.ts';
import type { SearchCounts } from '../choose/shortlist/counts.ts';
import type { Relaxed } from '../choose/shortlist/relax.ts';
import type { SoftWant } from '../choose/shortlist/softWants.ts';
import type { HardLimit, Scored } from '../choose/shortlist/types.ts';

/** What `shortlist --json` prints. */
export interface ShortlistReport {
  readonly brief: string;
  readonly wants: readonly SoftWant[];
  readonly limits: readonly HardLimit[];
  readonly riskCost: number;
  /** Combinations in the space. */
  readonly size: number;
  readonly counts: SearchCounts;
  /** False when it was stopped before its end. */
  readonly finished: boolean;
  readonly top: readonly Scored[];
  /** Of `top`, in order, with bands. */
  readonly assessments: readonly Assessment[];
  readonly front: readonly Scored[];
  /** Of the first eight. */
  readonly stability?: RankStability;
  readonly relaxed: readonly Relaxed[];
}
