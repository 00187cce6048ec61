import { strokes } from './path.ts';
import type { Point, Shape } from './shapes.ts';

/**
 * A dimension between two points, drawn on a line parallel to a sheet axis at `level` [mm]: thin
 * extension lines that stop short of the object, slanted ticks and the figure above the line.
 */
export function dimensionLine(
  from: Point,
  to: Point,
  along: 'across' | 'upright',
  level: number,
  text: string,
  /** One pixel of paper in mm of the aircraft. */
  pen: number,
): readonly Shape[] {
  const put = (p: Point): Point => (along === 'across' ? { x: p.x, y: level } : { x: level, y: p.y });
  const [a, b] = [put(from), put(to)];
  const tick = 4 * pen;
  const slant = (p: Point): readonly [Point, Point] => [
    { x: p.x - tick, y: p.y + tick },
    { x: p.x + tick, y: p.y - tick },
  ];
  const reach = (p: Point, end: Point): readonly [Point, Point] => {
    const length = Math.hypot(end.x - p.x, end.y - p.y) || 1;
    const [ux, uy] = [(end.x - p.x) / length, (end.y - p.y) / length];
    return [
      { x: p.x + ux * 6 * pen, y: p.y + uy * 6 * pen },
      { x: end.x + ux * 5 * pen, y: end.y + uy * 5 * pen },
    ];
  };
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const lift = 5 * pen;
  return [
    { kind: 'path', ink: 'fine', d: strokes([reach(from, a), reach(to, b)]) },
    { kind: 'path', ink: 'dimension', d: strokes([[a, b], slant(a), slant(b)]) },
    along === 'across'
      ? {
          kind: 'text',
          hand: 'dimension',
          x: middle.x,
          y: middle.y - lift,
          size: 11 * pen,
          anchor: 'middle',
          text,
        }
      : {
          kind: 'text',
          hand: 'dimension',
          x: middle.x - lift,
          y: middle.y,
          size: 11 * pen,
          anchor: 'middle',
          turn: -90,
          text,
        },
  ];
}
