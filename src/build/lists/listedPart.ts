import type { FileError } from '../read/fileError.ts';
import type { Part } from '../schema/part.ts';
import type { Shelf } from '../shelf.ts';

/** One row of a list, read: a part, or all that is wrong with it. */
export interface ListedPart {
  readonly line: number;
  readonly id: string;
  readonly name: string;
  /** In the form of a shelf file. */
  readonly raw: Readonly<Record<string, unknown>>;
  /** Absent when the row cannot be read. */
  readonly part?: Part;
  readonly errors: readonly FileError[];
  /** The part it is again, on a shelf or further up in the list. */
  readonly same?: Same;
}

/** What there is already. */
export interface Known {
  readonly shipped: Shelf;
  /** Parts of the user's own shelf as its file wrote them, by id. */
  readonly own: ReadonlyMap<string, Readonly<Record<string, unknown>>>;
}

/** A part met again. */
export interface Same {
  readonly where: 'own shelf' | 'shipped shelf' | 'list';
  readonly id: string;
  /** Of the list, when it stands there. */
  readonly line?: number;
  /** Told word for word as it is known already: nothing to decide. */
  readonly unchanged: boolean;
}
