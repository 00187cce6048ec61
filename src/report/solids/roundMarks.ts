import type { Vector3 } from '../../numerics/vector3.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { balanceMark, thrustMark } from '../marks.ts';
import { openPath, strokes } from '../path.ts';
import type { Point, Shape } from '../shapes.ts';
import { type Sighting, sighted } from './axonometric.ts';
import type { Bounds } from './mesh.ts';
import type { CraftSolids } from './solidsOf.ts';

/** A word written by a place of the aircraft. */
export interface PlaceLabel {
  readonly at: Vector3;
  readonly text: string;
}

/** What is drawn in ink over the solids: lines of measure, marks and labels [px of the window]. */
export function roundMarks(
  craft: CraftSolids,
  sighting: Sighting,
  shown: { readonly dimensions: boolean; readonly balance: boolean; readonly labels: readonly PlaceLabel[] },
): readonly Shape[] {
  const see = sighted(sighting);
  return [
    ...(shown.dimensions ? [...measures(craft.bounds, see), ...noseArrow(craft.bounds, see)] : []),
    ...(shown.balance ? balance(craft, see, sighting) : []),
    ...shown.labels.flatMap(({ at, text }) => leader(see(at), text, sighting)),
  ];
}

type See = (place: Vector3) => Point;

/** Length, width and height, each along the edge of the whole that lies farthest out on the sheet. */
function measures(bounds: Bounds, see: See): readonly Shape[] {
  const ends = [bounds.low, bounds.high] as const;
  const middle = see(spot(ends, [0.5, 0.5, 0.5]));
  return ([0, 1, 2] as const).flatMap((axis) => {
    const size = bounds.high[axis] - bounds.low[axis];
    const others = ([0, 1, 2] as const).filter((each) => each !== axis);
    const edges = [0, 1].flatMap((a) =>
      [0, 1].map((b) => {
        const share = [0, 0, 0];
        share[others[0] ?? 0] = a;
        share[others[1] ?? 0] = b;
        const from = see(spot(ends, share));
        share[axis] = 1;
        return { from, to: see(spot(ends, share)) };
      }),
    );
    const length = Math.hypot(
      (edges[0]?.to.x ?? 0) - (edges[0]?.from.x ?? 0),
      (edges[0]?.to.y ?? 0) - (edges[0]?.from.y ?? 0),
    );
    // Seen end on there is nothing to measure along.
    if (length < 34) return [];
    const out = ({ from, to }: (typeof edges)[number]) => {
      const half = { x: (from.x + to.x) / 2 - middle.x, y: (from.y + to.y) / 2 - middle.y };
      const across = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
      const reach = half.x * across.x + half.y * across.y;
      return { reach: Math.abs(reach), way: Math.sign(reach) || 1, across };
    };
    // Two edges lie equally far out: the lower one on the sheet, and of an upright pair the left, reads best.
    const best = edges.toSorted(
      (a, b) =>
        Math.round(out(b).reach - out(a).reach) ||
        b.from.y + b.to.y - a.from.y - a.to.y ||
        a.from.x - b.from.x,
    )[0];
    if (best === undefined) return [];
    const { way, across } = out(best);
    return aligned(
      best.from,
      best.to,
      { x: across.x * way, y: across.y * way },
      withUnit(Math.round(size * 1000), 'mm'),
    );
  });
}

