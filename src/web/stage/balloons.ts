import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { seenFromAbove } from '../../report/path.ts';
import type { Point } from '../../report/shapes.ts';
import { middleOfArm } from './anchorOf.ts';

/** A numbered ring beside the drawing that ties a part to its line in the schedule. */
export interface Balloon {
  readonly number: number;
  readonly entry: string;
  /** The spot it points at [mm of the sheet]. */
  readonly at: Point;
  /** Where the ring stands: a place [mm], and from there a shift [px of the screen]. */
  readonly ring: Point;
  readonly shift: Point;
}

/** Numbers as in the schedule. All on the left, for the margin's leaders run to the right. */
export function balloonsOf(aircraft: AircraftPicture): readonly Balloon[] {
  const left = aircraft.rotors
    .filter((rotor) => rotor.at.y < 0.001)
    .map((rotor) => ({ ...seenFromAbove(rotor.at), r: rotor.propellerRadius * 1000 }))
    .toSorted((a, b) => a.y - b.y);
  const [front, rear] = [left[0], left.at(-1)];
  if (front === undefined || rear === undefined) return [];
  const box = (part: 'pack' | 'stack' | 'camera', along: number): Point | undefined => {
    const found = aircraft.boxes.find((each) => each.part === part);
    return (
      found &&
      seenFromAbove({ x: found.at.x + along * found.size.x, y: found.at.y - found.size.y / 2 + 0.002 })
    );
  };
  // Parts of the body line up in the gap between the left discs, in order of their height on the sheet.
  const gap = { x: Math.min(front.x, rear.x) - 6, y: (front.y + rear.y) / 2 };
  const arm = middleOfArm(aircraft, -1);
  const rows: { readonly number: number; readonly entry: string; readonly at: Point | undefined }[] = [
    { number: 1, entry: 'frame', at: arm && seenFromAbove(arm) },
    { number: 6, entry: 'controllers', at: box('stack', 0.2) },
    { number: 5, entry: 'pack', at: box('pack', -0.3) },
  ];
  const camera = box('camera', 0.2);
  const slant = Math.SQRT1_2 * front.r;
  return [
    ...rows.flatMap(({ number, entry, at }, i) =>
      at ? [{ number, entry, at, ring: gap, shift: { x: 0, y: (i - 1) * 25 } }] : [],
    ),
    ...(camera ? [{ number: 7, entry: 'camera', at: camera, ring: camera, shift: { x: -38, y: -24 } }] : []),
    ring(4, 'propellers', { x: front.x - slant, y: front.y - slant }, { x: -22, y: -22 }),
    ring(3, 'motors', { x: rear.x - 4, y: rear.y + 4 }, { x: -38, y: 38 }),
  ];
}

const ring = (number: number, entry: string, at: Point, shift: Point): Balloon => ({
  number,
  entry,
  at,
  ring: at,
  shift,
});
