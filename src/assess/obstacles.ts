import type { Obstacle, Point2 } from '../airframe/types.ts';
import type { Craft } from '../build/craft.ts';
import type { Box } from '../build/schema/fields.ts';
import type { Vector3 } from '../numerics/vector3.ts';

/** Blades flap and flex this far out of their plane [m] (common practice, no source). */
const FLEX = 4e-3;

/**
 * What a blade could strike, in plan: whatever reaches the height of the swept discs. The room between
 * the plates counts as full, since standoffs and stack stand in it.
 */
export function obstaclesOf(craft: Craft): readonly Obstacle[] {
  const heights = craft.motors.map((motor) => motor.discPlace[2]);
  const reaches = (top: number, bottom: number) => heights.some((z) => z > top - FLEX && z < bottom + FLEX);
  const list: Obstacle[] = [];
  const plates = craft.frame.plates;
  const top = Math.min(...plates.map((plate) => plate.z - plate.thickness / 2));
  const bottom = Math.max(...plates.map((plate) => plate.z + plate.thickness / 2));
  if (reaches(top, bottom)) {
    for (const plate of plates) {
      list.push({ name: `the ${plate.name}`, part: 'frame', shape: 'outline', outline: plate.outline });
    }
  }
  const add = (name: string, part: string, place: Vector3, size: Box) => {
    if (reaches(place[2] - size.height / 2, place[2] + size.height / 2)) {
      list.push({ name, part, shape: 'outline', outline: rectangle(place, size) });
    }
  };
  add('the pack', 'pack', craft.pack.place, craft.pack.size);
  for (const camera of craft.cameras) add(`the ${camera.role} camera`, 'cameras', camera.place, camera.size);
  for (const guard of craft.frame.guards) {
    list.push({
      name: 'its guard',
      part: 'guards',
      shape: 'ring',
      motor: guard.motor,
      innerRadius: guard.innerRadius,
    });
  }
  return list;
}

function rectangle([x, y]: Vector3, { length, width }: Box): readonly Point2[] {
  return [
    [x + length / 2, y - width / 2],
    [x + length / 2, y + width / 2],
    [x - length / 2, y + width / 2],
    [x - length / 2, y - width / 2],
  ];
}
