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
  const parsed = Papa.parse<string[]>(text.trim(), { skipEmptyLines: true, comments: '#' });
  const [header = [], ...rows] = parsed.data;
  const names = header.map((name) => name.trim());
  const columns = HEADER.map((wanted) => {
    const index = names.indexOf(wanted);
    if (index < 0) {
      const near = nearestName(wanted, names);
      throw new BadInput(
        `${file}:1: column "${wanted}" is missing. Found: ${names.join(', ').slice(0, 200) || 'nothing'}. ` +
          `Allowed: a first line "r/R,c/R,beta".${near ? ` Did you mean "${near}"?` : ''}`,
      );
    }
    return index;
  });
  if (rows.length < 3 || rows.length > 200) {
    throw new BadInput(`${file}: ${rows.length} stations. Allowed: 3 to 200, from root to tip.`);
  }
  const read = (which: 0 | 1 | 2, low: number, high: number) =>
    rows.map((row, index) => {
      const cell = (row[columns[which] ?? 0] ?? '').trim();
      const value = Number(cell);
      if (cell === '' || !Number.isFinite(value) || value < low || value > high) {
        throw new BadInput(
          `${file}:${index + 2}: ${HEADER[which]} is "${cell.slice(0, 40)}". Allowed: a number from ${low} to ${high}.`,
        );
      }
      return value;
    });
  const radiusRatio = read(0, 0, 1);
  radiusRatio.forEach((ratio, index) => {
    const before = radiusRatio[index - 1] ?? 0;
    if (ratio <= before) {
      throw new BadInput(
        `${file}:${index + 2}: r/R ${ratio} does not rise above ${before}. Order the stations from root to tip, each once.`,
      );
    }
  });
  const last = radiusRatio.at(-1) ?? 0;
  if (last < LAST_STATION) {
    throw new BadInput(
      `${file}:${rows.length + 1}: the last station is at r/R ${last}. Allowed: ${LAST_STATION} to 1, for the tip makes most of the thrust.`,
    );
  }
  const chordRatio = read(1, 0, 1);
  if (chordRatio.every((chord) => chord === 0)) {
    throw new BadInput(`${file}: every c/R is 0. Give the chord over the tip radius, such as 0.2.`);
  }
  return {
    radiusRatio,
    chordRatio,
    twist: read(2, -80, 89).map((degrees) => (degrees * Math.PI) / 180),
  };
}
