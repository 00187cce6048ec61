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

/** More power than there is: the air only asks for more beyond. */
const SHORT = 'short';
/** Strides beyond the first that is short of power, to make sure. */
const SURE = 2;
/** [m/s] */
const FINE = 1;

/** What a speed leaves of the largest duty allowed, below 0 where it is not flown; and then why. */
interface Tried {
  readonly left: number;
  readonly reason: string;
  /** `no trim` at this speed, which says nothing about a faster one. */
  readonly kind: 'flown' | typeof SHORT | 'no trim';
}

/**
 * Largest speed of level flight on a pack at a charge, with no duty above `largestDuty`; to 1 cm/s. Strides upwards past speeds
 * without a trim, such as those at which a rotor that hardly pulls would turn too slowly, until power runs short; then searches in
 * the last stride that was flown, by the duty left over where that has a value.
 *
 * @param largestDuty 1 for the top speed; about 0.8 leaves something to steer with
 */
export function topSpeed(craft: ForwardCraft, charge: number, largestDuty = 1): Outcome<TopSpeed> {
  const source = sourceAt(craft.circuit, charge);
  const supply = emptySupply(craft.circuit.branches.length);
  const tryAt = (speed: number): Tried => {
    const trimmed = forwardTrim(craft, speed);
    if (!trimmed.ok) {
      const { reason, because } = trimmed;
      return { left: -1, reason, kind: because === 'too little thrust' ? SHORT : 'no trim' };
    }
    const { load } = trimmed.value;
    if (feed(craft.circuit, source, load, supply) === 'pack gives out') {
      return { left: -1, reason: inWords('pack gives out'), kind: SHORT };
    }
    const most = load.voltage.reduce(
      (duty, voltage, i) => Math.max(duty, voltage / (supply.voltage[i] as number)),
      0,
    );
    const left = largestDuty - most;
    if (left >= 0) return { left, reason: '', kind: 'flown' };
    const reason =
      largestDuty < 1
        ? `a motor would need a duty above ${largestDuty.toFixed(2)}`
        : inWords('short of voltage');
    return { left, reason, kind: SHORT };
  };
  const still = tryAt(0);
  if (still.kind !== 'flown') return noSolution(`it cannot hover: ${still.reason}`);
  let flown = 0;
  let short = 0;
  let beyond = FASTEST_TRIED;
  let stride = STRIDE;
  for (let speed = STRIDE; speed <= FASTEST_TRIED && short < SURE; speed += stride) {
    const { kind } = tryAt(speed);
    if (kind === 'flown') [flown, beyond] = [speed, FASTEST_TRIED];
    else beyond = Math.min(beyond, speed);
    short = kind === SHORT ? short + 1 : 0;
    stride = kind === 'no trim' ? 2 * FINE : STRIDE;
  }
  if (flown > FASTEST_TRIED - STRIDE)
    return noSolution(`still faster at ${withUnit(flown.toFixed(0), 'm/s')}, beyond what is believed`);
  let reason = '';
  for (;;) {
    const root = bracketedRoot((speed) => tryAt(speed).left, flown, beyond, PRECISION);
    if (root.ok)
      flown = tryAt(root.value).kind === 'flown' ? root.value : Math.max(flown, root.value - PRECISION);
    const above = tryAt(flown + 2 * PRECISION);
    reason = above.reason;
    if (above.kind !== 'no trim') break;
    // Without a trim just above, what is short of power may still come further up.
    let again = flown + FINE;
    while (again < beyond && tryAt(again).kind !== 'flown') again += FINE;
    if (again >= beyond) break;
    flown = again;
  }
  for (const slower of [flown, flown - PRECISION]) {
    const at = forwardPoint(craft, Math.max(slower, 0), charge);
    if (at.ok && at.value.largestDuty <= largestDuty) return solved({ at: at.value, limit: reason });
  }
  return noSolution(reason);
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
