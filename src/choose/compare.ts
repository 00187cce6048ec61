import type { Assessment } from '../assess/assessment.ts';
import type { Direction, Measure, Quantity } from '../assess/types.ts';
import { type Flip, flipsBetween, reasonsBetween } from './shortlist/reasons.ts';
import type { SoftWant } from './shortlist/softWants.ts';
import { candidateOf, orderOf, RISK_COST, standing, type Weighed } from './standing.ts';

/** Builds side by side. Columns keep the order they were given in. */
export interface Comparison {
  readonly columns: readonly ComparedBuild[];
  readonly rows: readonly ComparedMeasure[];
  /** Indices of columns, the leader first. */
  readonly order: readonly number[];
  /** Why the leader leads, in words with numbers; what speaks for the runner-up. */
  readonly reasons: readonly Reason[];
  /** What would put the runner-up level; empty where stops decide. */
  readonly flips: readonly Flip[];
  /** What the standings are made of. */
  readonly wants: readonly SoftWant[];
}

export interface ComparedBuild {
  readonly name: string;
  readonly flies: boolean;
  readonly stops: number;
  /** All that were found. */
  readonly risks: number;
  /** Of them, those of the fit rules: what the standing is less by. */
  readonly fitRisks: number;
  /** 1 at most: the weighted wants met, less what the fit risks cost. Absent where it cannot fly or nothing is wanted. */
  readonly standing?: number;
}

export interface ComparedMeasure {
  readonly id: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly better: Direction;
  readonly cells: readonly (Pick<Measure, 'value' | 'words' | 'band' | 'window'> | undefined)[];
  /** Column that is best, where the measure has a better way and the best is not level with the next. */
  readonly best?: number;
  /** `clear`: the best's band does not reach the next; `open`: it does. */
  readonly difference: 'clear' | 'open' | 'none';
}

export interface Reason {
  readonly measure: string;
  readonly label: string;
  readonly speaksFor: 'leader' | 'runner-up';
  /** Of the standing: the share of the decision that the want is, times how far apart the two are on its scale. */
  readonly weight: number;
  readonly difference: 'clear' | 'open';
}

/**
 * Two to eight assessments under one brief, side by side, and in order: fewer stops first, then by
 * standing. Every want is scored on a scale of its own that hangs on none of the builds (`usualScales.ts`), as a shortlist
 * scores it: taking one out never turns the order of the rest. Deterministic; ties keep the given order.
 *
 * @throws RangeError for fewer than two or more than eight
 */
export function compare(assessments: readonly Assessment[], wants: readonly SoftWant[]): Comparison {
  if (assessments.length < 2 || assessments.length > 8) {
    throw new RangeError(`assessments must be 2 to 8; found ${assessments.length}`);
  }
  const rows = rowsOf(assessments);
  const candidates = assessments.map(candidateOf);
  const columns = assessments.map(({ build, flies, findings }, column): ComparedBuild => {
    const own = candidates[column];
    const base = {
      name: build,
      flies,
      stops: own?.stops ?? 0,
      risks: findings.filter(({ severity }) => severity === 'risk').length,
      fitRisks: own?.risks ?? 0,
    };
    const stands = own === undefined || !flies ? Number.NaN : standing(wants, own);
    return Number.isNaN(stands) ? base : { ...base, standing: stands };
  });
  const order = orderOf(candidates, wants);
  const [leader = 0, second = 1] = order;
  const [one, other] = [candidates[leader], candidates[second]];
  const level = columns[leader]?.stops === columns[second]?.stops;
  const question = { wants, riskCost: RISK_COST };
  return {
    columns,
    rows,
    order,
    reasons: one && other ? reasonsOf(wants, rows, one, other, [leader, second]) : [],
    flips: one && other && level ? flipsBetween(question, one, other) : [],
    wants,
  };
}

function reasonsOf(
  wants: readonly SoftWant[],
  rows: readonly ComparedMeasure[],
  leader: Weighed,
  second: Weighed,
  [first, next]: readonly [number, number],
): readonly Reason[] {
  // Risks have no cells: who shows reasons tells them from the columns.
  return reasonsBetween({ wants, riskCost: 0 }, leader, second).flatMap(
    ({ measure, difference }): readonly Reason[] => {
      const row = rows.find(({ id }) => id === measure);
      if (row === undefined) return [];
      const [one, other] = [row.cells[first], row.cells[next]];
      return [
        {
          measure,
          label: row.label,
          speaksFor: difference > 0 ? 'leader' : 'runner-up',
          weight: Math.abs(difference),
          // Without a cell it never gets there at all, such as too hot.
          difference: !one || !other || apart(one.band, other.band) ? 'clear' : 'open',
        },
      ];
    },
  );
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
      const { value, words, band, window } = found;
      return {
        value,
        band,
        ...(words === undefined ? {} : { words }),
        ...(window === undefined ? {} : { window }),
      };
    });
    const base = { id: form.id, label: form.label, quantity: form.quantity, better: form.better, cells };
    return { ...base, ...bestOf(base) };
  });
}

function bestOf(
  row: Pick<ComparedMeasure, 'better' | 'cells'>,
): Pick<ComparedMeasure, 'difference'> & { readonly best?: number } {
  if (row.better === 'neither') return { difference: 'none' };
  const ranked = row.cells
    .flatMap((cell, column) =>
      cell === undefined ? [] : [{ cell, column, short: shortOf(row.better, cell) }],
    )
    .sort((a, b) => a.short - b.short || a.column - b.column);
  const [first, next] = ranked;
  if (first === undefined || next === undefined) return { difference: 'none' };
  const level = 1e-9 * Math.max(Math.abs(first.cell.value), Math.abs(next.cell.value));
  if (next.short - first.short <= level) return { difference: 'none' };
  return { best: first.column, difference: apart(first.cell.band, next.cell.band) ? 'clear' : 'open' };
}

/** How far a value falls short, in its own unit: the least is best. */
function shortOf(
  better: Direction,
  { value, window }: NonNullable<ComparedMeasure['cells'][number]>,
): number {
  switch (better) {
    case 'more':
      return -value;
    case 'less':
      return value;
    case 'neither':
      return 0;
    case 'window':
      return window === undefined ? 0 : Math.max(window.low - value, value - window.high, 0);
  }
}

const apart = (a: readonly [number, number], b: readonly [number, number]) => a[0] > b[1] || b[0] > a[1];
