import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { Corner } from '../../numerics/polygon.ts';
import { attainableSet, farthest } from './attainableSet.ts';
import { type ControlAxis, controlAxes, type ReserveModel } from './types.ts';

/** A slice of the attainable moments, to be drawn. */
export interface OutlineRequest {
  readonly across: ControlAxis;
  readonly up: ControlAxis;
  /** Required lift [N]; the weight when absent. */
  readonly lift?: number;
  /** Whether the third axis is held at nothing (the slice) or may do what it likes (the shadow). */
  readonly thirdAxis: 'held' | 'free';
}

/**
 * The exact polygon of two moments attainable together [N m], corners in order. Found by asking for
 * the farthest point at right angles to each side until no side gives way.
 *
 * @returns words when the craft cannot be held at that lift, or the slice has no area
 */
export function momentOutline(model: ReserveModel, request: OutlineRequest): Outcome<readonly Corner[]> {
  const { across, up, thirdAxis } = request;
  if (across === up) throw new RangeError(`across and up must be two axes; found ${across} twice`);
  const set = attainableSet(model);
  const [i, j] = [controlAxes.indexOf(across), controlAxes.indexOf(up)];
  const third = controlAxes.filter((axis) => axis !== across && axis !== up);
  const hold = { axes: thirdAxis === 'held' ? third : [], lift: request.lift ?? set.weight };
  const support = (x: number, y: number): Outcome<Corner> => {
    const objective: [number, number, number, number] = [0, 0, 0, 0];
    objective[i] = x;
    objective[j] = y;
    const best = farthest(set, objective, hold);
    return best.ok ? solved([best.value[i] ?? 0, best.value[j] ?? 0]) : best;
  };
  const right = support(1, 0);
  const left = support(-1, 0);
  if (!right.ok) return right;
  if (!left.ok) return left;
  const tolerance = 1e-9 * set.momentScale;
  const between = ([ax, ay]: Corner, [bx, by]: Corner): Corner[] => {
    const [nx, ny] = [by - ay, ax - bx];
    const length = Math.hypot(nx, ny);
    if (length <= tolerance) return [];
    const beyond = support(nx / length, ny / length);
    if (!beyond.ok) return [];
    const [x, y] = beyond.value;
    if (((x - ax) * nx + (y - ay) * ny) / length <= tolerance) return [];
    return [...between([ax, ay], [x, y]), [x, y], ...between([x, y], [bx, by])];
  };
  const corners = [
    right.value,
    ...between(right.value, left.value),
    left.value,
    ...between(left.value, right.value),
  ];
  return corners.length > 2 ? solved(corners) : noSolution('the two moments cannot be chosen freely');
}
