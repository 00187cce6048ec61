import type { PictureReport } from '../assess/parts/airframeData.ts';
import type { PicturePoint } from '../view/types.ts';
import { boxPath, closedPath, openPath, strokes } from './path.ts';
import type { Drawing, Point, Shape } from './shapes.ts';

const PER_CENT = 100;

/** A camera's picture as it hovers level: sky and ground, what of the aircraft stands in it, its cross. */
export function cameraDrawing(report: PictureReport, name: string): Drawing {
  const { width, height, outlines, horizon, cross } = report.picture;
  const reach = height / 30;
  // The frame's whole stroke stands inside, or the paper's edge would cut it.
  const rim = width / 600;
  const shapes: Shape[] = [
    { kind: 'path', ink: 'sky', d: boxPath({ x: 0, y: 0 }, { x: width, y: height }) },
    ...ground(horizon, width, height),
    ...horizon.map((line): Shape => ({ kind: 'path', ink: 'fine', d: openPath(line) })),
    ...outlines.map(
      ({ kind, pieces }): Shape => ({
        kind: 'path',
        ink: kind === 'sweptDisc' ? 'veil' : 'silhouette',
        d: pieces.map((piece) => closedPath(piece)).join(''),
      }),
    ),
    {
      kind: 'path',
      ink: 'dimension',
      d: strokes([
        [
          { x: cross.x - reach, y: cross.y },
          { x: cross.x + reach, y: cross.y },
        ],
        [
          { x: cross.x, y: cross.y - reach },
          { x: cross.x, y: cross.y + reach },
        ],
      ]),
    },
    {
      kind: 'path',
      ink: 'outline',
      d: boxPath({ x: rim, y: rim }, { x: width - rim, y: height - rim }),
    },
  ];
  const share = (value: number): string => `${(value * PER_CENT).toFixed(1)} %`;
  return {
    frame: { left: 0, top: 0, width, height },
    shapes,
    description: `What the ${name} sees in a level hover: propellers in ${share(report.discsTouch)} of the picture, ${share(report.covered)} of its light lost to the aircraft.`,
  };
}

/** Below the horizon, where it crosses the picture from side to side. */
function ground(
  horizon: readonly (readonly PicturePoint[])[],
  width: number,
  height: number,
): readonly Shape[] {
  return horizon.flatMap((line): readonly Shape[] => {
    const [first, last] = [line[0], line.at(-1)];
    if (first === undefined || last === undefined) return [];
    const left = Math.min(first.x, last.x);
    const right = Math.max(first.x, last.x);
    if (left > 1 || right < width - 1) return [];
    const along: readonly Point[] = first.x < last.x ? line : line.toReversed();
    return [
      {
        kind: 'path',
        ink: 'ground',
        d: closedPath([...along, { x: width, y: height }, { x: 0, y: height }]),
      },
    ];
  });
}
