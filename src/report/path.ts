import type { Point } from './shapes.ts';

/** Hundredths of a millimetre are finer than any pen. */
export const trim = (value: number): number => Math.round(value * 100) / 100 + 0;

/** From build axes [m], x forward and y right, to the sheet [mm], nose up. */
export const seenFromAbove = (place: { readonly x: number; readonly y: number }): Point => ({
  x: place.y * 1000,
  y: -place.x * 1000,
});

/** From build axes [m], x forward and z down, to the sheet [mm], seen from the right, nose to the right. */
export const seenFromRight = (place: { readonly x: number; readonly z: number }): Point => ({
  x: place.x * 1000,
  y: place.z * 1000,
});

/** The same from the left, nose up the sheet and the aircraft's top to the right. */
export const seenFromLeft = (place: { readonly x: number; readonly z: number }): Point => ({
  x: -place.z * 1000,
  y: -place.x * 1000,
});

const spot = (point: Point): string => `${trim(point.x)} ${trim(point.y)}`;

/** Path text through points, open. */
export const openPath = (points: readonly Point[]): string =>
  points.map((point, i) => `${i === 0 ? 'M' : 'L'}${spot(point)}`).join('');

/** Path text through points, closed. */
export const closedPath = (points: readonly Point[]): string => `${openPath(points)}Z`;

/** Path text of many separate strokes. */
export const strokes = (lines: readonly (readonly [Point, Point])[]): string =>
  lines.map(([from, to]) => `M${spot(from)}L${spot(to)}`).join('');

/** A rectangle by its corners, with corners rounded by `round` [mm]. */
export function boxPath(from: Point, to: Point, round = 0): string {
  const left = Math.min(from.x, to.x);
  const right = Math.max(from.x, to.x);
  const top = Math.min(from.y, to.y);
  const bottom = Math.max(from.y, to.y);
  const r = Math.min(round, (right - left) / 2, (bottom - top) / 2);
  if (r <= 0)
    return closedPath([
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: bottom },
      { x: left, y: bottom },
    ]);
  const turn = (x: number, y: number) => `A${trim(r)} ${trim(r)} 0 0 1 ${spot({ x, y })}`;
  return [
    `M${spot({ x: left + r, y: top })}`,
    `L${spot({ x: right - r, y: top })}${turn(right, top + r)}`,
    `L${spot({ x: right, y: bottom - r })}${turn(right - r, bottom)}`,
    `L${spot({ x: left + r, y: bottom })}${turn(left, bottom - r)}`,
    `L${spot({ x: left, y: top + r })}${turn(left + r, top)}Z`,
  ].join('');
}

/** Part of a circle from one bearing to another [rad], clockwise on the sheet, 0 to the right. */
export function arcPath(centre: Point, r: number, from: number, to: number): string {
  const at = (angle: number): Point => ({
    x: centre.x + r * Math.cos(angle),
    y: centre.y + r * Math.sin(angle),
  });
  const large = Math.abs(to - from) > Math.PI ? 1 : 0;
  const sweep = to > from ? 1 : 0;
  return `M${spot(at(from))}A${trim(r)} ${trim(r)} 0 ${large} ${sweep} ${spot(at(to))}`;
}

/** The same outline with its corners cut round by at most `round` [mm]. */
export function roundedPath(points: readonly Point[], round: number): string {
  const parts: string[] = [];
  for (let i = 0; i < points.length; i++) {
    const before = points[(i + points.length - 1) % points.length];
    const corner = points[i];
    const after = points[(i + 1) % points.length];
    if (before === undefined || corner === undefined || after === undefined) continue;
    const start = towards(corner, before, round);
    const end = towards(corner, after, round);
    parts.push(`${i === 0 ? 'M' : 'L'}${spot(start)}Q${spot(corner)} ${spot(end)}`);
  }
  return `${parts.join('')}Z`;
}

/** The point `step` from `from` on the way to `to`, at most half of the way. */
function towards(from: Point, to: Point, step: number): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const share = length === 0 ? 0 : Math.min(step / length, 0.5);
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}
