import { check } from '../read/check.ts';
import { type FileError, failed, type Reading } from '../read/fileError.ts';
import { parseText } from '../read/parseText.ts';
import {
  COLUMNS_FORMAT,
  type ColumnsFile,
  type ColumnUse,
  columnsFile,
  isFault,
  type ListColumns,
  readUse,
} from './columns.ts';
import { fieldsOfKind } from './fieldsOfKind.ts';
import type { Decimals } from './numberText.ts';
import { decimalsOf } from './numberText.ts';
import { nearestColumn, type Separator } from './readCsvTable.ts';
import type { Table } from './table.ts';

/** Reads the file in which a mapping of columns is remembered. */
export function readColumnsFile(text: string, file: string): Reading<ColumnsFile> {
  const parsed = parseText(text, file);
  if (!parsed.ok) return parsed;
  const { value, errors } = check(columnsFile, parsed.value.data, parsed.value, file);
  return value === undefined ? failed(errors) : { ok: true, value };
}

/** The mapping made last for a list that looks like this one: every column it names is there. */
export function columnsFor(table: Table, { lists }: ColumnsFile): ListColumns | undefined {
  return lists.find(({ columns }) => Object.keys(columns).every((name) => table.columns.includes(name)));
}

/** The file with one mapping more, in front, in place of one for the same columns. */
export function remembered(file: ColumnsFile | undefined, columns: ListColumns): ColumnsFile {
  const same = (other: ListColumns) =>
    Object.keys(other.columns).sort().join('\n') === Object.keys(columns.columns).sort().join('\n');
  const others = (file?.lists ?? []).filter((other) => !same(other));
  return { format: COLUMNS_FORMAT, lists: [columns, ...others].slice(0, 50) };
}

const SEPARATOR_WORDS: Readonly<Record<NonNullable<ListColumns['separator']>, Separator>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  bar: '|',
};
export const separatorOf = (word: ListColumns['separator']): Separator | undefined =>
  word === undefined ? undefined : SEPARATOR_WORDS[word];

/** The columns of a list by name as they are used, and what stands before its decimals. */
export function usesOf(
  table: Table,
  columns: ListColumns,
): Reading<{ readonly uses: ReadonlyMap<string, ColumnUse>; readonly decimals: Decimals }> {
  const errors: FileError[] = [];
  const uses = new Map<string, ColumnUse>();
  const told = new Map<string, string>();
  for (const [name, column] of Object.entries(columns.columns)) {
    const index = table.columns.indexOf(name);
    const place = {
      file: table.file,
      line: 1,
      column: Math.max(index, 0) + 1,
      path: `"${name.slice(0, 40)}"`,
    };
    const text = typeof column === 'string' ? column : column.as;
    const use = readUse(text, columns.kind);
    if (index < 0) {
      errors.push({
        ...place,
        says: 'the list has no such column',
        found: `"${name.slice(0, 40)}"`,
        allowed: 'a name of its first row',
        remedy: nearestColumn(name, table.columns),
      });
    } else if (isFault(use)) errors.push({ ...place, ...use });
    else {
      const key = `${use.tells} of ${use.field}`;
      const other = told.get(key);
      if (other !== undefined) {
        errors.push({
          ...place,
          says: `two columns are told to be ${use.tells === 'value' ? use.field : key}`,
          found: `"${other}" and "${name}"`,
          allowed: 'one column a field',
          remedy: 'Leave one out.',
        });
      }
      told.set(key, name);
      uses.set(name, { ...use, ...(typeof column === 'string' ? {} : { words: column.words }) });
    }
  }
  const decimals = columns.decimals ?? decimalsIn(table, uses);
  if (decimals === 'unclear') {
    errors.push({
      file: table.file,
      line: 1,
      column: 1,
      path: '',
      says: 'it is not clear what stands before the decimals',
      found: 'numbers such as 1,234 that read two ways, or both marks',
      allowed: 'point or comma',
      remedy: 'Tell which of the two.',
    });
  }
  return errors.length > 0 || decimals === 'unclear'
    ? failed(errors)
    : { ok: true, value: { uses, decimals: decimals ?? 'point' } };
}

/** Read off the columns of numbers only: a name may hold whatever marks it likes. */
function decimalsIn(table: Table, uses: ReadonlyMap<string, ColumnUse>): Decimals | 'unclear' | undefined {
  const numbers = table.columns.flatMap((name, index) => {
    const use = uses.get(name);
    return use !== undefined && use.tells === 'value' && !WORDY.has(use.field)
      ? table.rows.map(({ cells }) => cells[index] ?? '')
      : [];
  });
  return decimalsOf(numbers);
}

/** Fields of every kind that hold no numbers. */
const WORDY = new Set([
  'kind',
  ...fieldsOfKind('motor').flatMap(({ path, cell }) =>
    cell.form === 'text' || cell.form === 'size' ? [path] : [],
  ),
  'size',
]);
