import type { SearchCounts } from './counts.ts';

/** Counts while a task runs; the only thing in this room that changes as it is used. */
export interface Tally {
  readonly excluded: Map<string, number>;
  readonly failed: Map<string, number>;
  bounded: number;
  evaluated: number;
}

export const newTally = (): Tally => ({ excluded: new Map(), failed: new Map(), bounded: 0, evaluated: 0 });

export function exclude(tally: Tally, because: string, combinations: number): void {
  if (combinations > 0) tally.excluded.set(because, (tally.excluded.get(because) ?? 0) + combinations);
}

export const countsOf = ({ excluded, failed, bounded, evaluated }: Tally): SearchCounts => ({
  excluded: Object.fromEntries(excluded),
  failed: Object.fromEntries(failed),
  bounded,
  evaluated,
});
