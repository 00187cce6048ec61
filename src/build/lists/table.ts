/** A list of parts as it came: names of columns, and rows of text. */
export interface Table {
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly TableRow[];
}

export interface TableRow {
  /** Where it begins in the file, from 1. */
  readonly line: number;
  /** One a column; empty where the row tells nothing. */
  readonly cells: readonly string[];
}

/** As many rows and columns as a list of parts may have. */
export const MOST_ROWS = 2000;
export const MOST_COLUMNS = 100;
