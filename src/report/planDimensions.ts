import { withUnit } from '../units/formatQuantity.ts';
import type { AircraftPicture } from './aircraftPicture.ts';
import { dimensionLine } from './dimensionLine.ts';
import { openPath, seenFromAbove } from './path.ts';
import type { Frame, Point, Shape } from './shapes.ts';

/** Front pair above, rear pair below when it differs, front to rear at the left, one diameter. */
export function planDimensions(aircraft: AircraftPicture, extent: Frame, pen: number): readonly Shape[] {
  const feet = aircraft.rotors.map((rotor) => seenFromAbove(rotor.at));
  if (feet.length === 0) return [];
  const shapes: Shape[] = [...diameter(aircraft, pen)];
  const front = rowAt(feet, Math.min(...feet.map((p) => p.y)));
  const rear = rowAt(feet, Math.max(...feet.map((p) => p.y)));
  const bottom = extent.top + extent.height;
  if (front.width > 1)
    shapes.push(
      ...dimensionLine(front.left, front.right, 'across', extent.top - 16 * pen, mm(front.width), pen),
    );
  if (rear.width > 1 && Math.abs(rear.width - front.width) > 0.5)
    shapes.push(...dimensionLine(rear.left, rear.right, 'across', bottom + 26 * pen, mm(rear.width), pen));
  const length = rear.left.y - front.left.y;
  if (length > 1)
    shapes.push(...dimensionLine(front.left, rear.left, 'upright', extent.left - 18 * pen, mm(length), pen));
  return shapes;
}

/** On the disc that is farthest back and right, where nothing else is written. */
function diameter(aircraft: AircraftPicture, pen: number): readonly Shape[] {
  const rotor = aircraft.rotors.toSorted((a, b) => b.at.y - b.at.x - a.at.y + a.at.x)[0];
  if (rotor === undefined) return [];
  const at = seenFromAbove(rotor.at);
  const slant = rotor.propellerRadius * 1000 * Math.SQRT1_2;
  const edge = { x: at.x + slant, y: at.y + slant };
  const knee = { x: edge.x + 10 * pen, y: edge.y + 10 * pen };
  const end = { x: knee.x + 4 * pen, y: knee.y };
  return [
    { kind: 'path', ink: 'dimension', d: openPath([edge, knee, end]) },
    {
      kind: 'text',
      hand: 'dimension',
      x: end.x + 3 * pen,
      y: end.y + 4 * pen,
      size: 11 * pen,
      anchor: 'start',
      text: `\u00d8 ${mm(rotor.propellerRadius * 2000)}`,
    },
  ];
}

interface Row {
  readonly left: Point;
  readonly right: Point;
  readonly width: number;
}

function rowAt(feet: readonly Point[], y: number): Row {
  const row = feet.filter((p) => Math.abs(p.y - y) < 1).toSorted((a, b) => a.x - b.x);
  const left = row[0] ?? { x: 0, y };
  const right = row.at(-1) ?? left;
  return { left, right, width: right.x - left.x };
}

const mm = (length: number): string => withUnit(Math.round(length), 'mm');
