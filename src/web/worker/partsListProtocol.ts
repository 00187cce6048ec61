import type { ColumnsFile } from '../../build/lists/columns.ts';
import type { SameChoice } from '../../build/lists/ontoShelf.ts';
import type { ListWishes } from '../../build/lists/readList.ts';

/** A list of parts that a user gave, and what was said of it so far. */
export interface PartsListAsk {
  readonly text: string;
  readonly file: string;
  readonly wishes: ListWishes;
  /** How columns were read before. */
  readonly memory: ColumnsFile | undefined;
  readonly ownShelf: string | undefined;
  /** For parts that are known already. */
  readonly same: SameChoice | undefined;
}

export interface ListColumnView {
  readonly name: string;
  /** The first cell that holds anything. */
  readonly sample: string;
  /** `mass`; empty where the column is left out. */
  readonly field: string;
  readonly unit: string;
}

/** A field that a column may be, and the units it may be told in. */
export interface ListFieldView {
  readonly path: string;
  readonly units: readonly string[];
}

export interface ListRowView {
  readonly line: number;
  readonly name: string;
  /** Of a row that reads; `becomes` says what it will be. */
  readonly says: string;
  readonly price: string;
  readonly becomes: string;
  readonly bad: boolean;
}

/** A list as it would be taken in; or why not, with its columns where they can be told. */
export interface PartsListView {
  readonly columns: readonly ListColumnView[];
  readonly fields: readonly ListFieldView[];
  /** What is wrong with the whole of it. */
  readonly reasons: readonly string[];
  readonly by?: 'told' | 'remembered' | 'guessed';
  readonly decimals?: 'point' | 'comma';
  readonly kind?: string;
  readonly rows: readonly ListRowView[];
  /** What is wrong with single rows, each in words. */
  readonly errors: readonly string[];
  readonly bad: number;
  /** Known already, and nothing said of them. */
  readonly open: number;
  readonly known: number;
  readonly taken: number;
  /** The user's shelf with them laid onto it, and the columns to remember. */
  readonly ready?: { readonly shelf: string; readonly memory: ColumnsFile };
}
