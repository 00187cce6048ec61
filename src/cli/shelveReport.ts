import type { Settled } from '../build/lists/ontoShelf.ts';
import type { ListPreview } from '../build/lists/readList.ts';

/** What `shelve --json` prints. */
export interface ShelveReport extends ListPreview {
  readonly settled: Settled;
  readonly onto: string;
  /** Files written; none in a preview. */
  readonly written: readonly string[];
}
