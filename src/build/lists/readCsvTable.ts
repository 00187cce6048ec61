import Papa from 'papaparse';
import { nearestName } from '../../units/nearestName.ts';
import { type FileError, failed, type Reading } from '../read/fileError.ts';
import { LONGEST_FILE } from '../read/parseText.ts';
import { MOST_COLUMNS, MOST_ROWS, type Table, type TableRow } from './table.ts';

/** What may stand between two cells. */
export const SEPARATORS = [',', ';', '\t', '|'] as const;
export type Separator = (typeof SEPARATORS)[number];

/**
 * Reads a list with names of columns in its first row: CSV by RFC 4180, also with semicolons, tabs or bars, with
 * or without a byte order mark, cells in quotes over several lines. Empty rows are passed over.
 *
 * @param separator found by the first row when absent: the one that stands in it most often outside quotes
 */
export function readCsvTable(text: string, file: string, separator?: Separator): Reading<Table> {
  const whole = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const errors: FileError[] = [];
  const complain = (
    line: number,
    column: number,
    words: Omit<FileError, 'file' | 'line' | 'column' | 'path'>,
  ) => errors.push({ file, line, column, path: '', ...words });
  if (whole.length > LONGEST_FILE) {
    complain(1, 1, {
      says: 'the list is too long',
      found: `${Math.ceil(whole.length / 1024)} kB`,
      allowed: `up to ${LONGEST_FILE / 1024} kB`,
      remedy: 'Check that it is the right file, or split it.',
    });
    return failed(errors);
  }
  const rows = splitRows(whole, separator ?? usualSeparator(whole), complain);
  const [header, ...body] = rows;
  if (header === undefined || body.length === 0) {
    if (errors.length === 0) {
      complain(header?.line ?? 1, 1, {
        says: header === undefined ? 'the list is empty' : 'the list has names of columns and no rows',
        found: 'nothing below',
        allowed: 'a first row with the names of the columns, then one row a part',
        remedy: 'Check that it is the right file.',
      });
    }
    return failed(errors);
  }
  const columns = header.cells.map((cell) => cell.trim());
  checkColumns(columns, header.line, complain);
  if (body.length > MOST_ROWS) {
    complain(body[MOST_ROWS]?.line ?? 1, 1, {
      says: 'the list has too many rows',
      found: `${body.length} rows`,
      allowed: `up to ${MOST_ROWS}`,
      remedy: 'Split it.',
    });
  }
  for (const { line, cells } of body.slice(0, MOST_ROWS)) {
    const extra = cells.slice(columns.length).find((cell) => cell.trim() !== '');
    if (extra !== undefined) {
      complain(line, columns.length + 1, {
        says: `the row has ${cells.length} cells under ${columns.length} columns`,
        found: JSON.stringify(extra.slice(0, 40)),
        allowed: 'as many cells as columns',
        remedy: 'Put a cell that holds the separator into quotes, or tell the separator.',
      });
    }
  }
  if (errors.length > 0) return failed(errors);
  const filled = body.map(({ line, cells }) => ({
    line,
    cells: columns.map((_, column) => (cells[column] ?? '').trim()),
  }));
  return { ok: true, value: { file, columns, rows: filled } };
}

type Complain = (
  line: number,
  column: number,
  words: Omit<FileError, 'file' | 'line' | 'column' | 'path'>,
) => void;

function splitRows(text: string, separator: Separator, complain: Complain): readonly TableRow[] {
  const rows: TableRow[] = [];
  let from = 0;
  let line = 1;
  Papa.parse<string[]>(text, {
    delimiter: separator,
    newline: '\n',
    step: ({ data, errors, meta }, parser) => {
      const [fault] = errors;
      if (fault !== undefined) {
        complain(line, 1, {
          says: 'a quote is opened and not closed, or stands inside a cell',
          found: JSON.stringify(text.slice(from, from + 40)),
          allowed: 'cells in quotes as a whole, with a quote inside written twice',
          remedy: 'Close the quote, or write it twice.',
        });
        parser.abort();
        return;
      }
      if (data.some((cell) => cell.trim() !== '')) rows.push({ line, cells: data });
      for (let at = from; at < meta.cursor; at++) if (text[at] === '\n') line++;
      from = meta.cursor;
    },
  });
  return rows;
}

/** Of the first row that holds anything, outside quotes; a comma where none stands. */
function usualSeparator(text: string): Separator {
  const first = /^\n*(.*)/.exec(text)?.[1]?.replace(/"[^"]*"/g, '') ?? '';
  const counts = SEPARATORS.map((each) => first.split(each).length);
  return SEPARATORS[counts.indexOf(Math.max(...counts))] ?? ',';
}

function checkColumns(columns: readonly string[], line: number, complain: Complain): void {
  if (columns.length > MOST_COLUMNS) {
    complain(line, MOST_COLUMNS + 1, {
      says: 'the list has too many columns',
      found: `${columns.length}`,
      allowed: `up to ${MOST_COLUMNS}`,
      remedy: 'Take out those that tell nothing of a part.',
    });
  }
  for (const [index, name] of columns.entries()) {
    const earlier = columns.indexOf(name);
    if (name !== '' && earlier < index) {
      complain(line, index + 1, {
        says: `two columns have the name "${name.slice(0, 40)}"`,
        found: `columns ${earlier + 1} and ${index + 1}`,
        allowed: 'each name once',
        remedy: 'Rename one.',
      });
    }
  }
}

/** The remedy for a column that a list does not have. */
export function nearestColumn(name: string, columns: readonly string[]): string {
  const near = nearestName(name, columns);
  return near
    ? `Did you mean "${near}"?`
    : `The list has: ${columns.filter(Boolean).join(', ').slice(0, 200)}.`;
}
