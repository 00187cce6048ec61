import type { AircraftPicture } from './aircraftPicture.ts';
import { closedPath, openPath, trim } from './path.ts';
import type { Drawing, Point, Shape } from './shapes.ts';
import { sideDrawing } from './sideDrawing.ts';

/** How the aircraft leans into a wind to stay where it is: from its side, nose to the wind. */
export function leanDrawing(
  aircraft: AircraftPicture,
  {
    pen,
    tilt,
    wind,
    says,
  }: { readonly pen: number; readonly tilt: number; readonly wind: string; readonly says: string },
): Drawing {
  const level = sideDrawing(aircraft, { pen, nose: 'right', bare: true });
  const { left, top, width, height } = level.frame;
  const middle = { x: left + width / 2, y: top + height / 2 };
  const reach = Math.hypot(width, height) / 2;
  const tail = 84 * pen;
  const frame = {
    left: middle.x - width / 2 - 10 * pen,
    top: middle.y - Math.max(height, width * 0.28) / 2 - 44 * pen,
    width: width + tail + 60 * pen,
    height: Math.max(height, width * 0.28) + 88 * pen,
  };
  const right = middle.x + width / 2 + 24 * pen;
  const arrows = [-0.3, 0, 0.3].map((share): Shape => {
    const y = middle.y + share * Math.min(reach, frame.height * 0.8);
    return { kind: 'path', ink: 'curve', d: arrow({ x: right + tail, y }, { x: right, y }, pen) };
  });
  const words = (x: number, y: number, text: string, hand: 'figure' | 'label'): Shape => ({
    kind: 'text',
    hand,
    x,
    y,
    size: 12 * pen,
    anchor: hand === 'figure' ? 'start' : 'middle',
    text,
  });
  const arc = reach * 0.9;
  const at = (angle: number): Point => ({
    x: middle.x - arc * Math.cos(angle),
    y: middle.y - arc * Math.sin(angle),
  });
  return {
    frame,
    shapes: [
      ...arrows,
      { kind: 'path', ink: 'centre', d: openPath([at(0), { x: middle.x + arc, y: middle.y }]) },
      // The nose is to the right: leaning into the wind puts it down and the tail up.
      { kind: 'turned', angle: (tilt * 180) / Math.PI, about: middle, shapes: level.shapes },
      {
        kind: 'path',
        ink: 'dimension',
        d: openPath(Array.from({ length: 9 }, (_, i) => at((tilt * i) / 8))),
      },
      words(frame.left + 8 * pen, frame.top + 16 * pen, says, 'figure'),
      words(right + tail / 2, frame.top + 16 * pen, wind, 'label'),
    ],
    description: `${aircraft.name} from its side, leaning ${trim((tilt * 180) / Math.PI)} degrees into a wind of ${wind}.`,
  };
}

function arrow(from: Point, to: Point, pen: number): string {
  const head = 7 * pen;
  return (
    openPath([from, to]) +
    closedPath([to, { x: to.x + head, y: to.y - head / 2.4 }, { x: to.x + head, y: to.y + head / 2.4 }])
  );
}
