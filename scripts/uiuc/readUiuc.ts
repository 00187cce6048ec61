import { existsSync, readFileSync } from 'node:fs';

const INCH = 0.0254; // [m]

/** One measured row; SI but for the coefficients. */
export interface UiucRow {
  readonly advanceRatio: number;
  /** [rad/s] */
  readonly angularSpeed: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
}

export interface UiucShape {
  readonly radiusRatio: number[];
  readonly chordRatio: number[];
  /** [rad] */
  readonly twist: number[];
}

export interface UiucPropeller {
  readonly name: string;
  /** The leading letters of the name: one maker's line. */
  readonly family: string;
  readonly bladeCount: number;
  /** [m] */
  readonly diameter: number;
  /** [m] */
  readonly pitch: number;
  readonly shape: UiucShape | undefined;
  readonly still: readonly UiucRow[];
  /** Advance ratio from 0 to 0.8 of the one where thrust ends, on each row's own run. */
  readonly advancing: readonly UiucRow[];
}

/** The development half of the UIUC Propeller Database; undefined where the folder is absent. */
export function readUiuc(folder: string): UiucPropeller[] | undefined {
  if (!existsSync(`${folder}/measured.csv`)) return undefined;
  const shapes = new Map<string, UiucShape>();
  for (const row of rowsOf(`${folder}/blades.csv`)) {
    const key = text(row, 'BladeName');
    let shape = shapes.get(key);
    if (shape === undefined) {
      shape = { radiusRatio: [], chordRatio: [], twist: [] };
      shapes.set(key, shape);
    }
    // Some keys hold several blades one after the other: the first is kept.
    const radius = number(row, 'r/R');
    if (radius <= (shape.radiusRatio.at(-1) ?? 0)) {
      shape.radiusRatio.push(Number.POSITIVE_INFINITY);
      continue;
    }
    if (shape.radiusRatio.at(-1) === Number.POSITIVE_INFINITY) continue;
    shape.radiusRatio.push(radius);
    shape.chordRatio.push(number(row, 'c/R'));
    shape.twist.push((number(row, 'beta') * Math.PI) / 180);
  }
  for (const shape of shapes.values()) {
    while (shape.radiusRatio.at(-1) === Number.POSITIVE_INFINITY) shape.radiusRatio.pop();
  }
  const groups = new Map<string, Record<string, string>[]>();
  for (const row of rowsOf(`${folder}/measured.csv`)) {
    const name = text(row, 'PropName');
    groups.set(name, [...(groups.get(name) ?? []), row]);
  }
  return [...groups].map(([name, rows]) => {
    const first = rows[0] as Record<string, string>;
    const measured = rows.map((row) => ({
      advanceRatio: number(row, 'J'),
      angularSpeed: (number(row, 'N') * Math.PI) / 30,
      thrustCoefficient: number(row, 'CT'),
      powerCoefficient: number(row, 'CP'),
    }));
    return {
      name,
      family: name.split(' ')[0] ?? name,
      bladeCount: number(first, 'B'),
      diameter: number(first, 'D') * INCH,
      pitch: number(first, 'P') * INCH,
      shape: shapes.get(text(first, 'BladeName')),
      still: measured.filter((row) => row.advanceRatio === 0),
      advancing: belowZeroThrust(measured.filter((row) => row.advanceRatio > 0)),
    };
  });
}

/** Runs are rows of one speed (within 3 %) in file order; each has its own zero-thrust advance ratio. */
function belowZeroThrust(rows: readonly UiucRow[]): UiucRow[] {
  const runs: UiucRow[][] = [];
  for (const row of rows) {
    const run = runs.find((other) => Math.abs((other[0]?.angularSpeed ?? 0) / row.angularSpeed - 1) < 0.03);
    if (run === undefined) runs.push([row]);
    else run.push(row);
  }
  return runs.flatMap((run) => {
    const sorted = [...run].sort((a, b) => a.advanceRatio - b.advanceRatio);
    const end = zeroThrust(sorted);
    return end === undefined ? [] : sorted.filter((row) => row.advanceRatio <= 0.8 * end);
  });
}

function zeroThrust(sorted: readonly UiucRow[]): number | undefined {
  for (let i = 1; i < sorted.length; i++) {
    const a = sorted[i - 1] as UiucRow;
    const b = sorted[i] as UiucRow;
    if (a.thrustCoefficient > 0 && b.thrustCoefficient <= 0) return crossing(a, b);
  }
  const last = sorted.slice(-4);
  const a = last[0];
  const b = last.at(-1);
  if (last.length < 4 || a === undefined || b === undefined) return undefined;
  return a.thrustCoefficient > b.thrustCoefficient ? crossing(a, b) : undefined;
}

const crossing = (a: UiucRow, b: UiucRow) =>
  a.advanceRatio +
  (a.thrustCoefficient * (b.advanceRatio - a.advanceRatio)) / (a.thrustCoefficient - b.thrustCoefficient);

function rowsOf(path: string): Record<string, string>[] {
  const [header = '', ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const names = header.split(',');
  return lines
    .filter((line) => !line.startsWith(names[0] ?? ''))
    .map((line) => Object.fromEntries(line.split(',').map((value, i) => [names[i] ?? '', value])));
}

const text = (row: Record<string, string>, key: string): string => row[key] ?? '';
const number = (row: Record<string, string>, key: string): number => Number(row[key]);
