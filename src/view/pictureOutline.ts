import type { PicturePoint } from './types.ts';
import { imageOf, type ViewFrame } from './viewFrame.ts';

/** A closed outline in the picture [pixels], x y one after another. */
export type Outline = readonly number[];

/** Longest piece of a great circle taken before its bend is measured [rad]. */
const LONGEST_PIECE = 0.5;
/** Half-angle of the cone straight behind a fisheye left out [rad]; beyond any picture's corner. */
const BEHIND = (20 * Math.PI) / 180;

/**
 * A convex polygon of directions drawn through the lens and cut to the picture. A rectilinear picture
 * is cut in space, where its sides are planes; a fisheye's edges bend, so they are split until no piece
 * leaves its chord by more than the tolerance, and cut afterwards. What lies behind a fisheye wider
 * than half the world is drawn in quarters, so that none holds the point where its picture tears.
 *
 * @param directions camera axes, x y z one after another
 * @param tolerance [pixels], > 0
 */
export function pictureOutlines(
  directions: readonly number[],
  view: ViewFrame,
  tolerance: number,
): Outline[] {
  if (directions.length < 9) return [];
  if (view.law === 'rectilinear') {
    const right = view.width / 2 / view.focal;
    const down = view.height / 2 / view.focal;
    const sides: readonly Plane[] = [
      [right, 1, 0],
      [right, -1, 0],
      [down, 0, 1],
      [down, 0, -1],
    ];
    const inView = sides.reduce(cutByPlane, directions);
    return kept(inView.length < 9 ? [] : drawn(inView, view));
  }
  const pieces = [cutByPlane(directions, FRONT)];
  if (view.cornerAngle > Math.PI / 2) {
    const back = cutByPlane(directions, BACK);
    for (const quarter of QUARTERS_BEHIND) pieces.push(quarter.reduce(cutByPlane, back));
  }
  return pieces.flatMap((piece) => kept(cutToPicture(bent(piece, view, tolerance), view)));
}

/** Normal of a plane through the eye; what lies on its side is kept. */
export type Plane = readonly [x: number, y: number, z: number];

const FRONT: Plane = [1, 0, 0];
const BACK: Plane = [-1, 0, 0];
const QUARTERS_BEHIND: readonly (readonly Plane[])[] = [
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
].map(([y = 0, z = 0]) => [
  [0, y, 0],
  [0, 0, z],
  [Math.tan(BEHIND), y, z],
]);

const kept = (outline: Outline): Outline[] => (outline.length >= 6 ? [outline] : []);

/** Sutherland and Hodgman 1974 (Comm. ACM 17(1)) on directions: exact, since edges are planes through the eye. */
export function cutByPlane(polygon: readonly number[], [a, b, c]: Plane): readonly number[] {
  const side = (i: number) =>
    a * (polygon[i] as number) + b * (polygon[i + 1] as number) + c * (polygon[i + 2] as number);
  const result: number[] = [];
  for (let i = 0; i < polygon.length; i += 3) {
    const j = (i + 3) % polygon.length;
    const [here, next] = [side(i), side(j)];
    if (here >= 0) result.push(polygon[i] as number, polygon[i + 1] as number, polygon[i + 2] as number);
    if (here >= 0 === next >= 0) continue;
    const t = here / (here - next);
    for (let k = 0; k < 3; k++) {
      result.push((polygon[i + k] as number) * (1 - t) + (polygon[j + k] as number) * t);
    }
  }
  return result;
}

function drawn(directions: readonly number[], view: ViewFrame): number[] {
  const outline: number[] = [];
  for (let i = 0; i < directions.length; i += 3) {
    const { x, y } = imageOf(
      view,
      directions[i] as number,
      directions[i + 1] as number,
      directions[i + 2] as number,
    );
    outline.push(x, y);
  }
  return outline;
}

/** A fisheye's image of a polygon of great circles, split until the chords are true. */
function bent(directions: readonly number[], view: ViewFrame, tolerance: number): number[] {
  const outline: number[] = [];
  if (directions.length === 0) return outline;
  const first = unitAt(directions, 0);
  const firstAt = imageOf(view, first[0], first[1], first[2]);
  let [from, start] = [first, firstAt];
  for (let i = 3; i <= directions.length; i += 3) {
    const isLast = i === directions.length;
    const to = isLast ? first : unitAt(directions, i);
    const end = isLast ? firstAt : imageOf(view, to[0], to[1], to[2]);
    outline.push(start.x, start.y);
    splitEdge(from, to, start, end, 0);
    from = to;
    start = end;
  }
  return outline;

  function splitEdge(from: Triple, to: Triple, start: PicturePoint, end: PicturePoint, depth: number): void {
    const sum: Triple = [from[0] + to[0], from[1] + to[1], from[2] + to[2]];
    const size = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
    // Two unit vectors add up to 2 cos(half their angle).
    const long = size < 2 * Math.cos(LONGEST_PIECE / 2);
    if (depth > 9 || size < 1e-12) return;
    const middle: Triple = [sum[0] / size, sum[1] / size, sum[2] / size];
    const at = imageOf(view, middle[0], middle[1], middle[2]);
    if (!long && distanceToChord(at, start, end) <= tolerance) return;
    splitEdge(from, middle, start, at, depth + 1);
    outline.push(at.x, at.y);
    splitEdge(middle, to, at, end, depth + 1);
  }
}

type Triple = [number, number, number];

function unitAt(directions: readonly number[], i: number): Triple {
  const [x, y, z] = [directions[i] as number, directions[i + 1] as number, directions[i + 2] as number];
  const size = Math.sqrt(x * x + y * y + z * z);
  return [x / size, y / size, z / size];
}

function distanceToChord(p: PicturePoint, a: PicturePoint, b: PicturePoint): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.hypot(dx, dy);
  if (chord < 1e-9) return Math.hypot(p.x - a.x, p.y - a.y);
  return Math.abs(dx * (p.y - a.y) - dy * (p.x - a.x)) / chord;
}

/** Sutherland and Hodgman in the picture; folds of zero width along the border keep the area right. */
function cutToPicture(outline: readonly number[], { width, height }: ViewFrame): number[] {
  let polygon: readonly number[] = outline;
  for (const [axis, limit, sign] of [
    [0, 0, 1],
    [0, width, -1],
    [1, 0, 1],
    [1, height, -1],
  ] as const) {
    const result: number[] = [];
    for (let i = 0; i < polygon.length; i += 2) {
      const j = (i + 2) % polygon.length;
      const here = sign * ((polygon[i + axis] as number) - limit);
      const next = sign * ((polygon[j + axis] as number) - limit);
      if (here >= 0) result.push(polygon[i] as number, polygon[i + 1] as number);
      if (here >= 0 === next >= 0) continue;
      const t = here / (here - next);
      result.push(
        (polygon[i] as number) * (1 - t) + (polygon[j] as number) * t,
        (polygon[i + 1] as number) * (1 - t) + (polygon[j + 1] as number) * t,
      );
    }
    polygon = result;
  }
  return [...polygon];
}
