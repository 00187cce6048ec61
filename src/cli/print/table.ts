import Table from 'cli-table3';

const RULED = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '  ',
};

/** A ruled table without boxes: reads well in a terminal and in a pipe. First row is the header. */
export function printTable(
  header: readonly string[],
  rows: readonly (readonly string[])[],
  align: readonly ('left' | 'right')[] = [],
): string {
  const table = new Table({
    chars: RULED,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
    colAligns: header.map((_, column) => align[column] ?? 'left'),
  });
  if (header.some((cell) => cell !== '')) {
    table.push([...header]);
    table.push(header.map((cell) => '-'.repeat(Math.max(...cell.split('\n').map(({ length }) => length)))));
  }
  for (const row of rows) table.push([...row]);
  return table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}
