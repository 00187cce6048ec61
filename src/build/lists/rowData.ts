import { nearestName } from '../../units/nearestName.ts';
import type { FileError } from '../read/fileError.ts';
import { PART_KINDS, type PartKind } from '../schema/partKinds.ts';
import { type CellValue, cellValue } from './cellValue.ts';
import type { ColumnUse } from './columns.ts';
import { fieldsOfKind } from './fieldsOfKind.ts';
import type { Decimals } from './numberText.ts';
import type { Table, TableRow } from './table.ts';

/** One row in the form of a shelf file, with the columns its fields came from. */
export interface RowData {
  readonly kind: PartKind | undefined;
  readonly raw: Readonly<Record<string, unknown>>;
  readonly errors: readonly FileError[];
  /** Of a field as `pathText` writes it, from 1; nothing where no column tells it. */
  readonly columnOf: (path: string) => number | undefined;
}

/** What is told once for a whole list. */
export interface ListSettings {
  readonly uses: ReadonlyMap<string, ColumnUse>;
  readonly kind?: PartKind;
  readonly decimals: Decimals;
}

/** A row's cells put into the fields of its kind. What a field may hold is checked afterwards, by the shelf's own schema. */
export function rowData(table: Table, row: TableRow, settings: ListSettings): RowData {
  const errors: FileError[] = [];
  const from = new Map(
    table.columns.flatMap((name, index) => {
      const use = settings.uses.get(name);
      return use?.tells === 'value' ? [[use.field, index + 1] as const] : [];
    }),
  );
  const values = new Map<string, unknown>();
  const doubts = new Map<string, Record<string, string>>();
  const used = table.columns.flatMap((name, index) => {
    const use = settings.uses.get(name);
    const text = row.cells[index] ?? '';
    return use === undefined || text === '' ? [] : [{ name, index, use, text }];
  });
  const complain = (
    index: number,
    field: string,
    words: Omit<FileError, 'file' | 'line' | 'column' | 'path'>,
  ) =>
    errors.push({
      file: table.file,
      line: row.line,
      column: index + 1,
      path: whereText(table, index, field),
      ...words,
    });

  const kind = kindOf(used, settings.kind, complain);
  const fields = new Map(kind === undefined ? [] : fieldsOfKind(kind).map((field) => [field.path, field]));
  for (const { index, use, text } of used) {
    if (use.field === 'kind' || kind === undefined) continue;
    const field = fields.get(use.field);
    if (field === undefined) {
      complain(index, use.field, {
        says: `a ${kind} has no field "${use.field}"`,
        found: `"${text.slice(0, 40)}"`,
        allowed: 'an empty cell in this row',
        remedy: 'Empty the cell, or leave the column out.',
      });
      continue;
    }
    if (use.tells !== 'value') {
      if (field.cell.form === 'quantity' && field.cell.trusted && !field.listed) {
        const words = use.words?.[text] ?? text;
        const told =
          use.tells === 'spread' && use.unit !== undefined && /^[\d.,]+$/.test(words)
            ? `${words} ${use.unit}`
            : words;
        doubts.set(use.field, { ...doubts.get(use.field), [use.tells]: told.replace(/(\d),(\d)/, '$1.$2') });
      } else {
        complain(index, use.field, {
          says: `${use.field} has no ${use.tells} of its own`,
          found: `"${text.slice(0, 40)}"`,
          allowed: 'measured quantities such as mass',
          remedy: 'Leave the column out, or tell it of the whole part.',
        });
      }
      continue;
    }
    const value: CellValue = cellValue(text, field, use, settings.decimals);
    if (value.ok) values.set(use.field, value.value);
    else complain(index, use.field, { found: `"${text.slice(0, 40)}"`, ...value });
  }
  for (const [field, doubt] of doubts) {
    if (values.has(field)) values.set(field, { value: values.get(field), ...doubt });
  }
  return {
    kind,
    raw: { ...(kind === undefined ? {} : { kind }), ...grouped(values) },
    errors,
    columnOf: (path) => {
      const own = [...from].find(
        ([field]) => field === path || field.startsWith(`${path}.`) || path.startsWith(`${field}[`),
      );
      return own?.[1];
    },
  };
}

/** `"Gewicht" (mass)`: the list's own word first, as that is what stands in front of the person. */
export function whereText(table: Table, index: number, field: string): string {
  const name = table.columns[index] ?? '';
  return name === field || name === '' ? field : `"${name}" (${field})`;
}

type Used = { readonly index: number; readonly use: ColumnUse; readonly text: string };
type Complain = (
  index: number,
  field: string,
  words: Omit<FileError, 'file' | 'line' | 'column' | 'path'>,
) => void;

function kindOf(
  used: readonly Used[],
  usual: PartKind | undefined,
  complain: Complain,
): PartKind | undefined {
  const told = used.find(({ use }) => use.field === 'kind' && use.tells === 'value');
  if (told === undefined) {
    if (usual === undefined) {
      complain(0, 'kind', {
        says: 'the kind of part is not told',
        found: 'no kind',
        allowed: `one of ${PART_KINDS.join(', ')}`,
        remedy: 'Tell the kind of the whole list, or the column that holds it.',
      });
    }
    return usual;
  }
  const text = told.use.words?.[told.text] ?? told.text;
  const kind = PART_KINDS.find((each) => each.toLowerCase() === text.toLowerCase());
  if (kind === undefined) {
    const near = nearestName(text, PART_KINDS);
    complain(told.index, 'kind', {
      says: `"${text.slice(0, 40)}" is not a kind of part`,
      found: `"${told.text.slice(0, 40)}"`,
      allowed: `one of ${PART_KINDS.join(', ')}`,
      remedy: near ? `Did you mean "${near}"?` : "Tell what the list's word means.",
    });
  }
  return kind;
}

/** Paths with dots to groups. */
export function grouped(values: ReadonlyMap<string, unknown>): Readonly<Record<string, unknown>> {
  const data: Record<string, unknown> = {};
  for (const [path, value] of values) {
    const [first = '', ...rest] = path.split('.');
    if (rest.length === 0) data[first] = value;
    else
      data[first] = {
        ...(data[first] as object | undefined),
        ...grouped(new Map([[rest.join('.'), value]])),
      };
  }
  return data;
}
