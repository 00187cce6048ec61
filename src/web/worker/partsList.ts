import { type ColumnUse, isFault, type ListColumns, readUse } from '../../build/lists/columns.ts';
import { remembered } from '../../build/lists/columnsOfLists.ts';
import { fieldsOfKind } from '../../build/lists/fieldsOfKind.ts';
import type { ListedPart } from '../../build/lists/listedPart.ts';
import { ontoShelf, settle } from '../../build/lists/ontoShelf.ts';
import { readList, readTable } from '../../build/lists/readList.ts';
import type { Table } from '../../build/lists/table.ts';
import { type FileError, fileErrorText } from '../../build/read/fileError.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import { PART_KINDS, type PartKind } from '../../build/schema/partKinds.ts';
import type { Shelf } from '../../build/shelf.ts';
import { factsOfPart } from '../../report/partFacts.ts';
import { DIMENSIONS, type Unit } from '../../units/dimensions.ts';
import type {
  ListColumnView,
  ListFieldView,
  ListRowView,
  PartsListAsk,
  PartsListView,
} from './partsListProtocol.ts';

/** Reads a list of parts as the command line's `shelve` would, for a page that asks what its columns are. */
export function partsListView(
  { text, file, wishes, memory, ownShelf, same }: PartsListAsk,
  shipped: Shelf,
): PartsListView {
  const kind = wishes.kind;
  const table = readTable(text, file, wishes.separator);
  if (!table.ok) return faulty(table.errors, [], kind);
  const own = ownShelf === undefined ? undefined : readShelf(ownShelf, 'your shelf', shipped);
  const known = {
    shipped,
    own: new Map(own?.ok ? [...own.value.raw].filter(([id, raw]) => shipped.raw.get(id) !== raw) : []),
  };
  const read = readList(text, file, wishes, memory, known);
  if (!read.ok) {
    const told = Object.entries(wishes.columns ?? {});
    return faulty(read.errors, columnViews(table.value, Object.fromEntries(told)), kind);
  }
  const { parts, columns, by, decimals } = read.value;
  const all = new Set([...shipped.parts.keys(), ...known.own.keys()]);
  const settled = settle(parts, () => same, all);
  const errors = settled.bad.flatMap((part) => part.errors);
  const ready =
    settled.open.length === 0 && settled.taken.length > 0
      ? { shelf: ontoShelf(ownShelf, settled.taken), memory: remembered(memory, columns) }
      : undefined;
  return {
    columns: columnViews(table.value, columns.columns),
    fields: fieldViews(columns.kind),
    reasons: [],
    by,
    decimals,
    ...(columns.kind === undefined ? {} : { kind: columns.kind }),
    rows: parts.map((part) => rowView(part, same)),
    errors: errors.map(fileErrorText),
    bad: settled.bad.length,
    open: settled.open.length,
    known: parts.filter((part) => part.same !== undefined && !part.same.unchanged).length,
    taken: settled.taken.length,
    ...(ready === undefined ? {} : { ready }),
  };
}

const faulty = (
  errors: readonly FileError[],
  columns: readonly ListColumnView[],
  kind: PartKind | undefined,
): PartsListView => ({
  columns,
  fields: fieldViews(kind),
  reasons: errors.map(fileErrorText),
  ...(kind === undefined ? {} : { kind }),
  rows: [],
  errors: [],
  bad: 0,
  open: 0,
  known: 0,
  taken: 0,
});

function columnViews(table: Table, columns: ListColumns['columns']): readonly ListColumnView[] {
  return table.columns.map((name, index) => {
    const column = columns[name];
    const text = column === undefined ? '' : typeof column === 'string' ? column : column.as;
    const use: ColumnUse | undefined = text === '' ? undefined : usable(text);
    const sample = table.rows.map(({ cells }) => cells[index] ?? '').find((cell) => cell !== '') ?? '';
    const field = use === undefined ? '' : use.tells === 'value' ? use.field : `${use.tells} of ${use.field}`;
    return { name, sample: sample.slice(0, 60), field, unit: use?.unit ?? '' };
  });
}

function usable(text: string): ColumnUse | undefined {
  const use = readUse(text);
  return isFault(use) ? undefined : use;
}

/** Fields of the kind, or of any where a column tells it; and that column. */
function fieldViews(kind: PartKind | undefined): readonly ListFieldView[] {
  const own = kind === undefined ? anyFields() : fieldsOfKind(kind);
  return [
    { path: 'kind', units: [] },
    ...own.map(({ path, cell }): ListFieldView => {
      if (cell.form === 'box') return { path, units: ['mm', 'cm', 'm', 'in'] };
      if (cell.form === 'money') return { path, units: ['GBP', 'EUR', 'USD'] };
      if (cell.form !== 'quantity') return { path, units: [] };
      const units: readonly Unit[] = DIMENSIONS[cell.dimension].units;
      return { path, units: units.map((unit) => unit.text) };
    }),
    ...own.flatMap(({ path, cell, listed }) =>
      cell.form === 'quantity' && cell.trusted && !listed
        ? ['trust', 'spread', 'source'].map((tells) => ({
            path: `${tells} of ${path}`,
            units: tells === 'spread' ? ['%'] : [],
          }))
        : [],
    ),
  ];
}

function anyFields() {
  const seen = new Set<string>();
  return PART_KINDS.flatMap((kind) => fieldsOfKind(kind)).filter(
    ({ path }) => !seen.has(path) && seen.add(path),
  );
}

function rowView(listed: ListedPart, choice: PartsListAsk['same']): ListRowView {
  const { line, name, part, same } = listed;
  return {
    line,
    name: name === '' ? listed.id : name,
    says: part === undefined ? '' : `${part.kind}: ${factsOfPart(part)}`,
    price: part === undefined ? '' : `${part.price.amount.toFixed(2)} ${part.price.currency}`,
    bad: part === undefined,
    becomes: becomes(part !== undefined, same, choice),
  };
}

const CHOSEN = { old: 'the old one stays', new: 'takes its place', both: 'both stay' };

function becomes(reads: boolean, same: ListedPart['same'], choice: PartsListAsk['same']): string {
  if (!reads) return 'can not be read';
  if (same === undefined) return 'new';
  if (same.unchanged) return 'there already';
  const where = same.where === 'list' ? `in line ${same.line}` : `on the ${same.where}`;
  return `known ${where}${choice === undefined ? '' : `: ${CHOSEN[choice]}`}`;
}
