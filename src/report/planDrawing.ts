import { withUnit } from '../units/formatQuantity.ts';
import type { UnitSystem } from '../units/shownUnits.ts';
import type { AircraftPicture, SlabPicture } from './aircraftPicture.ts';
import { hatch } from './hatch.ts';
import { balanceMark, scaleBar, thrustMark } from './marks.ts';
import { closedPath, roundedPath, seenFromAbove, strokes } from './path.ts';
import { boxesAbove, boxesBelow, planCorners } from './planBoxes.ts';
import { planDimensions } from './planDimensions.ts';
import { motorShapes, rotorLabel, sweptDisc } from './planRotors.ts';
import { type Drawing, type Frame, group, type Point, type Shape } from './shapes.ts';

interface PlanOptions {
  /** One pixel of paper in [mm] of the aircraft: lettering and margins keep their size on paper. */
  readonly pen: number;
  /** `small`: the machine alone, to stand in a row. `full`: dimensions, figures and scale bar too. */
  readonly detail: 'small' | 'full';
  /** What lies over a full drawing; all of it when absent. */
  readonly overlays?: readonly PlanOverlay[];
  /** Of the scale bar; metric when absent. */
  readonly system?: UnitSystem;
}

/** [mm] */
const INCH = 25.4;

/** What can be laid over the plan or left off. */
export const PLAN_OVERLAYS = ['dimensions', 'figures', 'balance', 'camera view'] as const;
export type PlanOverlay = (typeof PLAN_OVERLAYS)[number];

/** The aircraft from above, nose up the sheet, to scale. For its height see `sideDrawing`. */
export function planDrawing(
  aircraft: AircraftPicture,
  { pen, detail, overlays, system }: PlanOptions,
): Drawing {
  if (!(pen > 0)) throw new RangeError(`pen must be above 0 mm, got ${pen}`);
  const extent = planExtent(aircraft);
  const full = detail === 'full';
  const over = (overlay: PlanOverlay): boolean => full && (overlays ?? PLAN_OVERLAYS).includes(overlay);
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
      'frame',
      aircraft.posts.map((post): Shape => {
        const at = seenFromAbove(post);
        return { kind: 'circle', ink: 'fine', x: at.x, y: at.y, r: post.radius * 1000 };
      }),
    ),
    group(
      'motors',
      aircraft.rotors.flatMap((rotor) => motorShapes(rotor, pen)),
    ),
    ...boxesAbove(aircraft, extent, pen, { letters: full, sight: over('camera view') }),
  ];
  if (!full || over('balance'))
    shapes.push(...balanceMark(seenFromAbove(aircraft.centreOfGravity), Math.max(6 * pen, 3)));
  if (over('balance')) shapes.push(...thrustMark(seenFromAbove(aircraft.thrustCentre), Math.max(4 * pen, 2)));
  if (over('figures'))
    shapes.push(...aircraft.rotors.flatMap((rotor, i) => rotorLabel(rotor, i, aircraft, pen)));
  if (over('dimensions')) shapes.push(...planDimensions(aircraft, extent, pen));
  if (full) {
    const foot = { x: extent.left, y: extent.top + extent.height + 48 * pen };
    shapes.push(
      ...(system === 'imperial'
        ? scaleBar(foot, INCH / 2, 4, pen, '2 in')
        : scaleBar(foot, 10, 5, pen, '50 mm')),
    );
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
    ...aircraft.boxes.flatMap((box) => planCorners(box).map((at) => ({ at, r: 0 }))),
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

function describe(aircraft: AircraftPicture): string {
  const discs = aircraft.rotors.map((rotor) => Math.round(rotor.propellerRadius * 2000));
  const gravity = aircraft.centreOfGravity;
  const off = Math.round((gravity.x - aircraft.thrustCentre.x) * 1000);
  const balance =
    off === 0
      ? 'under the centre of lift'
      : `${withUnit(Math.abs(off), 'mm')} ${off > 0 ? 'ahead of' : 'behind'} the centre of lift`;
  return `${aircraft.name} from above, to scale: ${discs.length} propellers of ${withUnit(discs[0] ?? 0, 'mm')}; centre of gravity ${balance}.`;
}
