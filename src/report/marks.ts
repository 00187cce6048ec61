import { arcPath, strokes, trim } from './path.ts';
import type { Ink, Point, Shape } from './shapes.ts';

/** The quartered circle that marks a centre of gravity. */
export function balanceMark(at: Point, r: number): readonly Shape[] {
  const quarter = (from: number) =>
    `${arcPath(at, r, from, from + Math.PI / 2)}L${trim(at.x)} ${trim(at.y)}Z`;
  return [
    { kind: 'circle', ink: 'balance', x: at.x, y: at.y, r },
    { kind: 'path', ink: 'solid', d: quarter(-Math.PI / 2) + quarter(Math.PI / 2) },
  ];
}

/** A diagonal cross in a ring: where the lift acts. */
export function thrustMark(at: Point, r: number): readonly Shape[] {
  const k = r * Math.SQRT1_2;
  return [
    { kind: 'circle', ink: 'thrust', x: at.x, y: at.y, r },
    {
      kind: 'path',
      ink: 'thrust',
      d: strokes([
        [
          { x: at.x - k, y: at.y - k },
          { x: at.x + k, y: at.y + k },
        ],
        [
          { x: at.x - k, y: at.y + k },
          { x: at.x + k, y: at.y - k },
        ],
      ]),
    },
  ];
}

/** Crossing centre lines through a hole or an axis, `reach` to each side [mm]. */
export const centreMark = (at: Point, reach: number): Shape => ({
  kind: 'path',
  ink: 'centre',
  d: strokes([
    [
      { x: at.x - reach, y: at.y },
      { x: at.x + reach, y: at.y },
    ],
    [
      { x: at.x, y: at.y - reach },
      { x: at.x, y: at.y + reach },
    ],
  ]),
});

/** An arrow along part of a circle: which way a propeller turns. */
export function spinMark(centre: Point, r: number, clockwise: boolean, at: number, pen: number): Shape {
  const half = 0.2;
  const [from, to] = clockwise ? [at - half, at + half] : [at + half, at - half];
  const way = clockwise ? 1 : -1;
  const tip = { x: centre.x + r * Math.cos(to), y: centre.y + r * Math.sin(to) };
  // The head is drawn against the direction of travel, a little open.
  const barb = (open: number): readonly [Point, Point] => {
    const heading = to + (way * Math.PI) / 2 + Math.PI + open;
    return [tip, { x: tip.x + 6 * pen * Math.cos(heading), y: tip.y + 6 * pen * Math.sin(heading) }];
  };
  const ink: Ink = 'dimension';
  return { kind: 'path', ink, d: arcPath(centre, r, from, to) + strokes([barb(0.45), barb(-0.45)]) };
}

/** A ruled bar of `count` steps [mm] in alternate black and white, with what it is long. */
export function scaleBar(
  at: Point,
  step: number,
  count: number,
  pen: number,
  says: string,
): readonly Shape[] {
  const height = 4 * pen;
  const shapes: Shape[] = [];
  for (let i = 0; i < count; i++) {
    const x = at.x + i * step;
    const box = `M${trim(x)} ${trim(at.y)}h${trim(step)}v${trim(height)}h${trim(-step)}Z`;
    shapes.push({ kind: 'path', ink: i % 2 === 0 ? 'solid' : 'outline', d: box });
  }
  for (const i of [0, count]) {
    shapes.push({
      kind: 'text',
      hand: 'dimension',
      x: at.x + i * step,
      y: at.y - 5 * pen,
      size: 10 * pen,
      anchor: 'middle',
      text: i === 0 ? '0' : says,
    });
  }
  return shapes;
}
