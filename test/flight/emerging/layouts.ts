import type { DragAreas } from '../../../src/airframe/types.ts';
import type { ForwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { type ForwardOptions, forwardCraft, forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { type FlightModel, neutralLevers } from '../../../src/flight/types.ts';
import type { Vector3 } from '../../../src/numerics/vector3.ts';
import { exampleQuad } from '../exampleModel.ts';
import { realPropeller } from '../realPropeller.ts';

export const bodyDrag: DragAreas = {
  front: { area: 0.008, coefficient: 1.1 },
  side: { area: 0.009, coefficient: 1.1 },
  top: { area: 0.022, coefficient: 1.1 },
};

/** The example's parts on front and rear pairs of given places: half widths and distances from the middle [m]. */
export function onFrame(
  front: readonly [halfWidth: number, ahead: number],
  rear: readonly [halfWidth: number, behind: number],
  centreOfGravity: Vector3 = [0, 0, 0],
  change: Partial<FlightModel> = {},
): FlightModel {
  const model = exampleQuad({ centreOfGravity, ...change });
  const places = [
    [front[1], -front[0]],
    [front[1], front[0]],
    [-rear[1], rear[0]],
    [-rear[1], -rear[0]],
  ] as const;
  return {
    ...model,
    stations: model.stations.map((station, i) => ({
      ...station,
      ...realPropeller,
      position: [places[i]![0], places[i]![1], -0.02] as const,
    })),
  };
}

/** Level flight at a speed on a pack at 0.6. */
export function flown(model: FlightModel, speed: number, options: ForwardOptions = {}): ForwardPoint {
  const craft = forwardCraft(model, neutralLevers, bodyDrag, options);
  if (!craft.ok) throw new Error(craft.reason);
  const point = forwardPoint(craft.value, speed, 0.6);
  if (!point.ok) throw new Error(point.reason);
  return point.value;
}
