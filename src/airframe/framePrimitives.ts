import { polygonMoments } from '../numerics/polygon.ts';
import { armDirection, armOutline } from './armOutline.ts';
import type { FrameGeometry, Layout, MassItem } from './types.ts';

/**
 * The frame as solids with places, for the mass properties and for drag: arms, plates, standoffs,
 * guards, and the screws spread over the plates by area. All belong to the part `frame`.
 */
export function framePrimitives(frame: FrameGeometry, layout: Layout): readonly MassItem[] {
  const { density } = frame.material;
  const items: MassItem[] = [];
  const add = (name: string, rest: Omit<MassItem, 'name' | 'part'>): void => {
    items.push({ name, part: 'frame', ...rest });
  };
  for (const arm of frame.arms) {
    add(arm.name, {
      primitive: { kind: 'plate', outline: armOutline(arm), thickness: arm.thickness },
      place: arm.root,
      orientation: { yaw: armDirection(arm) },
      amount: { density },
    });
  }
  const area = frame.plates.map((plate) => polygonMoments(plate.outline).area * (1 - plate.cutAway));
  const wholeArea = area.reduce((sum, share) => sum + share, 0);
  for (const [i, plate] of frame.plates.entries()) {
    const own = (area[i] ?? 0) * plate.thickness * density;
    const screws = wholeArea > 0 ? (frame.hardwareMass * (area[i] ?? 0)) / wholeArea : 0;
    add(plate.name, {
      primitive: { kind: 'plate', outline: plate.outline, thickness: plate.thickness },
      place: [0, 0, plate.z],
      amount: { mass: own + screws },
    });
  }
  for (const [i, post] of frame.standoffs.entries()) {
    add(`standoff ${i + 1}`, {
      primitive: {
        kind: 'tube',
        outerDiameter: post.outerDiameter,
        innerDiameter: post.innerDiameter,
        height: post.bottomZ - post.topZ,
      },
      place: [post.place[0], post.place[1], (post.topZ + post.bottomZ) / 2],
      amount: { density: post.density },
    });
  }
  for (const guard of frame.guards) {
    const motor = layout.motors.find(({ name }) => name === guard.motor);
    if (motor === undefined) throw new RangeError(`guards: no motor is named ${guard.motor}`);
    add(`${guard.motor} guard`, {
      primitive: {
        kind: 'tube',
        innerDiameter: 2 * guard.innerRadius,
        outerDiameter: 2 * (guard.innerRadius + guard.wallThickness),
        height: guard.height,
      },
      place: [motor.position[0], motor.position[1], guard.z],
      amount: { density: guard.density },
    });
  }
  return items;
}
