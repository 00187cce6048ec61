import type { Io } from '../io.ts';
import { printTable } from './table.ts';

/** What a plain terminal shows side by side. */
export const NARROW = 80;

type Align = 'left' | 'right';

/** Between columns. */
const GAP = 2;
/** Words of a column that may wrap are not squeezed below this. */
const LEAST_WORDS = 14;
/**
 * A table as `printTable` has it, in 80 columns: headers wrap first, then words of left-aligned columns, numbers never; what is
 * still too wide goes on in a second table below with the first column again.
 */
export function narrowTable(
  header: readonly string[],
  rows: readonly (readonly string[])[],
  align: readonly Align[] = [],
): string {
  const columns = header.map((title, i) => columnOf(title, rows, i, align[i] ?? 'left'));
  const blocks: number[][] = [];
  for (let i = 1; i < columns.length; i++) {
    const block = blocks.at(-1);
    if (block !== undefined && leastOf([0, ...block, i], columns) <= NARROW) block.push(i);
    else blocks.push([i]);
  }
  const shown = blocks.length === 0 ? [[0]] : evened(blocks, columns).map((block) => [0, ...block]);
  return shown
    .map((block) => {
      const widths = widthsOf(block, columns);
      const cut = (row: readonly string[]) =>
        block.map((i, k) =>
          columns[i]?.wraps ? wrapped(row[i] ?? '', widths[k] ?? 0, i === 0 ? '  ' : '') : (row[i] ?? ''),
        );
      const titles = block.map((i, k) => wrapped(header[i] ?? '', widths[k] ?? 0));
      return printTable(
        titles,
        rows.map(cut),
        block.map((i) => align[i] ?? 'left'),
      );
    })
    .join('\n\n');
}

interface Column {
  readonly wraps: boolean;
  /** Narrower than this it cannot be. */
  readonly least: number;
  /** Without wrapping a cell. */
  readonly natural: number;
  /** Without wrapping its header either. */
  readonly full: number;
}

function columnOf(title: string, rows: readonly (readonly string[])[], i: number, align: Align): Column {
  const cells = rows.map((row) => row[i] ?? '');
  const natural = Math.max(longestWord(title), ...cells.map((cell) => cell.length));
  const wraps = align === 'left';
  const words = Math.max(longestWord(title), ...cells.map((cell) => longestWord(cell)));
  return {
    wraps,
    natural,
    full: Math.max(natural, title.length),
    least: wraps ? Math.min(natural, Math.max(words, LEAST_WORDS)) : natural,
  };
}

const leastOf = (block: readonly number[], columns: readonly Column[]): number =>
  block.reduce((sum, i) => sum + (columns[i]?.least ?? 0), GAP * (block.length - 1));

/** As many tables, their columns shared out as evenly as they fit. */
function evened(blocks: readonly (readonly number[])[], columns: readonly Column[]): readonly number[][] {
  const all = blocks.flat();
  if (blocks.length < 2) return [all];
  const each = Math.ceil(all.length / blocks.length);
  const even = blocks.map((_, k) => all.slice(k * each, (k + 1) * each)).filter(({ length }) => length > 0);
  return even.every((block) => leastOf([0, ...block], columns) <= NARROW)
    ? even
    : blocks.map((block) => [...block]);
}

/** Headers give way first, then words of cells, the widest column before the others. */
function widthsOf(block: readonly number[], columns: readonly Column[]): number[] {
  const widths = block.map((i) => columns[i]?.full ?? 0);
  const over = () => widths.reduce((sum, width) => sum + width, GAP * (block.length - 1)) - NARROW;
  const narrow = (least: (column: Column) => number) => {
    while (over() > 0) {
      let widest = -1;
      block.forEach((i, k) => {
        const column = columns[i];
        if (column === undefined || (widths[k] ?? 0) <= least(column)) return;
        if (widest < 0 || (widths[k] ?? 0) > (widths[widest] ?? 0)) widest = k;
      });
      if (widest < 0) return;
      widths[widest] = (widths[widest] ?? 0) - 1;
    }
  };
  narrow(({ natural }) => natural);
  narrow(({ least }) => least);
  return widths;
}

/** Spaces at which a line may end: not within a band, nor between the two letters of N m. */
const BREAKS = /(?<!\d to|\u00a0N) (?!to [-\d])/;

const longestWord = (text: string): number => Math.max(0, ...text.split(BREAKS).map((word) => word.length));

/**
 * Text over as many lines as it takes, none longer than a width that its longest word fits into.
 *
 * @param indent of every line but the first
 */
export function wrapped(text: string, width: number, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAKS)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line.trim() !== '' && longer.length > width) {
      lines.push(line);
      line = indent + word;
    } else line = longer;
  }
  return [...lines, line].join('\n');
}

/** Prose for a plain terminal: every line too long goes on below itself, under where its words begin. */
export const narrowText = (text: string): string =>
  text
    .split('\n')
    .map((line) => {
      const [indent = ''] = /^(?:\s*(?:NOTE|RISK|STOP) {1,2})|^\s*/.exec(line) ?? [];
      return line.length <= NARROW
        ? line
        : indent +
            wrapped(line.slice(indent.length), NARROW - indent.length).replaceAll(
              '\n',
              `\n${' '.repeat(indent.length)}`,
            );
    })
    .join('\n');

/** The same, its prose in 80 columns; JSON as it is. */
export const inColumns = (io: Io, { json }: { readonly json?: boolean }): Io =>
  json === true ? io : { ...io, writeOut: (text) => io.writeOut(narrowText(text)) };
