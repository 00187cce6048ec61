import type { AircraftPicture, BoxPicture } from './aircraftPicture.ts';
import { boxPath, seenFromAbove, strokes } from './path.ts';
import { type Frame, group, type Point, type Shape } from './shapes.ts';

const corner = (box: BoxPicture, forward: number, right: number): Point =>
  seenFromAbove({ x: box.at.x + (forward * box.size.x) / 2, y: box.at.y + (right * box.size.y) / 2 });

/** Front left and rear right corner of a box on the sheet. */
export const planCorners = (box: BoxPicture): readonly [Point, Point] => [
  corner(box, 1, -1),
  corner(box, -1, 1),
];

const topPlate = (aircraft: AircraftPicture): number =>
  Math.min(...[...aircraft.plates, ...aircraft.arms].map((slab) => slab.z));

const liesOver = (box: BoxPicture, aircraft: AircraftPicture): boolean =>
  box.at.z + box.size.z / 2 <= topPlate(aircraft) + 0.001;

/** Parts under the plates show as hidden lines, drawn over them later; what sticks out shows solid first. */
export const boxesBelow = (aircraft: AircraftPicture, pen: number): readonly Shape[] =>
  aircraft.boxes
    .filter((box) => !liesOver(box, aircraft))
    .map((box) => group(box.part, [{ kind: 'path', ink: 'body', d: boxPath(...planCorners(box), 2 * pen) }]));

/** Hidden parts dashed, parts on top solid, the lower ones first. */
export function boxesAbove(
  aircraft: AircraftPicture,
  extent: Frame,
  pen: number,
  { letters, sight }: { readonly letters: boolean; readonly sight: boolean },
): readonly Shape[] {
  const fromBelow = aircraft.boxes.toSorted((a, b) => b.at.z - a.at.z);
  return fromBelow.map((box) => {
    const over = liesOver(box, aircraft);
    const d = boxPath(...planCorners(box), 2 * pen);
    const shapes: Shape[] = [{ kind: 'path', ink: over ? 'body' : 'hidden', d }];
    if (box.part === 'pack') {
      if (over) shapes.push({ kind: 'path', ink: 'fine', d: strapLines(box) });
      if (letters) shapes.push(packLetters(box, over, pen));
    }
    if (box.view !== undefined && sight) shapes.push(sightLines(box, box.view, extent));
    return group(box.part, shapes);
  });
}

/** Two straps across the pack, each as a pair of lines 20 mm apart. */
function strapLines(box: BoxPicture): string {
  const across = (x: number): readonly [Point, Point] => [
    seenFromAbove({ x, y: box.at.y - box.size.y / 2 }),
    seenFromAbove({ x, y: box.at.y + box.size.y / 2 }),
  ];
  const half = Math.min(0.01, box.size.x / 10);
  return strokes(
    [-0.25, 0.25].flatMap((share) => {
      const middle = box.at.x + share * box.size.x;
      return [across(middle - half), across(middle + half)];
    }),
  );
}

const packLetters = (box: BoxPicture, over: boolean, pen: number): Shape => ({
  kind: 'text',
  hand: 'label',
  x: box.at.y * 1000,
  y: -(box.at.x - box.size.x / 2) * 1000 - 6 * pen,
  size: 10 * pen,
  anchor: 'middle',
  text: over ? 'pack' : 'pack, under',
});

/** The edges of the picture, from the lens forward. */
function sightLines(box: BoxPicture, view: number, extent: Frame): Shape {
  const lens = seenFromAbove({ x: box.at.x + box.size.x / 2, y: box.at.y });
  const reach = Math.max(lens.y - extent.top, extent.width / 4);
  const ray = (side: number): readonly [Point, Point] => {
    const angle = (side * view) / 2;
    const length = Math.min(reach / Math.max(Math.cos(angle), 0.35), extent.width / 2);
    return [lens, { x: lens.x + length * Math.sin(angle), y: lens.y - length * Math.cos(angle) }];
  };
  return { kind: 'path', ink: 'sight', d: strokes([ray(-1), ray(1)]) };
}
