import { alongLine, type Box, LETTER, type Name, type NamePlace, placedNames } from './chartNames.ts';
import { boxPath, closedPath, openPath, strokes } from './path.ts';
import type { Drawing, Hand, Point, Shape } from './shapes.ts';
import { ticks } from './ticks.ts';

/** A plot to be drawn with the same pens as the aircraft. Values in whatever unit the axes say. */
export interface Chart {
  readonly description: string;
  readonly across: Axis;
  readonly upright: Axis;
  readonly marks: readonly Mark[];
}

export interface Axis {
  /** With its unit: `throttle, %`. */
  readonly label: string;
  readonly low: number;
  readonly high: number;
}

export type Mark =
  /** A curve, named near a third of its way. */
  | {
      readonly kind: 'curve';
      readonly points: readonly Point[];
      readonly name?: string;
      readonly dashed?: boolean;
    }
  /** Between two curves over the same x. */
  | { readonly kind: 'band'; readonly lower: readonly Point[]; readonly upper: readonly Point[] }
  /** A window on the upright axis, from side to side. */
  | { readonly kind: 'window'; readonly low: number; readonly high: number; readonly name: string }
  /** A limit on the upright axis. */
  | { readonly kind: 'limit'; readonly at: number; readonly name: string }
  /** A level to read curves against, with its band: a mode, an average. */
  | {
      readonly kind: 'level';
      readonly at: number;
      readonly band?: readonly [low: number, high: number];
      readonly name: string;
    }
  /** A place on the across axis, from bottom to top. */
  | { readonly kind: 'plumb'; readonly at: number; readonly name: string }
  /** A closed outline. */
  | { readonly kind: 'outline'; readonly points: readonly Point[] }
  /** Without a name: a small dot, `faint` where it matters little. */
  | { readonly kind: 'dot'; readonly at: Point; readonly faint?: boolean }
  | { readonly kind: 'spot'; readonly at: Point; readonly name: string; readonly side: 'over' | 'under' };

const MARGIN = { left: 40, right: 16, top: 22, bottom: 34 };

/** Draws a chart `width` by `height` [px]: one unit of the drawing is one pixel. */
export function drawChart(chart: Chart, width: number, height: number): Drawing {
  if (!(width >= 120 && height >= 80))
    throw new RangeError(`a chart must be at least 120 by 80, got ${width} by ${height}`);
  const { across, upright } = chart;
  const right = width - MARGIN.right;
  const bottom = height - MARGIN.bottom;
  const x = (value: number): number =>
    MARGIN.left + ((value - across.low) / (across.high - across.low)) * (right - MARGIN.left);
  const y = (value: number): number =>
    bottom - ((value - upright.low) / (upright.high - upright.low)) * (bottom - MARGIN.top);
  const to = (point: Point): Point => ({ x: x(point.x), y: y(point.y) });
  const shapes: Shape[] = [];
  const names: Name[] = [];
  const taken: Box[] = [];
  const lines: (readonly Box[])[] = [];

  // Windows lie under the ruling, curves over it.
  for (const mark of chart.marks) {
    if (mark.kind !== 'window') continue;
    const top = Math.max(y(mark.high), MARGIN.top);
    const foot = Math.min(y(mark.low), bottom);
    if (foot <= top) continue;
    shapes.push({
      kind: 'path',
      ink: 'window',
      d: boxPath({ x: MARGIN.left, y: top }, { x: right, y: foot }),
    });
    names.push({
      text: mark.name,
      hand: 'label',
      places: [
        { x: MARGIN.left + 4, y: top + 13, anchor: 'start' },
        { x: right - 4, y: top + 13, anchor: 'end' },
        { x: MARGIN.left + 4, y: foot - 5, anchor: 'start' },
      ],
    });
  }
  shapes.push(...ruling(across, upright, x, y, right, bottom));
  const plot = { to, x, y, right, bottom, across, upright };
  for (const mark of chart.marks) {
    shapes.push(...markShapes(mark, plot));
    const line = mark.kind === 'curve' ? alongLine(underRoof(mark.points, upright.high).map(to)) : undefined;
    if (line) lines.push(line);
    if ('name' in mark && mark.name)
      names.push(...nameOf(mark, mark.name, plot).map((name) => (line ? { ...name, line } : name)));
    if (mark.kind === 'dot' || mark.kind === 'spot') taken.push(round(to(mark.at)));
  }
  // Over all lines, for they have a rim of paper.
  shapes.push(...placedNames(names, { left: 0, top: 0, right: width, bottom }, taken, lines));
  return { frame: { left: 0, top: 0, width, height }, shapes, description: chart.description };
}

