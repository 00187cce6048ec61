import { type FileError, failed, type Reading } from '../read/fileError.ts';
import { parseText } from '../read/parseText.ts';
import { MOST_COLUMNS, MOST_ROWS, type Table } from './table.ts';

/**
 * Reads a list of groups from YAML or JSON as a table: a list at the top, or under one field of whatever name. Groups
 * inside a part become columns with a dot between (`shaft.diameter`), short lists one cell with slashes.
 */
export function readYamlTable(text: string, file: string): Reading<Table> {
  const parsed = parseText(text.replace(/^\uFEFF/, ''), file);
  if (!parsed.ok) return parsed;
  const { data, placeOf } = parsed.value;
  const found = listIn(data);
  const whole = (says: string, shown: string, allowed: string): Reading<Table> => {
    const error: FileError = {
      file,
      line: 1,
      column: 1,
      path: '',
      says,
      found: shown,
      allowed,
      remedy: 'Check that it is the right file.',
    };
    return failed([error]);
  };
  if (found === undefined || found.items.length === 0) {
    return whole('there is no list of parts', 'no list of groups', 'a list with one group of fields a part');
  }
  if (found.items.length > MOST_ROWS) {
    return whole('the list has too many rows', `${found.items.length} rows`, `up to ${MOST_ROWS}`);
  }
  const flat = found.items.map((item) => flattened(item));
  const columns = [...new Set(flat.flatMap((cells) => [...cells.keys()]))];
  if (columns.length > MOST_COLUMNS) {
    return whole('the list has too many columns', `${columns.length}`, `up to ${MOST_COLUMNS}`);
  }
  const rows = flat.map((cells, index) => ({
    line: placeOf([...found.path, index]).line,
    cells: columns.map((column) => cells.get(column) ?? ''),
  }));
  return { ok: true, value: { file, columns, rows } };
}

type Group = Readonly<Record<string, unknown>>;

function listIn(
  data: unknown,
): { readonly items: readonly Group[]; readonly path: readonly string[] } | undefined {
  if (isListOfGroups(data)) return { items: data, path: [] };
  if (!isGroup(data)) return undefined;
  const lists = Object.entries(data).filter((entry): entry is [string, readonly Group[]] =>
    isListOfGroups(entry[1]),
  );
  const [only] = lists;
  return only !== undefined && lists.length === 1 ? { items: only[1], path: [only[0]] } : undefined;
}

const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isListOfGroups = (value: unknown): value is readonly Group[] =>
  Array.isArray(value) && value.length > 0 && value.every(isGroup);

function flattened(group: Group, before = ''): Map<string, string> {
  const cells = new Map<string, string>();
  for (const [key, value] of Object.entries(group)) {
    const name = before === '' ? key : `${before}.${key}`;
    if (isGroup(value)) for (const [inner, text] of flattened(value, name)) cells.set(inner, text);
    else if (Array.isArray(value)) cells.set(name, value.map(cellText).join(' / '));
    else cells.set(name, cellText(value));
  }
  return cells;
}

const cellText = (value: unknown): string =>
  value === null || value === undefined
    ? ''
    : typeof value === 'object'
      ? JSON.stringify(value)
      : String(value).trim();
