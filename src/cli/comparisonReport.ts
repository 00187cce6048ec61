import type { Assessment } from '../assess/assessment.ts';
import type { Cause } from '../choose/causes.ts';
import type { Comparison } from '../choose/compare.ts';
import type { RankStability } from '../choose/rankStability.ts';

/** What `compare --json` prints. */
export interface ComparisonReport {
  readonly comparison: Comparison;
  /** What makes the runner-up differ from the leader, seat by seat. */
  readonly causes: readonly Cause[];
  readonly assessments: readonly Assessment[];
  /** How often each comes first, second, ... when every unsure input is drawn. */
  readonly stability: RankStability;
}