function ruling(
  across: Axis,
  upright: Axis,
  x: (value: number) => number,
  y: (value: number) => number,
  right: number,
  bottom: number,
): readonly Shape[] {
  const xs = ticks(across.low, across.high, (right - MARGIN.left) / 70);
  const ys = ticks(upright.low, upright.high, (bottom - MARGIN.top) / 36);
  const line = (from: Point, to: Point): readonly [Point, Point] => [from, to];
  return [
    {
      kind: 'path',
      ink: 'grid',
      d: strokes(ys.map((tick) => line({ x: MARGIN.left, y: y(tick) }, { x: right, y: y(tick) }))),
    },
    {
      kind: 'path',
      ink: 'dimension',
      d: strokes([
        line({ x: MARGIN.left, y: bottom }, { x: right, y: bottom }),
        ...xs.map((tick) => line({ x: x(tick), y: bottom }, { x: x(tick), y: bottom + 4 })),
      ]),
    },
    ...xs.map((tick) => letters(x(tick), bottom + 16, String(tick), 'middle')),
    ...ys.map((tick) => letters(MARGIN.left - 6, y(tick) + 4, String(tick), 'end')),
    letters(right, bottom + 30, across.label, 'end', 'label'),
    letters(2, 11, upright.label, 'start', 'label'),
  ];
}

/** Where values come to lie on the paper. */
interface Plot {
  readonly to: (point: Point) => Point;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly right: number;
  readonly bottom: number;
  readonly across: Axis;
  readonly upright: Axis;
}

function markShapes(mark: Mark, plot: Plot): readonly Shape[] {
  const { to, x, y, right, bottom, upright } = plot;
  switch (mark.kind) {
    case 'window':
      return [];
    case 'curve': {
      const points = underRoof(mark.points, upright.high).map(to);
      return [{ kind: 'path', ink: mark.dashed === true ? 'hidden' : 'curve', d: openPath(points) }];
    }
    case 'band':
      return [
        { kind: 'path', ink: 'band', d: closedPath([...mark.lower, ...mark.upper.toReversed()].map(to)) },
      ];
    case 'limit':
      return [
        {
          kind: 'path',
          ink: 'limit',
          d: strokes([
            [
              { x: MARGIN.left, y: y(mark.at) },
              { x: right, y: y(mark.at) },
            ],
          ]),
        },
      ];
    case 'level': {
      const [low, high] = mark.band ?? [mark.at, mark.at];
      const line: readonly [Point, Point] = [
        { x: MARGIN.left, y: y(mark.at) },
        { x: right, y: y(mark.at) },
      ];
      return [
        ...(high > low
          ? [
              {
                kind: 'path' as const,
                ink: 'band' as const,
                d: boxPath({ x: MARGIN.left, y: y(Math.min(high, upright.high)) }, { x: right, y: y(low) }),
              },
            ]
          : []),
        { kind: 'path', ink: 'fine', d: strokes([line]) },
      ];
    }
    case 'plumb':
      return [
        {
          kind: 'path',
          ink: 'centre',
          d: strokes([
            [
              { x: x(mark.at), y: MARGIN.top },
              { x: x(mark.at), y: bottom },
            ],
          ]),
        },
      ];
    case 'outline':
      return [
        { kind: 'path', ink: 'band', d: closedPath(mark.points.map(to)) },
        { kind: 'path', ink: 'curve', d: closedPath(mark.points.map(to)) },
      ];
    case 'dot': {
      const at = to(mark.at);
      return [{ kind: 'circle', ink: mark.faint === true ? 'fine' : 'solid', x: at.x, y: at.y, r: 3 }];
    }
    case 'spot': {
      const at = to(mark.at);
      return [{ kind: 'circle', ink: 'balance', x: at.x, y: at.y, r: 4 }];
    }
  }
}

