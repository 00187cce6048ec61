import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { seenFromAbove } from '../../report/path.ts';
import type { Point } from '../../report/shapes.ts';

/** A numbered ring beside the drawing that ties a part to its line in the schedule. */
export interface Balloon {
  readonly number: number;
  readonly entry: string;
  /** The spot it points at [mm of the sheet]. */
  readonly at: Point;
  /** From there to the ring [px of the screen]. */
  readonly out: Point;
}

/** Numbers as in the schedule. All on the left, for the margin's leaders run to the right. */
export function balloonsOf(aircraft: AircraftPicture): readonly Balloon[] {
  const places = aircraft.rotors.map((rotor) => ({ ...seenFromAbove(rotor.at), rotor }));
  const left = places.filter(({ x }) => x < 1).toSorted((a, b) => a.y - b.y);
  const front = left[0];
  const rear = left.at(-1);
  const boxes = new Map(aircraft.boxes.map((box) => [box.part, box]));
  const leftSide = (part: 'pack' | 'stack' | 'camera', along: number): Point | undefined => {
    const box = boxes.get(part);
    return box && seenFromAbove({ x: box.at.x + along * box.size.x, y: box.at.y - box.size.y / 2 + 0.002 });
  };
  const balloon = (number: number, entry: string, at: Point | undefined, out: Point): Balloon[] =>
    at ? [{ number, entry, at, out }] : [];
  return [
    ...balloon(1, 'frame', rear && { x: rear.x * 0.5, y: rear.y * 0.5 }, { x: -46, y: -14 }),
    ...balloon(3, 'motors', rear && { x: rear.x - 5, y: rear.y + 5 }, { x: -40, y: 40 }),
    ...balloon(
      4,
      'propellers',
      front && {
        x: front.x - front.rotor.propellerRadius * 700,
        y: front.y - front.rotor.propellerRadius * 700,
      },
      { x: -34, y: -22 },
    ),
    ...balloon(5, 'pack', leftSide('pack', -0.3), { x: -58, y: 4 }),
    ...balloon(6, 'controllers', leftSide('stack', 0.2), { x: -58, y: -16 }),
    ...balloon(7, 'camera', leftSide('camera', 0.2), { x: -40, y: -30 }),
  ];
}
