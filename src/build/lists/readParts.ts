import { nearestName } from '../../units/nearestName.ts';
import type { Trust } from '../../units/trusted.ts';
import { baseOn } from '../read/baseOn.ts';
import { check } from '../read/check.ts';
import { type FileError, type Path, pathText } from '../read/fileError.ts';
import { PART_SCHEMAS, type Part } from '../schema/part.ts';
import { freeId, idOfName } from './ids.ts';
import type { Known, ListedPart } from './listedPart.ts';
import { atRates, type Rates } from './rates.ts';
import { type ListSettings, type RowData, rowData, whereText } from './rowData.ts';
import { sameAs } from './same.ts';
import type { Table, TableRow } from './table.ts';

export interface PartsSettings extends ListSettings {
  /** Of values that do not tell their own. */
  readonly trust?: Trust;
  readonly source?: string;
  /** Prices are converted when these know their currency. */
  readonly rates?: Rates;
}

/**
 * Every row of a list as a part, each checked by itself with the shelf's own schema: rows that cannot be read hold nothing up.
 * Parts without an id get one from their name.
 */
export function readParts(table: Table, settings: PartsSettings, known: Known): readonly ListedPart[] {
  const earlier: ListedPart[] = [];
  const taken = new Set([...known.shipped.parts.keys(), ...known.own.keys()]);
  for (const row of table.rows) {
    const { told, ...listed } = readRow(table, row, settings, known);
    const wanted = told ? listed.id : undefined;
    const same =
      listed.part === undefined ? undefined : sameAs(listed.part, listed.raw, wanted, known, earlier);
    const id = told || same !== undefined ? listed.id : freeId(listed.id, taken);
    taken.add(id);
    earlier.push({
      ...listed,
      id,
      raw: { ...listed.raw, id },
      ...(listed.part === undefined ? {} : { part: { ...listed.part, id } }),
      ...(same === undefined ? {} : { same }),
    });
  }
  return earlier;
}

function readRow(
  table: Table,
  row: TableRow,
  settings: PartsSettings,
  known: Known,
): Omit<ListedPart, 'same'> & { readonly told: boolean } {
  const data = rowData(table, row, settings);
  const { trust, source, rates } = settings;
  const name = typeof data.raw.name === 'string' ? data.raw.name : '';
  const id = typeof data.raw.id === 'string' ? data.raw.id : idOfName(name);
  const raw = converted(
    {
      id,
      ...(trust === undefined ? {} : { trust }),
      ...(source === undefined ? {} : { source }),
      ...data.raw,
    },
    rates,
  );
  const errors = [...data.errors];
  const part = data.kind === undefined ? undefined : checked(table, row, raw, data, known, errors);
  return {
    told: typeof data.raw.id === 'string',
    line: row.line,
    id,
    name,
    raw,
    errors,
    ...(errors.length > 0 || part === undefined ? {} : { part }),
  };
}

/** The part that a row makes; what its schema finds wrong is put to the columns it came from. */
function checked(
  table: Table,
  row: TableRow,
  raw: Readonly<Record<string, unknown>>,
  data: RowData,
  known: Known,
  errors: FileError[],
): Part | undefined {
  if (data.kind === undefined) return undefined;
  const id = String(raw.id);
  const find = (wanted: string) =>
    wanted === id ? raw : (known.own.get(wanted) ?? known.shipped.raw.get(wanted));
  const based = baseOn(id, find);
  const at = (path: Path) => ({ line: row.line, column: data.columnOf(pathText(path)) ?? 1 });
  if (!based.ok) {
    const near =
      based.missing === undefined ? undefined : nearestName(based.missing, [...known.shipped.raw.keys()]);
    errors.push({
      file: table.file,
      ...at(['basedOn']),
      path: 'basedOn',
      says: based.says,
      found: `"${String(raw.basedOn).slice(0, 40)}"`,
      allowed: 'the id of another part of the same kind',
      remedy: near ? `Did you mean "${near}"?` : based.remedy,
    });
    return undefined;
  }
  const found = check(PART_SCHEMAS[data.kind], based.value, { placeOf: at }, table.file);
  // A cell that did not read has been told already; its field is then missing for no other reason.
  const told = new Set(data.errors.map(({ column }) => column));
  for (const error of found.errors) {
    const column = data.columnOf(error.path);
    if (column !== undefined && told.has(column)) continue;
    errors.push({
      ...error,
      path: column === undefined ? error.path : whereText(table, column - 1, error.path),
      ...remedyOf(error),
    });
  }
  return found.value as Part | undefined;
}

const remedyOf = ({ says, remedy }: FileError) =>
  says === 'is missing' ? { remedy: `Tell the column that holds it, or fill the cell. ${remedy}` } : {};

function converted(
  raw: Readonly<Record<string, unknown>>,
  rates: Rates | undefined,
): Readonly<Record<string, unknown>> {
  if (rates === undefined || typeof raw.price !== 'string') return raw;
  const { price, says } = atRates(raw.price, rates);
  if (says === undefined) return raw;
  const note = typeof raw.note === 'string' ? `${raw.note}; ${says}` : says;
  return { ...raw, price, note };
}