/** Where the name of a mark may stand, the usual place first. */
function nameOf(mark: Mark, text: string, { to, x, y, right, bottom, upright }: Plot): readonly Name[] {
  const name = (hand: Hand, places: readonly NamePlace[]): readonly Name[] => [{ text, hand, places }];
  switch (mark.kind) {
    case 'curve': {
      const points = underRoof(mark.points, upright.high).map(to);
      return name(
        'dimension',
        // At a third of its way charts of ours have room over the curve.
        [1 / 3, 0.5, 2 / 3, 0.85, 1 / 6, 0.95, 0.05].flatMap((part): readonly NamePlace[] => {
          const at = points[Math.floor(points.length * part)];
          return at === undefined
            ? []
            : [
                { x: at.x + 4, y: at.y - 8, anchor: 'start' },
                { x: at.x + 4, y: at.y + 16, anchor: 'start' },
                { x: at.x - 4, y: at.y - 8, anchor: 'end' },
              ];
        }),
      );
    }
    case 'limit':
    case 'level': {
      const [over, under] = [y(mark.at) - (mark.kind === 'limit' ? 5 : 3), y(mark.at) + 12];
      const ends = [
        { x: MARGIN.left + 4, anchor: 'start' as const },
        { x: (MARGIN.left + right) / 2, anchor: 'middle' as const },
        { x: right - 4, anchor: 'end' as const },
      ];
      const inOrder = mark.kind === 'limit' ? ends : ends.toReversed();
      return name(
        'label',
        inOrder.flatMap((end) => [
          { ...end, y: over },
          { ...end, y: under },
        ]),
      );
    }
    case 'plumb':
      // Near the right edge its name stands to the left, or the sheet would cut it.
      return name(
        'label',
        [MARGIN.top + 10, MARGIN.top + 24, MARGIN.top + 38, bottom - 20, bottom - 6].flatMap((down) => [
          { x: x(mark.at) + 4, y: down, anchor: 'start' as const },
          { x: x(mark.at) - 4, y: down, anchor: 'end' as const },
        ]),
      );
    case 'spot': {
      const at = to(mark.at);
      const leftward = at.x > (right + MARGIN.left) / 2;
      const sides = leftward ? [-1, 1] : [1, -1];
      // Where both are taken, a line further off.
      const rises = mark.side === 'over' ? [-8, 18, -22, 32] : [18, -8, 32, -22];
      return name(
        'figure',
        rises.flatMap((rise) =>
          sides.map((side) => ({
            x: at.x + 9 * side,
            y: at.y + rise,
            anchor: side < 0 ? ('end' as const) : ('start' as const),
          })),
        ),
      );
    }
    case 'window':
    case 'band':
    case 'outline':
    case 'dot':
      return [];
  }
}

/** What a dot takes of the paper. */
const round = ({ x, y }: Point): Box => ({ left: x - 3, top: y - 3, right: x + 3, bottom: y + 3 });

/** A curve up to where it leaves the chart at the top. */
function underRoof(points: readonly Point[], roof: number): readonly Point[] {
  const over = points.findIndex((point) => point.y > roof);
  if (over < 0) return points;
  const [inside, outside] = [points[over - 1], points[over]];
  const kept = points.slice(0, over);
  if (inside === undefined || outside === undefined) return kept;
  const share = (roof - inside.y) / (outside.y - inside.y);
  return [...kept, { x: inside.x + share * (outside.x - inside.x), y: roof }];
}

const letters = (
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'middle' | 'end',
  hand: Hand = 'dimension',
): Shape => ({ kind: 'text', hand, x, y, size: LETTER, anchor, text });
