import Papa from 'papaparse';
import { nearestName } from '../units/nearestName.ts';
import { BadInput } from './io.ts';

export interface BladeColumns {
  /** r/R */
  readonly radiusRatio: readonly number[];
  /** c/R */
  readonly chordRatio: readonly number[];
  /** [rad] */
  readonly twist: readonly number[];
}

/** A table that ends nearer the root says nothing of the tip: common practice, no source. */
const LAST_STATION = 0.9;
const HEADER = ['r/R', 'c/R', 'beta'] as const;

/** A blade table as CSV with the header `r/R,c/R,beta`, beta in degrees, stations from root to tip. */
export function readBladeTable(text: string, file: string): BladeColumns {
  // Empty lines and comments are taken out here, since an error has to name the line as it stands in the file.
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .map((line, index) => ({ line, number: index + 1 }))
    .filter(({ line }) => line.trim() !== '' && !line.startsWith('#'));
  const parsed = Papa.parse<string[]>(lines.map(({ line }) => line).join('\n'));
  const [header = [], ...rows] = parsed.data;
  const columns = findColumns(
    header.map((name) => name.trim()),
    file,
  );
  if (rows.length < 3 || rows.length > 200) {
    throw new BadInput(`${file}: ${rows.length} stations. Allowed: 3 to 200, from root to tip.`);
  }
  const faults: { readonly row: number; readonly says: string }[] = [];
  const read = (which: 0 | 1 | 2, low: number, high: number) =>
    rows.map((cells, row) => {
      const cell = (cells[columns[which] ?? 0] ?? '').trim();
      const value = Number(cell);
      if (cell !== '' && Number.isFinite(value) && value >= low && value <= high) return value;
      const found = `${HEADER[which]} is "${cell.slice(0, 40)}"`;
      faults.push({ row, says: `${found}. Allowed: a number from ${low} to ${high}.` });
      return Number.NaN;
    });
  const radiusRatio = read(0, 0, 1);
  const chordRatio = read(1, 0, 1);
  const twist = read(2, -80, 89).map((degrees) => (degrees * Math.PI) / 180);
  for (const [row, ratio] of radiusRatio.entries()) {
    const before = radiusRatio[row - 1] ?? 0;
    if (!(ratio <= before)) continue;
    const order = 'Order the stations from root to tip, each once.';
    faults.push({ row, says: `r/R ${ratio} does not rise above ${before}. ${order}` });
  }
  const last = radiusRatio.at(-1) ?? 0;
  if (last < LAST_STATION) {
    const why = `Allowed: ${LAST_STATION} to 1, for the tip makes most of the thrust.`;
    faults.push({ row: rows.length - 1, says: `the last station is at r/R ${last}. ${why}` });
  }
  if (faults.length > 0) {
    const inOrder = [...faults].sort((a, b) => a.row - b.row);
    throw new BadInput(
      inOrder.map(({ row, says }) => `${file}:${lines[row + 1]?.number}: ${says}`).join('\n'),
    );
  }
  if (chordRatio.every((chord) => chord === 0)) {
    throw new BadInput(`${file}: every c/R is 0. Give the chord over the tip radius, such as 0.2.`);
  }
  return { radiusRatio, chordRatio, twist };
}

/** Where the three columns stand. */
function findColumns(names: readonly string[], file: string): readonly number[] {
  return HEADER.map((wanted) => {
    const index = names.indexOf(wanted);
    if (index >= 0) return index;
    const near = nearestName(wanted, names);
    throw new BadInput(
      `${file}:1: column "${wanted}" is missing. Found: ${names.join(', ').slice(0, 80) || 'nothing'}. ` +
        `Allowed: a first line "r/R,c/R,beta".${near ? ` Did you mean "${near}"?` : ''}`,
    );
  });
}
