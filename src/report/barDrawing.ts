import { boxPath, strokes } from './path.ts';
import type { Drawing, Hand, Shape } from './shapes.ts';

export interface Bar {
  readonly name: string;
  readonly value: number;
  /** As it is read: `5.1 min`. */
  readonly says: string;
  /** The one that is asked about. */
  readonly chosen?: boolean;
}

const ROW = 34;
const LETTER = 11;

/** Bars from nought, one under another, each with its figure; one pixel a unit. For a handful of values. */
export function barDrawing(bars: readonly Bar[], width: number, title: string, description: string): Drawing {
  const most = Math.max(...bars.map(({ value }) => value), 1e-9);
  const left = 2;
  const room = width - left - 70;
  const top = 22;
  const height = top + bars.length * ROW + 6;
  const words = (x: number, y: number, text: string, hand: Hand): Shape => ({
    kind: 'text',
    hand,
    x,
    y,
    size: LETTER,
    anchor: 'start',
    text,
  });
  const shapes: Shape[] = [
    words(left, 11, title, 'label'),
    ...bars.flatMap(({ name, value, says, chosen }, i): readonly Shape[] => {
      const y = top + i * ROW;
      const end = left + (room * Math.max(value, 0)) / most;
      return [
        words(left + 5, y + 10, name, chosen === true ? 'figure' : 'dimension'),
        {
          kind: 'path',
          ink: chosen === true ? 'bar' : 'band',
          d: boxPath({ x: left, y: y + 14 }, { x: end, y: y + 26 }),
        },
        words(end + 6, y + 24, says, chosen === true ? 'figure' : 'dimension'),
      ];
    }),
    {
      kind: 'path',
      ink: 'dimension',
      d: strokes([
        [
          { x: left, y: top },
          { x: left, y: height - 6 },
        ],
      ]),
    },
  ];
  return { frame: { left: 0, top: 0, width, height }, shapes, description };
}
