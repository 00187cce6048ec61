import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { type ForwardPoint, forwardPoint } from './forwardPoint.ts';
import type { ForwardCraft } from './forwardTrim.ts';

/** The fastest level flight and what stands in the way of more. */
export interface TopSpeed {
  readonly at: ForwardPoint;
  /** In words. */
  readonly limit: string;
}

const FASTEST_TRIED = 120; // [m/s]

/**
 * Largest speed of level flight on a pack at a charge, with no duty above `largestDuty`. Searched upwards in steps and
 * then by bisection, since beyond it there is no state at all to interpolate: to 1 cm/s.
 *
 * @param largestDuty 1 for the top speed; about 0.8 leaves something to steer with
 */
export function topSpeed(craft: ForwardCraft, charge: number, largestDuty = 1): Outcome<TopSpeed> {
  const can = (speed: number): Outcome<ForwardPoint> => {
    const found = forwardPoint(craft, speed, charge);
    if (!found.ok || found.value.largestDuty <= largestDuty) return found;
    return noSolution(`a motor would need a duty above ${largestDuty.toFixed(2)}`);
  };
  const hovering = can(0);
  if (!hovering.ok) return hovering;
  let best = hovering.value;
  let step = 8;
  let beyond = FASTEST_TRIED;
  let limit = `not found below ${FASTEST_TRIED} m/s`;
  while (step > 0.01) {
    const speed = best.speed + step;
    if (speed >= beyond) {
      step /= 2;
      continue;
    }
    const next = can(speed);
    if (next.ok) best = next.value;
    else {
      beyond = speed;
      limit = next.reason;
      step /= 2;
    }
  }
  return solved({ at: best, limit });
}

/** Level flight over speed: what it takes, and the speeds that stay up longest and get furthest. */
export interface PowerCurve {
  /** Rising speed from 0, evenly spaced. */
  readonly points: readonly ForwardPoint[];
  /** Least current [A]. */
  readonly bestEndurance: ForwardPoint;
  /** Least charge over the ground. */
  readonly bestRange: ForwardPoint;
}

/**
 * @param top where to stop [m/s], such as the top speed
 * @param headwind against the way to be made good [m/s]; negative blows along
 * @param steps 8 or more; the best speeds are then refined by a parabola through their neighbours
 */
export function powerCurve(
  craft: ForwardCraft,
  charge: number,
  top: number,
  headwind = 0,
  steps = 24,
): Outcome<PowerCurve> {
  const points: ForwardPoint[] = [];
  for (let k = 0; k <= steps; k++) {
    const found = forwardPoint(craft, (top * k) / steps, charge);
    if (!found.ok && k === 0) return found;
    if (!found.ok) break;
    points.push(found.value);
  }
  const endurance = (p: ForwardPoint): number => p.point.packCurrent;
  const range = (p: ForwardPoint): number =>
    p.speed > headwind ? p.point.packCurrent / (p.speed - headwind) : Number.POSITIVE_INFINITY;
  const longest = refined(craft, charge, points, endurance);
  const furthest = refined(craft, charge, points, range);
  if (longest === undefined || furthest === undefined || !Number.isFinite(range(furthest))) {
    return noSolution(`it makes no way against ${headwind.toFixed(1)} m/s of wind`);
  }
  return solved({ points, bestEndurance: longest, bestRange: furthest });
}

/** The point of least cost: the best of the grid, moved by the parabola through it and its neighbours. */
function refined(
  craft: ForwardCraft,
  charge: number,
  points: readonly ForwardPoint[],
  cost: (p: ForwardPoint) => number,
): ForwardPoint | undefined {
  let index = 0;
  const costs = points.map(cost);
  costs.forEach((value, i) => {
    if (value < (costs[index] ?? Number.POSITIVE_INFINITY)) index = i;
  });
  const best = points[index];
  const before = costs[index - 1];
  const here = costs[index] ?? Number.POSITIVE_INFINITY;
  const after = costs[index + 1];
  const step = (points[1]?.speed ?? 0) - (points[0]?.speed ?? 0);
  if (best === undefined || before === undefined || after === undefined || !Number.isFinite(before))
    return best;
  const shift = (0.5 * (before - after)) / (before - 2 * here + after);
  const moved = forwardPoint(craft, best.speed + shift * step, charge);
  return moved.ok && cost(moved.value) < here ? moved.value : best;
}

/**
 * The speed at which level flight tilts the aircraft by `tilt` [rad]: where a camera so tilted looks level, the
 * speed the craft wants to fly at. By bisection, as tilt rises with speed; no solution above the top speed.
 */
export function speedAtTilt(
  craft: ForwardCraft,
  charge: number,
  tilt: number,
  top: number,
): Outcome<ForwardPoint> {
  let low = 0;
  let high = top;
  const fastest = forwardPoint(craft, top, charge);
  if (!fastest.ok) return fastest;
  if (fastest.value.tilt < tilt) return noSolution('it never tilts so far in level flight');
  let best = fastest;
  while (high - low > 0.01) {
    const middle = 0.5 * (low + high);
    const found = forwardPoint(craft, middle, charge);
    if (!found.ok) return found;
    if (found.value.tilt >= tilt) {
      high = middle;
      best = found;
    } else low = middle;
  }
  return best;
}
