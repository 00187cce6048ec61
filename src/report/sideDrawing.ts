import type { AircraftPicture, BoxPicture } from './aircraftPicture.ts';
import { dimensionLine } from './dimensionLine.ts';
import { balanceMark } from './marks.ts';
import { boxPath, closedPath, openPath, seenFromRight, strokes } from './path.ts';
import type { Drawing, Frame, Point, Shape } from './shapes.ts';

/** The aircraft from its right side, nose to the right, to scale. `pen` as in `planDrawing`. */
export function sideDrawing(aircraft: AircraftPicture, { pen }: { readonly pen: number }): Drawing {
  if (!(pen > 0)) throw new RangeError(`pen must be above 0 mm, got ${pen}`);
  const extent = sideExtent(aircraft);
  const slabs = [...aircraft.arms, ...aircraft.plates];
  const ground = extent.top + extent.height;
  const shapes: Shape[] = [
    {
      kind: 'group',
      part: 'propeller',
      shapes: aircraft.rotors.map((rotor) => propellerEdge(rotor)),
    },
    { kind: 'group', part: 'motors', shapes: aircraft.rotors.map((rotor) => motorBody(rotor)) },
    {
      kind: 'group',
      part: 'frame',
      shapes: slabs.map((slab) => {
        const xs = slab.outline.map((p) => p.x);
        const from = seenFromRight({ x: Math.min(...xs), z: slab.z });
        const to = seenFromRight({ x: Math.max(...xs), z: slab.z + slab.thickness });
        return { kind: 'path', ink: 'carbon', d: boxPath(from, to) };
      }),
    },
    {
      kind: 'group',
      part: 'frame',
      shapes: aircraft.posts.map(({ x, radius, topZ, bottomZ }) => {
        const from = seenFromRight({ x: x - radius, z: topZ });
        return { kind: 'path', ink: 'fine', d: boxPath(from, seenFromRight({ x: x + radius, z: bottomZ })) };
      }),
    },
    ...aircraft.boxes.map((box): Shape => ({ kind: 'group', part: box.part, shapes: boxShapes(box) })),
    {
      kind: 'path',
      ink: 'fine',
      d: strokes([
        [
          { x: extent.left, y: ground },
          { x: extent.left + extent.width, y: ground },
        ],
      ]),
    },
    ...balanceMark(seenFromRight(aircraft.centreOfGravity), Math.max(5 * pen, 2.5)),
    ...dimensionLine(
      { x: extent.left, y: extent.top },
      { x: extent.left, y: ground },
      'upright',
      extent.left - 16 * pen,
      `${Math.round(extent.height)} mm`,
      pen,
    ),
  ];
  return {
    frame: {
      left: extent.left - 40 * pen,
      top: extent.top - 12 * pen,
      width: extent.width + 52 * pen,
      height: extent.height + 24 * pen,
    },
    shapes,
    description: `${aircraft.name} from the right, to scale: ${Math.round(extent.height)} mm high.`,
  };
}

/** What the machine covers, seen from its side [mm]. */
export function sideExtent(aircraft: AircraftPicture): Frame {
  const points: Point[] = [
    ...aircraft.rotors.flatMap((rotor) => {
      return [
        seenFromRight({ x: rotor.at.x + rotor.propellerRadius, z: rotor.discZ }),
        seenFromRight({ x: rotor.at.x - rotor.propellerRadius, z: rotor.at.z }),
      ];
    }),
    ...[...aircraft.arms, ...aircraft.plates].flatMap((slab) => [
      { x: (slab.outline[0]?.x ?? 0) * 1000, y: slab.z * 1000 },
      { x: (slab.outline[0]?.x ?? 0) * 1000, y: (slab.z + slab.thickness) * 1000 },
    ]),
    ...aircraft.boxes.flatMap((box) => [boxCorner(box, 1, -1), boxCorner(box, -1, 1)]),
  ];
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

function propellerEdge(rotor: AircraftPicture['rotors'][number]): Shape {
  const at = (share: number, lift: number): Point =>
    seenFromRight({ x: rotor.at.x + share * rotor.propellerRadius, z: rotor.discZ + lift });
  // A thin lens: blades seen edge on as they sweep round.
  return {
    kind: 'path',
    ink: 'disc',
    d: closedPath([
      at(-1, 0),
      at(-0.5, -0.0012),
      at(0.5, -0.0012),
      at(1, 0),
      at(0.5, 0.0012),
      at(-0.5, 0.0012),
    ]),
  };
}

function motorBody(rotor: AircraftPicture['rotors'][number]): Shape {
  const way = rotor.inverted === true ? 1 : -1;
  const from = seenFromRight({ x: rotor.at.x - rotor.motorRadius, z: rotor.at.z });
  const to = seenFromRight({ x: rotor.at.x + rotor.motorRadius, z: rotor.at.z + way * rotor.motorHeight });
  return { kind: 'path', ink: 'body', d: boxPath(from, to, 1.5) };
}

const boxCorner = (box: BoxPicture, forward: number, down: number): Point =>
  seenFromRight({ x: box.at.x + (forward * box.size.x) / 2, z: box.at.z + (down * box.size.z) / 2 });

function boxShapes(box: BoxPicture): readonly Shape[] {
  if (box.tilt === undefined)
    return [{ kind: 'path', ink: 'body', d: boxPath(boxCorner(box, 1, -1), boxCorner(box, -1, 1), 2) }];
  const centre = seenFromRight(box.at);
  const [c, s] = [Math.cos(box.tilt), Math.sin(box.tilt)];
  const turned = (forward: number, down: number): Point => ({
    x: centre.x + forward * c + down * s,
    y: centre.y - forward * s + down * c,
  });
  const [l, h] = [box.size.x * 500, box.size.z * 500];
  return [
    {
      kind: 'path',
      ink: 'body',
      d: closedPath([turned(-l, -h), turned(l, -h), turned(l, h), turned(-l, h)]),
    },
    { kind: 'path', ink: 'sight', d: openPath([turned(l, 0), turned(l + 45, 0)]) },
  ];
}
