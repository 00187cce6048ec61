import { dot3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import { length3, offset3 } from './solid.ts';
import type { Occluder } from './types.ts';
import type { ViewFrame } from './viewFrame.ts';

/** Whether any of an occluder could fall inside the cone round the picture; quick, never wrongly no. */
export function couldBeSeen(occluder: Occluder, view: ViewFrame): boolean {
  const { centre, reach } = boundingBall(occluder);
  const toCentre = subtract3(centre, view.position);
  const distance = length3(toCentre);
  if (distance <= reach) return true;
  const offAxis = Math.acos(Math.max(-1, Math.min(1, dot3(view.toCamera[0], toCentre) / distance)));
  return offAxis - Math.asin(reach / distance) <= view.cornerAngle;
}

/** The middle of an occluder [m], near enough to tell which of two is in front. */
export function placeOf(occluder: Occluder): Vector3 {
  return boundingBall(occluder).centre;
}

/** Of all its corners at least; round parts are drawn up to 3 % outside their circle. */
function boundingBall(occluder: Occluder): { centre: Vector3; reach: number } {
  switch (occluder.kind) {
    case 'sweptDisc':
      return { centre: occluder.centre, reach: 1.03 * Math.hypot(occluder.radius, occluder.thickness / 2) };
    case 'ring':
      return { centre: occluder.centre, reach: 1.03 * Math.hypot(occluder.outerRadius, occluder.height / 2) };
    case 'ball':
      return { centre: occluder.centre, reach: 1.03 * occluder.radius };
    case 'box':
      return { centre: occluder.centre, reach: length3(occluder.size) / 2 };
    case 'rod':
      return between(occluder.from, occluder.to, 1.03 * occluder.radius);
    case 'bar': {
      const width = Math.max(occluder.widthFrom, occluder.widthTo);
      return between(occluder.from, occluder.to, Math.hypot(width, occluder.thickness) / 2);
    }
    case 'plate': {
      const middle = (k: 0 | 1) => {
        const values = occluder.outline.map((corner) => corner[k]);
        return (Math.min(...values) + Math.max(...values)) / 2;
      };
      const [cx, cy] = [middle(0), middle(1)];
      const reach = Math.max(...occluder.outline.map(([x, y]) => Math.hypot(x - cx, y - cy)));
      return { centre: [cx, cy, occluder.z], reach: reach + occluder.thickness };
    }
  }
}

function between(from: Vector3, to: Vector3, thick: number): { centre: Vector3; reach: number } {
  const axis = subtract3(to, from);
  return { centre: offset3(from, [0.5, axis]), reach: length3(axis) / 2 + thick };
}
