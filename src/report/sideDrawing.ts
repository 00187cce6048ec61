import { withUnit } from '../units/formatQuantity.ts';
import type { AircraftPicture, BoxPicture, RotorPicture, SlabPicture } from './aircraftPicture.ts';
import { dimensionLine } from './dimensionLine.ts';
import { balanceMark } from './marks.ts';
import { boxPath, closedPath, openPath, seenFromLeft, seenFromRight, strokes } from './path.ts';
import { type Drawing, type Frame, group, type Point, type Shape } from './shapes.ts';

interface SideOptions {
  /** As in `planDrawing`. */
  readonly pen: number;
  /**
   * `up`: seen from the left, to stand left of the plan and level with it, as third-angle projection
   * puts it (ISO 5456-2). `right`: seen from the right, to stand by itself.
   */
  readonly nose: 'up' | 'right';
  /** The machine alone, without the ground and its height. */
  readonly bare?: boolean;
}

type See = (place: { readonly x: number; readonly z: number }) => Point;

/** The aircraft from its side, to scale. */
export function sideDrawing(aircraft: AircraftPicture, { pen, nose, bare = false }: SideOptions): Drawing {
  if (!(pen > 0)) throw new RangeError(`pen must be above 0 mm, got ${pen}`);
  const see = nose === 'up' ? seenFromLeft : seenFromRight;
  const extent = sideExtent(aircraft, nose);
  const tall = Math.round(nose === 'up' ? extent.width : extent.height);
  const ground =
    nose === 'up'
      ? corners(extent.left, extent.top, extent.left, extent.top + extent.height)
      : corners(
          extent.left,
          extent.top + extent.height,
          extent.left + extent.width,
          extent.top + extent.height,
        );
  const shapes: Shape[] = [
    group(
      'propeller',
      aircraft.rotors.map((rotor) => propellerEdge(rotor, see)),
    ),
    group(
      'motors',
      aircraft.rotors.map((rotor) => motorBody(rotor, see)),
    ),
    group('frame', [
      ...aircraft.posts.map(({ x, radius, topZ, bottomZ }): Shape => {
        const [from, to] = [see({ x: x - radius, z: topZ }), see({ x: x + radius, z: bottomZ })];
        return { kind: 'path', ink: 'fine', d: boxPath(from, to) };
      }),
      ...[...aircraft.arms, ...aircraft.plates].map((slab) => slabEdge(slab, see)),
    ]),
    ...aircraft.boxes.map((box): Shape => group(box.part, boxShapes(box, see))),
    ...(bare ? [] : [{ kind: 'path', ink: 'fine', d: strokes([ground]) } satisfies Shape]),
    ...balanceMark(see(aircraft.centreOfGravity), Math.max(5 * pen, 2.5)),
    ...(bare
      ? []
      : nose === 'up'
        ? dimensionLine(
            { x: extent.left, y: extent.top },
            { x: extent.left + extent.width, y: extent.top },
            'across',
            extent.top - 16 * pen,
            withUnit(tall, 'mm'),
            pen,
          )
        : dimensionLine(
            { x: extent.left, y: extent.top },
            { x: extent.left, y: extent.top + extent.height },
            'upright',
            extent.left - 16 * pen,
            withUnit(tall, 'mm'),
            pen,
          )),
  ];
  const margin = nose === 'up' ? { x: 16, y: 40 } : { x: 40, y: 12 };
  return {
    frame: {
      left: extent.left - margin.x * pen,
      top: extent.top - margin.y * pen,
      width: extent.width + (margin.x + 16) * pen,
      height: extent.height + (margin.y + 12) * pen,
    },
    shapes,
    description: `${aircraft.name} from the ${nose === 'up' ? 'left' : 'right'}, to scale: ${withUnit(tall, 'mm')} high.`,
  };
}

/** What the machine covers, seen from its side [mm]. */
export function sideExtent(aircraft: AircraftPicture, nose: SideOptions['nose']): Frame {
  const see = nose === 'up' ? seenFromLeft : seenFromRight;
  const places = [
    ...aircraft.rotors.flatMap(({ at, propellerRadius, discZ }) => [
      { x: at.x + propellerRadius, z: discZ },
      { x: at.x - propellerRadius, z: at.z },
    ]),
    ...[...aircraft.arms, ...aircraft.plates].flatMap(({ outline, z, thickness }) =>
      outline.flatMap(({ x }) => [
        { x, z },
        { x, z: z + thickness },
      ]),
    ),
    ...aircraft.boxes.flatMap(boxCorners),
  ].map(see);
  const xs = places.map((p) => p.x);
  const ys = places.map((p) => p.y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

const corners = (ax: number, ay: number, bx: number, by: number): readonly [Point, Point] => [
  { x: ax, y: ay },
  { x: bx, y: by },
];

function slabEdge({ outline, z, thickness }: SlabPicture, see: See): Shape {
  const xs = outline.map((p) => p.x);
  const from = see({ x: Math.min(...xs), z });
  return { kind: 'path', ink: 'carbon', d: boxPath(from, see({ x: Math.max(...xs), z: z + thickness })) };
}

/** A thin lens: blades seen edge on as they sweep round. */
function propellerEdge(rotor: RotorPicture, see: See): Shape {
  const at = (share: number, lift: number): Point =>
    see({ x: rotor.at.x + share * rotor.propellerRadius, z: rotor.discZ + lift });
  const lens = [at(-1, 0), at(-0.5, -0.0012), at(0.5, -0.0012), at(1, 0), at(0.5, 0.0012), at(-0.5, 0.0012)];
  return { kind: 'path', ink: 'disc', d: closedPath(lens) };
}

function motorBody({ at, motorRadius, motorHeight, inverted }: RotorPicture, see: See): Shape {
  const way = inverted === true ? 1 : -1;
  const from = see({ x: at.x - motorRadius, z: at.z });
  const to = see({ x: at.x + motorRadius, z: at.z + way * motorHeight });
  return { kind: 'path', ink: 'body', d: boxPath(from, to, 1.5) };
}

/** The corners of a box in build axes, tilted as it is. */
function boxCorners(box: BoxPicture): readonly { readonly x: number; readonly z: number }[] {
  const [l, h] = [box.size.x / 2, box.size.z / 2];
  return [turned(box, -l, -h), turned(box, l, -h), turned(box, l, h), turned(box, -l, h)];
}

/** A place told from the middle of a box along its own axes; nose up lifts its front, z being down. */
function turned(box: BoxPicture, forward: number, down: number) {
  const [c, s] = [Math.cos(box.tilt ?? 0), Math.sin(box.tilt ?? 0)];
  return { x: box.at.x + forward * c + down * s, z: box.at.z - forward * s + down * c };
}

/** How far a line of sight is drawn before the lens [m]. */
const SIGHT = 0.045;

function boxShapes(box: BoxPicture, see: See): readonly Shape[] {
  const body: Shape = { kind: 'path', ink: 'body', d: closedPath(boxCorners(box).map(see)) };
  if (box.tilt === undefined) return [body];
  const sight = [turned(box, box.size.x / 2, 0), turned(box, box.size.x / 2 + SIGHT, 0)].map(see);
  return [body, { kind: 'path', ink: 'sight', d: openPath(sight) }];
}
