import type { Assessment } from '../assess/assessment.ts';
import type { Direction, Measure, Quantity } from '../assess/types.ts';
import type { Want } from './wants.ts';

/** Builds side by side. Columns keep the order they were given in. */
export interface Comparison {
  readonly columns: readonly ComparedBuild[];
  readonly rows: readonly ComparedMeasure[];
  /** Indices of columns, the leader first. */
  readonly order: readonly number[];
  /** Why the leader leads, in words with numbers; what speaks for the runner-up. */
  readonly reasons: readonly Reason[];
}

export interface ComparedBuild {
  readonly name: string;
  readonly flies: boolean;
  readonly stops: number;
  readonly risks: number;
  /** 0 to 1: the weighted wants met, less what the risks cost. Absent where it cannot fly. */
  readonly standing?: number;
}

export interface ComparedMeasure {
  readonly id: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly better: Direction;
  readonly cells: readonly (Pick<Measure, 'value' | 'band' | 'window'> | undefined)[];
  /** Column that is best, where the measure has a better way and the best is not level with the next. */
  readonly best?: number;
  /** `clear`: the best's band does not reach the next; `open`: it does. */
  readonly difference: 'clear' | 'open' | 'none';
}

export interface Reason {
  readonly measure: string;
  readonly label: string;
  readonly speaksFor: 'leader' | 'runner-up';
  /** Share of the decision that the want's weight is, times how far apart the two are on it. */
  readonly weight: number;
  readonly difference: 'clear' | 'open';
}

/** What one `risk` finding costs of the standing (ours; stops put a build last whatever it scores). */
const RISK_COST = 0.04;

/**
 * Two to eight assessments under one brief, side by side, and in order: fewer stops first, then by
 * standing. A want is scored between the worst and the best of the builds compared, on a scale never
 * finer than the bands, so that noise decides nothing; a window counts in full inside and falls to
 * nothing half a window outside. Deterministic; ties keep the given order.
 *
 * @throws RangeError for fewer than two or more than eight
 */
export function compare(assessments: readonly Assessment[], wants: readonly Want[]): Comparison {
  if (assessments.length < 2 || assessments.length > 8) {
    throw new RangeError(`assessments must be 2 to 8; found ${assessments.length}`);
  }
  const rows = rowsOf(assessments);
  const total = wants.reduce((sum, want) => sum + want.weight, 0);
  const met = wants.map((want) => {
    const row = rows.find((each) => each.id === want.measure);
    return { want, row, scores: row === undefined ? undefined : scores(row) };
  });
  const columns = assessments.map((assessment, column): ComparedBuild => {
    const count = (severity: string) =>
      assessment.findings.filter((finding) => finding.severity === severity).length;
    const [stops, risks] = [count('stop'), count('risk')];
    const base = { name: assessment.build, flies: assessment.flies, stops, risks };
    if (!assessment.flies || total <= 0) return base;
    const sum = met.reduce((all, { want, scores }) => all + want.weight * (scores?.[column] ?? 0), 0);
    return { ...base, standing: Math.max(0, sum / total - RISK_COST * risks) };
  });
  const order = columns
    .map((_, index) => index)
    .sort((a, b) => {
      const [one, other] = [columns[a], columns[b]];
      if (one === undefined || other === undefined) return a - b;
      return one.stops - other.stops || (other.standing ?? -1) - (one.standing ?? -1) || a - b;
    });
  return { columns, rows, order, reasons: reasonsOf(met, order, total) };
}

type Met = readonly {
  readonly want: Want;
  readonly row: ComparedMeasure | undefined;
  readonly scores: readonly number[] | undefined;
}[];

function reasonsOf(met: Met, order: readonly number[], total: number): readonly Reason[] {
  const [leader, second] = order;
  if (leader === undefined || second === undefined) return [];
  return met
    .flatMap(({ want, row, scores }): readonly Reason[] => {
      const [a, b] = [scores?.[leader], scores?.[second]];
      const [one, other] = [row?.cells[leader], row?.cells[second]];
      if (row === undefined || a === undefined || b === undefined || a === b || !one || !other) return [];
      return [
        {
          measure: row.id,
          label: row.label,
          speaksFor: a > b ? 'leader' : 'runner-up',
          weight: (want.weight / total) * Math.abs(a - b),
          difference: apart(one.band, other.band) ? 'clear' : 'open',
        },
      ];
    })
    .sort((a, b) => b.weight - a.weight);
}

function rowsOf(assessments: readonly Assessment[]): readonly ComparedMeasure[] {
  const forms = new Map<string, Measure>();
  for (const assessment of assessments) {
    for (const measure of assessment.measures) if (!forms.has(measure.id)) forms.set(measure.id, measure);
  }
  return [...forms.values()].map((form): ComparedMeasure => {
    const cells = assessments.map((assessment) => {
      const found = assessment.measures.find((measure) => measure.id === form.id);
      if (found === undefined) return undefined;
      const { value, band, window } = found;
      return { value, band, ...(window === undefined ? {} : { window }) };
    });
    const base = { id: form.id, label: form.label, quantity: form.quantity, better: form.better, cells };
    return { ...base, ...bestOf(base) };
  });
}

function bestOf(
  row: Pick<ComparedMeasure, 'better' | 'cells'>,
): Pick<ComparedMeasure, 'difference'> & { readonly best?: number } {
  if (row.better === 'neither') return { difference: 'none' };
  const ranked = scores(row)
    .map((score, column) => ({ score, column, cell: row.cells[column] }))
    .filter((each) => each.cell !== undefined)
    .sort((a, b) => b.score - a.score || a.column - b.column);
  const [first, next] = ranked;
  if (first?.cell === undefined || next?.cell === undefined || first.score - next.score < 1e-9) {
    return { difference: 'none' };
  }
  return { best: first.column, difference: apart(first.cell.band, next.cell.band) ? 'clear' : 'open' };
}

/** 0 to 1 for every column; 0 where the measure is absent. */
function scores(row: Pick<ComparedMeasure, 'better' | 'cells'>): readonly number[] {
  const known = row.cells.filter((cell) => cell !== undefined);
  const values = known.map((cell) => cell.value);
  const meanBand = known.reduce((sum, { band }) => sum + band[1] - band[0], 0) / Math.max(known.length, 1);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const scale = Math.max(high - low, meanBand, 1e-12);
  return row.cells.map((cell) => (cell === undefined ? 0 : score(cell)));

  function score({ value, window }: NonNullable<ComparedMeasure['cells'][number]>): number {
    switch (row.better) {
      case 'more':
        return (value - low) / scale;
      case 'less':
        return (high - value) / scale;
      case 'neither':
        return 0;
      case 'window': {
        if (window === undefined) return 0;
        const outside = Math.max(window.low - value, value - window.high, 0);
        return Math.max(0, 1 - outside / (0.5 * (window.high - window.low)));
      }
    }
  }
}

const apart = (a: readonly [number, number], b: readonly [number, number]) => a[0] > b[1] || b[0] > a[1];
