import type { Reading } from '../read/fileError.ts';
import type { PartKind } from '../schema/partKinds.ts';
import type { ColumnsFile, ListColumns } from './columns.ts';
import { columnsFor, separatorOf, usesOf } from './columnsOfLists.ts';
import { guessColumns } from './guessColumns.ts';
import type { Known, ListedPart } from './listedPart.ts';
import type { Rates } from './rates.ts';
import { readCsvTable } from './readCsvTable.ts';
import { readParts } from './readParts.ts';
import { readYamlTable } from './readYamlTable.ts';
import type { Table } from './table.ts';

/** What the user says of a list; what is not said is remembered, or guessed and shown. */
export interface ListWishes extends Partial<Omit<ListColumns, 'columns'>> {
  /** Name of a column to what it is; an empty text leaves a column out. */
  readonly columns?: Readonly<Record<string, string>>;
  readonly rates?: Rates;
}

/** A list read and nothing kept yet. */
export interface ListPreview {
  readonly table: Table;
  /** As it was read, to be remembered. */
  readonly columns: ListColumns;
  /** How the columns were come by. */
  readonly by: 'told' | 'remembered' | 'guessed';
  readonly decimals: 'point' | 'comma';
  readonly parts: readonly ListedPart[];
}

/** Reads a list of parts from CSV, YAML or JSON; `file` tells by its ending which, and stands in errors. */
export function readList(
  text: string,
  file: string,
  wishes: ListWishes,
  memory: ColumnsFile | undefined,
  known: Known,
): Reading<ListPreview> {
  const table = readTable(text, file, wishes.separator);
  if (!table.ok) return table;
  const { columns, by } = columnsOf(table.value, wishes, memory);
  const read = usesOf(table.value, columns);
  if (!read.ok) return read;
  const { kind, trust, source } = columns;
  const parts = readParts(
    table.value,
    {
      ...read.value,
      ...(kind === undefined ? {} : { kind }),
      ...(trust === undefined ? {} : { trust }),
      ...(source === undefined ? {} : { source }),
      ...(wishes.rates === undefined ? {} : { rates: wishes.rates }),
    },
    known,
  );
  return { ok: true, value: { table: table.value, columns, by, decimals: read.value.decimals, parts } };
}

/** The table alone, for a face that asks what its columns are. */
export function readTable(text: string, file: string, separator?: ListColumns['separator']): Reading<Table> {
  return /\.(ya?ml|json)$/i.test(file)
    ? readYamlTable(text, file)
    : readCsvTable(text, file, separatorOf(separator));
}

/** What is told lies over what is remembered, and that over a guess. */
function columnsOf(
  table: Table,
  { columns: told = {}, rates: _, ...rest }: ListWishes,
  memory: ColumnsFile | undefined,
): Pick<ListPreview, 'columns' | 'by'> {
  const found = memory === undefined ? undefined : columnsFor(table, memory);
  const kind: PartKind | undefined = rest.kind ?? found?.kind;
  const base = found ?? guessColumns(table, kind);
  const fieldsTold = new Set(Object.values(told).map((text) => text.split(' in ')[0]));
  const kept = Object.entries(base.columns).filter(
    ([name, use]) =>
      told[name] === undefined && !fieldsTold.has((typeof use === 'string' ? use : use.as).split(' in ')[0]),
  );
  const columns = {
    ...Object.fromEntries(kept),
    ...Object.fromEntries(Object.entries(told).filter(([, use]) => use !== '')),
  };
  const by = found !== undefined ? 'remembered' : Object.keys(told).length > 0 ? 'told' : 'guessed';
  return { columns: { ...base, ...rest, name: table.file, columns }, by };
}
