import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { emptySupply, feed } from '../feed.ts';
import { inWords, sourceAt } from '../operatingPoint.ts';
import { type ForwardPoint, forwardPoint } from './forwardPoint.ts';
import { type ForwardCraft, forwardTrim } from './forwardTrim.ts';

/** The fastest level flight and what stands in the way of more. */
export interface TopSpeed {
  readonly at: ForwardPoint;
  /** In words. */
  readonly limit: string;
}

const FASTEST_TRIED = 120; // [m/s]
const STRIDE = 8; // [m/s]
const PRECISION = 0.01; // [m/s]

/**
 * Largest speed of level flight on a pack at a charge, with no duty above `largestDuty`; to 1 cm/s. Strides upwards to the
 * first speed that fails and searches between, by the duty left over where that still has a value.
 *
 * @param largestDuty 1 for the top speed; about 0.8 leaves something to steer with
 */
export function topSpeed(craft: ForwardCraft, charge: number, largestDuty = 1): Outcome<TopSpeed> {
  const count = craft.circuit.branches.length;
  const supply = emptySupply(count);
  const source = sourceAt(craft.circuit, charge);
  let reason = '';
  const left = (speed: number): number => {
    const trimmed = forwardTrim(craft, speed);
    const fed = trimmed.ok ? feed(craft.circuit, source, trimmed.value.load, supply) : 'pack gives out';
    if (!trimmed.ok || fed === 'pack gives out') {
      reason = trimmed.ok ? inWords('pack gives out') : trimmed.reason;
      return -1;
    }
    let most = 0;
    trimmed.value.load.voltage.forEach((voltage, i) => {
      most = Math.max(most, voltage / (supply.voltage[i] as number));
    });
    if (most > largestDuty) {
      reason =
        largestDuty < 1
          ? `a motor would need a duty above ${largestDuty.toFixed(2)}`
          : inWords('short of voltage');
    }
    return largestDuty - most;
  };
  if (left(0) < 0) return noSolution(`it cannot hover: ${reason}`);
  let flown = 0;
  let beyond = STRIDE;
  while (beyond < FASTEST_TRIED && left(beyond) >= 0) {
    flown = beyond;
    beyond += STRIDE;
  }
  if (beyond >= FASTEST_TRIED)
    return noSolution(`still faster at ${withUnit(FASTEST_TRIED, 'm/s')}, beyond what is believed`);
  const root = bracketedRoot(left, flown, beyond, PRECISION);
  const speed = root.ok ? root.value : flown;
  left(speed + PRECISION);
  const limit = reason;
  for (const slower of [speed, speed - PRECISION, flown]) {
    const at = forwardPoint(craft, Math.max(slower, 0), charge);
    if (at.ok && at.value.largestDuty <= largestDuty) return solved({ at: at.value, limit });
  }
  return noSolution(limit);
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
    return noSolution(`it makes no way against ${withUnit(headwind.toFixed(1), 'm/s')} of wind`);
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
