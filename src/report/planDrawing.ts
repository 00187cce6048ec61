import type { AircraftPicture, BoxPicture, RotorPicture, SlabPicture } from './aircraftPicture.ts';
import { dimensionLine } from './dimensionLine.ts';
import { hatch } from './hatch.ts';
import { balanceMark, centreMark, scaleBar, spinMark, thrustMark } from './marks.ts';
import { boxPath, closedPath, roundedPath, seenFromAbove, strokes } from './path.ts';
import { propellerPath } from './propellerShape.ts';
import type { Drawing, Frame, PartKey, Point, Shape } from './shapes.ts';

interface PlanOptions {
  /** One pixel of paper in [mm] of the aircraft: lettering and margins keep their size on paper. */
  readonly pen: number;
  /** `small`: the machine alone, to stand in a row. `full`: dimensions, figures and scale bar too. */
  readonly detail: 'small' | 'full';
}

/** The aircraft from above, nose up the sheet, to scale. For its height see `sideDrawing`. */
export function planDrawing(aircraft: AircraftPicture, { pen, detail }: PlanOptions): Drawing {
  if (!(pen > 0)) throw new RangeError(`pen must be above 0 mm, got ${pen}`);
  const extent = planExtent(aircraft);
  const full = detail === 'full';
  const shapes: Shape[] = [
    group(
      'propeller',
      aircraft.rotors.flatMap((rotor, i) => sweptDisc(rotor, i, pen, full)),
    ),
    group(
      'guards',
      aircraft.guards.flatMap((guard) => ringOf(seenFromAbove(guard.at), guard)),
    ),
    ...boxesBelow(aircraft, pen),
    group(
      'frame',
      slabsFromBelow(aircraft).flatMap(({ slab, isArm }) => slabShapes(slab, isArm, pen)),
    ),
    group(
      'motors',
      aircraft.rotors.flatMap((rotor) => motorShapes(rotor, pen)),
    ),
    ...boxesAbove(aircraft, extent, pen, full),
    ...balanceMark(seenFromAbove(aircraft.centreOfGravity), Math.max(6 * pen, 3)),
  ];
  if (full) {
    shapes.push(...thrustMark(seenFromAbove(aircraft.thrustCentre), Math.max(4 * pen, 2)));
    shapes.push(...aircraft.rotors.flatMap((rotor, i) => rotorLabel(rotor, i, aircraft, pen)));
    shapes.push(...dimensions(aircraft, extent, pen));
    shapes.push(...scaleBar({ x: extent.left, y: extent.top + extent.height + 48 * pen }, 10, 5, pen));
  }
  return {
    frame: full
      ? widen(extent, { top: 46, side: 58, bottom: 66 }, pen)
      : widen(extent, { top: 4, side: 4, bottom: 4 }, pen),
    shapes,
    description: describe(aircraft),
  };
}

/** What the machine itself covers, seen from above [mm]: to choose a pen by. */
export function planExtent(aircraft: AircraftPicture): Frame {
  const reach: { readonly at: Point; readonly r: number }[] = [
    ...aircraft.rotors.map((rotor) => ({ at: seenFromAbove(rotor.at), r: rotor.propellerRadius * 1000 })),
    ...aircraft.guards.map((guard) => ({
      at: seenFromAbove(guard.at),
      r: (guard.radius + guard.thickness) * 1000,
    })),
    ...[...aircraft.plates, ...aircraft.arms].flatMap((slab) =>
      slab.outline.map((p) => ({ at: seenFromAbove(p), r: 0 })),
    ),
    ...aircraft.boxes.flatMap((box) => boxCorners(box).map((at) => ({ at, r: 0 }))),
  ];
  const left = Math.min(...reach.map(({ at, r }) => at.x - r));
  const right = Math.max(...reach.map(({ at, r }) => at.x + r));
  const top = Math.min(...reach.map(({ at, r }) => at.y - r));
  const bottom = Math.max(...reach.map(({ at, r }) => at.y + r));
  return { left, top, width: right - left, height: bottom - top };
}

const widen = (
  frame: Frame,
  margin: { readonly top: number; readonly side: number; readonly bottom: number },
  pen: number,
): Frame => ({
  left: frame.left - margin.side * pen,
  top: frame.top - margin.top * pen,
  width: frame.width + 2 * margin.side * pen,
  height: frame.height + (margin.top + margin.bottom) * pen,
});

const group = (part: PartKey, shapes: readonly Shape[]): Shape => ({ kind: 'group', part, shapes });

function sweptDisc(rotor: RotorPicture, index: number, pen: number, full: boolean): readonly Shape[] {
  const at = seenFromAbove(rotor.at);
  const r = rotor.propellerRadius * 1000;
  const clockwise = rotor.spin === 'clockwise';
  // Blades of neighbours rest at different angles, as they do on the bench.
  const turn = Math.atan2(at.y, at.x) + Math.PI / 2 + (index % 2 === 0 ? 0.35 : -0.35);
  const outward = at.x >= 0 ? 0 : Math.PI;
  return [
    { kind: 'circle', ink: 'disc', x: at.x, y: at.y, r },
    { kind: 'path', ink: 'blade', d: propellerPath(at, rotor, turn) },
    ...(full ? [spinMark(at, r * 0.88, clockwise, outward, pen)] : []),
  ];
}

const ringOf = (
  at: Point,
  guard: { readonly radius: number; readonly thickness: number },
): readonly Shape[] => [
  { kind: 'circle', ink: 'fine', x: at.x, y: at.y, r: guard.radius * 1000 },
  { kind: 'circle', ink: 'outline', x: at.x, y: at.y, r: (guard.radius + guard.thickness) * 1000 },
];