/** A line of measure beside an edge, with its ends drawn out to it. */
function aligned(from: Point, to: Point, out: Point, text: string): readonly Shape[] {
  const at = (point: Point, far: number): Point => ({ x: point.x + out.x * far, y: point.y + out.y * far });
  const [a, b] = [at(from, 20), at(to, 20)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const tick = (point: Point): readonly [Point, Point] => {
    const [dx, dy] = [4 * (along.x + out.x), 4 * (along.y + out.y)];
    return [
      { x: point.x - dx, y: point.y - dy },
      { x: point.x + dx, y: point.y + dy },
    ];
  };
  let turn = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  if (turn > 89.5) turn -= 180;
  if (turn < -90.5) turn += 180;
  const lift = out.y >= -0.2 ? 14 : 7;
  const middle = { x: (a.x + b.x) / 2 + out.x * lift, y: (a.y + b.y) / 2 + out.y * lift };
  return [
    {
      kind: 'path',
      ink: 'dimension',
      d: strokes([[at(from, 6), at(from, 25)], [at(to, 6), at(to, 25)], [a, b], tick(a), tick(b)]),
    },
    {
      kind: 'text',
      hand: 'dimension',
      x: middle.x,
      y: middle.y,
      size: 11,
      anchor: 'middle',
      turn: Math.round(turn * 10) / 10,
      text,
    },
  ];
}

/** Which way it flies. */
function noseArrow({ low, high }: Bounds, see: See): readonly Shape[] {
  const y = (low[1] + high[1]) / 2;
  const whole = high[0] - low[0];
  const [from, to] = [see([high[0] - 0.12 * whole, y, 0]), see([high[0] - 0.01 * whole, y, 0])];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 14) return [];
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const barb = (side: number): readonly [Point, Point] => [
    to,
    { x: to.x - 8 * along.x - side * 4 * along.y, y: to.y - 8 * along.y + side * 4 * along.x },
  ];
  return [
    { kind: 'path', ink: 'dimension', d: strokes([[from, to], barb(1), barb(-1)]) },
    {
      kind: 'text',
      hand: 'label',
      x: to.x + along.x * 16,
      y: to.y + along.y * 14 + 4,
      size: 11,
      anchor: 'middle',
      text: 'nose',
    },
  ];
}

function balance(
  { centreOfGravity, thrustCentre }: CraftSolids,
  see: See,
  { width }: Sighting,
): readonly Shape[] {
  const reach = Math.max(40, 0.13 * width);
  const [weight, lift] = [see(centreOfGravity), see(thrustCentre)];
  const below = weight.y >= lift.y;
  const text = (at: Point, side: 1 | -1, words: string): readonly Shape[] => {
    const knee = { x: at.x + reach, y: at.y + side * 0.55 * reach };
    return [
      { kind: 'path', ink: 'dimension', d: openPath([at, knee, { x: knee.x + 8, y: knee.y }]) },
      { kind: 'text', hand: 'label', x: knee.x + 12, y: knee.y + 4, size: 11, anchor: 'start', text: words },
    ];
  };
  return [
    ...text(weight, below ? 1 : -1, 'centre of gravity'),
    ...text(lift, below ? -1 : 1, 'centre of lift'),
    ...thrustMark(lift, 6),
    ...balanceMark(weight, 7),
  ];
}

/** Away from the middle of the window, where the fewest things are. */
function leader(at: Point, text: string, { width, height }: Sighting): readonly Shape[] {
  const [dx, dy] = [at.x - width / 2, at.y - height / 2];
  const far = Math.hypot(dx, dy);
  const [ux, uy] = far < 4 ? [0.7, -0.7] : [dx / far, dy / far];
  const side = ux < 0 ? -1 : 1;
  const knee = { x: at.x + 64 * ux, y: at.y + 58 * uy + (uy < 0 ? -14 : 14) };
  const end = { x: knee.x + side * 8, y: knee.y };
  return [
    { kind: 'path', ink: 'dimension', d: openPath([at, knee, end]) },
    { kind: 'circle', ink: 'solid', x: at.x, y: at.y, r: 2.4 },
    {
      kind: 'text',
      hand: 'figure',
      x: end.x + side * 4,
      y: end.y + 4,
      size: 12,
      anchor: side > 0 ? 'start' : 'end',
      text,
    },
  ];
}

const spot = (ends: readonly [Vector3, Vector3], share: readonly number[]): Vector3 => {
  const at = (axis: 0 | 1 | 2): number =>
    ends[0][axis] + (share[axis] ?? 0) * (ends[1][axis] - ends[0][axis]);
  return [at(0), at(1), at(2)];
};
