/**
 * Speed of least cost on a curve of currents over evenly spaced speeds, by the parabola through the best point and its
 * neighbours: the least current stays up longest, the least current over ground speed gets furthest.
 *
 * @param speeds rising from 0 [m/s]
 * @param currents at these [A]
 * @param against wind to be made good against [m/s], negative blows along; or `longest`
 * @returns undefined when no speed makes way
 */
export function bestSpeed(
  speeds: readonly number[],
  currents: readonly number[],
  against: number | 'longest',
): number | undefined {
  const cost = (i: number): number => {
    const current = currents[i] ?? Number.POSITIVE_INFINITY;
    if (against === 'longest') return current;
    const made = (speeds[i] ?? 0) - against;
    // Under half a metre a second is no way made, however the parabola lies.
    return made > 0.5 ? current / made : Number.POSITIVE_INFINITY;
  };
  let best = 0;
  for (let i = 1; i < speeds.length; i++) if (cost(i) < cost(best)) best = i;
  if (!Number.isFinite(cost(best))) return undefined;
  const [before, here, after] = [cost(best - 1), cost(best), cost(best + 1)];
  const speed = speeds[best] ?? 0;
  if (!Number.isFinite(before) || !Number.isFinite(after)) return speed;
  const bend = before - 2 * here + after;
  const step = (speeds[1] ?? 0) - (speeds[0] ?? 0);
  return bend > 0 ? speed + (0.5 * (before - after) * step) / bend : speed;
}

/**
 * The stretch of speeds about `best` whose current is within a share of the least, by straight lines between the points and the
 * vertex: where a curve is flat, as its bottom is, a speed alone says more than is known. Never without width.
 *
 * @param best of `bestSpeed` for the longest flight [m/s]
 */
export function flatStretch(
  speeds: readonly number[],
  currents: readonly number[],
  best: number,
  share: number,
): readonly [low: number, high: number] {
  const node = currents.reduce((at, current, i) => (current < (currents[at] ?? 0) ? i : at), 0);
  const level = (1 + share) * (currents[node] ?? 0);
  const end = (step: 1 | -1): number => {
    let [from, current] = [best, currents[node] ?? 0];
    for (let i = 0; i < speeds.length; i++) {
      const k = step > 0 ? i : speeds.length - 1 - i;
      const [speed, here] = [speeds[k] ?? 0, currents[k] ?? 0];
      if (step * (speed - best) <= 0) continue;
      if (here > level) return from + ((speed - from) * (level - current)) / (here - current);
      [from, current] = [speed, here];
    }
    return from;
  };
  return [end(-1), end(1)];
}

/** First place where values that start below a level rise through it, by a straight line; undefined when they never do. */
export function crossing(
  places: readonly number[],
  values: readonly number[],
  level: number,
): number | undefined {
  for (let i = 1; i < places.length; i++) {
    const [from, to] = [values[i - 1] ?? level, values[i] ?? level];
    if (from < level && to >= level) {
      const [a, b] = [places[i - 1] ?? 0, places[i] ?? 0];
      return a + ((b - a) * (level - from)) / (to - from);
    }
  }
  return undefined;
}

/** The parabola through three points, as a function; the middle value throughout when two places are one. */
export function throughThree(
  [x0, x1, x2]: readonly [number, number, number],
  [y0, y1, y2]: readonly [number, number, number],
): (x: number) => number {
  const apart = Math.min(Math.abs(x1 - x0), Math.abs(x2 - x1), Math.abs(x2 - x0));
  if (!(apart > 1e-9)) return () => y1;
  const slope = (y1 - y0) / (x1 - x0);
  const bend = ((y2 - y1) / (x2 - x1) - slope) / (x2 - x0);
  return (x) => y0 + (x - x0) * (slope + bend * (x - x1));
}
