import { boxPath, strokes } from './path.ts';
import type { Drawing, Hand, Shape } from './shapes.ts';
import { ticks } from './ticks.ts';

/** One group of inputs and where the figure goes when it alone is low or high. */
export interface TornadoRow {
  readonly name: string;
  /** In the unit of the axis; absent where the figure has no value then. */
  readonly low?: number;
  readonly high?: number;
}

const ROW = 30;
const LETTER = 11;
const TOP = 28;

/**
 * Sensitivities as bars to both sides of the nominal value, widest on top as they are given. The half with the
 * input low is open, the half with it high filled: no meaning hangs on colour.
 *
 * @param axis label with its unit, `flown time, min`
 */
export function tornadoDrawing(
  rows: readonly TornadoRow[],
  nominal: number,
  axis: string,
  width: number,
  description: string,
): Drawing {
  if (!(width >= 160)) throw new RangeError(`width must be at least 160; found ${width}`);
  const values = [nominal, ...rows.flatMap(({ low, high }) => [low ?? nominal, high ?? nominal])];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const spare = 0.05 * Math.max(most - least, 1e-9 * Math.max(Math.abs(nominal), 1));
  const [from, to] = [least - spare, most + spare];
  const [left, right] = [4, width - 12];
  const x = (value: number): number => left + ((value - from) / (to - from)) * (right - left);
  const foot = TOP + rows.length * ROW + 4;
  const words = (
    at: number,
    y: number,
    text: string,
    anchor: 'start' | 'middle' | 'end',
    hand: Hand,
  ): Shape => ({
    kind: 'text',
    hand,
    x: at,
    y,
    size: LETTER,
    anchor,
    text,
  });
  const bar = (y: number, end: number | undefined, ink: 'band' | 'bar'): readonly Shape[] => {
    if (end === undefined || end === nominal) return [];
    const [a, b] = [Math.min(x(end), x(nominal)), Math.max(x(end), x(nominal))];
    return [{ kind: 'path', ink, d: boxPath({ x: a, y: y + 13 }, { x: b, y: y + 25 }) }];
  };
  const marks = ticks(from, to, (right - left) / 70);
  return {
    frame: { left: 0, top: 0, width, height: foot + 36 },
    description,
    shapes: [
      words(left, 12, 'pale: input low; dark: input high', 'start', 'label'),
      ...rows.flatMap(({ name, low, high }, index): readonly Shape[] => {
        const y = TOP + index * ROW;
        return [
          words(left, y + 9, name, 'start', 'dimension'),
          ...bar(y, low, 'band'),
          ...bar(y, high, 'bar'),
        ];
      }),
      {
        kind: 'path',
        ink: 'dimension',
        d: strokes([
          [
            { x: x(nominal), y: TOP - 4 },
            { x: x(nominal), y: foot },
          ],
          [
            { x: left, y: foot },
            { x: right, y: foot },
          ],
          ...marks.map(
            (tick) =>
              [
                { x: x(tick), y: foot },
                { x: x(tick), y: foot + 4 },
              ] as const,
          ),
        ]),
      },
      ...marks.map((tick) => words(x(tick), foot + 16, String(tick), 'middle', 'dimension')),
      words(right, foot + 31, axis, 'end', 'label'),
    ],
  };
}
