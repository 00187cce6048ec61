import { linearProgram } from '../../numerics/linearProgram.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { type AttainableSet, type Extreme, pointAt } from './attainableSet.ts';
import { controlAxes } from './types.ts';

/** Roll and pitch are levelled first; a newton metre of yaw counts a thousandth of one of theirs. */
const COST = { roll: 1, pitch: 1, yaw: 1e-3 } as const;

/**
 * The thrusts that carry a lift with the least moments left over: roll and pitch nothing where that can be had, and of all
 * those the least yaw. By linear programming over the sizes of the moments.
 *
 * @param lift [N]
 * @returns words when the motors cannot give this lift at all
 */
export function nearestLevel(set: AttainableSet, lift: number): Outcome<Pick<Extreme, 'wrench' | 'thrusts'>> {
  const { base, columns, groups, momentScale, weight } = set;
  const axes = controlAxes.length;
  const width = columns.length + groups.length + 2 * axes;
  const rows: number[][] = [];
  const right: number[] = [];
  const objective = new Array<number>(width).fill(0);
  controlAxes.forEach((axis, i) => {
    const row = new Array<number>(width).fill(0);
    columns.forEach((w, c) => {
      row[c] = (w[i] ?? 0) / momentScale;
    });
    // The moment is what the second of these takes less what the first does.
    const [less, more] = [columns.length + groups.length + 2 * i, columns.length + groups.length + 2 * i + 1];
    row[less] = 1;
    row[more] = -1;
    objective[less] = -COST[axis];
    objective[more] = -COST[axis];
    rows.push(row);
    right.push(-(base[i] ?? 0) / momentScale);
  });
  rows.push([...columns.map((w) => w[3] / weight), ...new Array<number>(width - columns.length).fill(0)]);
  right.push((lift - base[3]) / weight);
  groups.forEach((group, g) => {
    const row = new Array<number>(width).fill(0);
    for (const c of group) row[c] = 1;
    row[columns.length + g] = 1;
    rows.push(row);
    right.push(1);
  });
  const grouped = new Set(groups.flat());
  const best = linearProgram({
    objective,
    rows,
    right,
    upper: objective.map((_, c) => (c < columns.length && !grouped.has(c) ? 1 : Number.POSITIVE_INFINITY)),
  });
  return best.ok ? solved(pointAt(set, best.value)) : noSolution('the motors cannot give this lift');
}