/** Arms and plates in the order a person looking down would lay them. */
const slabsFromBelow = (aircraft: AircraftPicture): { slab: SlabPicture; isArm: boolean }[] =>
  [
    ...aircraft.arms.map((slab) => ({ slab, isArm: true })),
    ...aircraft.plates.map((slab) => ({ slab, isArm: false })),
  ].sort((a, b) => b.slab.z - a.slab.z);

function slabShapes(slab: SlabPicture, isArm: boolean, pen: number): readonly Shape[] {
  const outline = slab.outline.map(seenFromAbove);
  const d = isArm ? closedPath(outline) : roundedPath(outline, 5);
  if (!isArm) return [{ kind: 'path', ink: 'body', d }];
  // Section lines run across the arm, not along it.
  const rises = outline.reduce((sum, p) => sum + p.x * p.y, 0);
  return [
    { kind: 'path', ink: 'carbon', d },
    { kind: 'path', ink: 'hatch', d: strokes(hatch(outline, 5 * pen, rises < 0 ? 'falling' : 'rising')) },
    { kind: 'path', ink: 'outline', d },
  ];
}

function motorShapes(rotor: RotorPicture, pen: number): readonly Shape[] {
  const at = seenFromAbove(rotor.at);
  const r = rotor.motorRadius * 1000;
  return [
    { kind: 'circle', ink: 'body', x: at.x, y: at.y, r },
    { kind: 'circle', ink: 'fine', x: at.x, y: at.y, r: r * 0.72 },
    { kind: 'circle', ink: 'solid', x: at.x, y: at.y, r: Math.max(r * 0.14, 1.2 * pen) },
    centreMark(at, r + 4 * pen),
  ];
}

const corner = (box: BoxPicture, forward: number, right: number): Point =>
  seenFromAbove({ x: box.at.x + (forward * box.size.x) / 2, y: box.at.y + (right * box.size.y) / 2 });

const boxCorners = (box: BoxPicture): readonly [Point, Point] => [corner(box, 1, -1), corner(box, -1, 1)];

const topPlate = (aircraft: AircraftPicture): number =>
  Math.min(...[...aircraft.plates, ...aircraft.arms].map((slab) => slab.z));

const liesOver = (box: BoxPicture, aircraft: AircraftPicture): boolean =>
  box.at.z + box.size.z / 2 <= topPlate(aircraft) + 0.001;

/** Parts under the plates show as hidden lines, drawn over them later; what sticks out shows solid first. */
const boxesBelow = (aircraft: AircraftPicture, pen: number): readonly Shape[] =>
  aircraft.boxes
    .filter((box) => !liesOver(box, aircraft))
    .map((box) => group(box.part, [{ kind: 'path', ink: 'body', d: boxPath(...boxCorners(box), 2 * pen) }]));

function boxesAbove(aircraft: AircraftPicture, extent: Frame, pen: number, full: boolean): readonly Shape[] {
  const fromBelow = aircraft.boxes.toSorted((a, b) => b.at.z - a.at.z);
  return fromBelow.map((box) => {
    const over = liesOver(box, aircraft);
    const d = boxPath(...boxCorners(box), 2 * pen);
    const shapes: Shape[] = [{ kind: 'path', ink: over ? 'body' : 'hidden', d }];
    if (box.part === 'pack') {
      if (over) shapes.push({ kind: 'path', ink: 'fine', d: strapLines(box) });
      if (full) shapes.push(packLetters(box, over, pen));
    }
    if (box.view !== undefined && full) shapes.push(sightLines(box, box.view, extent));
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

function rotorLabel(
  rotor: RotorPicture,
  index: number,
  aircraft: AircraftPicture,
  pen: number,
): readonly Shape[] {
  if (rotor.label === undefined) return [];
  const at = seenFromAbove(rotor.at);
  // The second of a coaxial pair writes on the other side of its motor.
  const second = aircraft.rotors
    .slice(0, index)
    .some((other) => Math.hypot(other.at.x - rotor.at.x, other.at.y - rotor.at.y) < 0.001);
  const above = at.y <= 1 !== second;
  const r = rotor.motorRadius * 1000;
  const first = above ? at.y - r - 26 * pen : at.y + r + 22 * pen;
  return [
    {
      kind: 'text',
      hand: rotor.label.tone ?? 'figure',
      x: at.x,
      y: first,
      size: 13 * pen,
      anchor: 'middle',
      text: rotor.label.figure,
    },
    {
      kind: 'text',
      hand: 'label',
      x: at.x,
      y: first + 14 * pen,
      size: 10.5 * pen,
      anchor: 'middle',
      text: rotor.label.under,
    },
  ];
}

/** Front pair above, rear pair below when it differs, front to rear at the left, one diameter. */
function dimensions(aircraft: AircraftPicture, extent: Frame, pen: number): readonly Shape[] {
  const feet = aircraft.rotors.map((rotor) => seenFromAbove(rotor.at));
  const first = feet[0];
  const rotor = aircraft.rotors[0];
  if (first === undefined || rotor === undefined) return [];
  const shapes: Shape[] = [];
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

const mm = (length: number): string => `${Math.round(length)} mm`;

function describe(aircraft: AircraftPicture): string {
  const discs = aircraft.rotors.map((rotor) => Math.round(rotor.propellerRadius * 2000));
  const gravity = aircraft.centreOfGravity;
  const off = Math.round((gravity.x - aircraft.thrustCentre.x) * 1000);
  const balance =
    off === 0
      ? 'under the centre of lift'
      : `${Math.abs(off)} mm ${off > 0 ? 'ahead of' : 'behind'} the centre of lift`;
  return `${aircraft.name} from above, to scale: ${discs.length} propellers of ${discs[0] ?? 0} mm; centre of gravity ${balance}.`;
}
