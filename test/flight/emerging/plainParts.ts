import { layoutMotors } from '../../../src/airframe/layout.ts';
import type { LayoutParameters, MassItem } from '../../../src/airframe/types.ts';

/** Four motors, a pack above and the plates between: enough for inertia and drag. */
export function plainParts(
  layout: LayoutParameters,
  plates: number,
  pack: { readonly mass: number; readonly yaw?: number },
): MassItem[] {
  return [
    ...layoutMotors(layout).motors.map(
      ({ name, position }): MassItem => ({
        name: `${name} motor`,
        part: 'motors',
        primitive: { kind: 'cylinder', diameter: 0.028, height: 0.02 },
        place: [position[0], position[1], -0.01],
        amount: { mass: 0.038 },
      }),
    ),
    {
      name: 'pack',
      part: 'pack',
      primitive: { kind: 'box', length: 0.075, width: 0.037, height: 0.042 },
      place: [0, 0, -0.03],
      orientation: { yaw: pack.yaw ?? 0 },
      amount: { mass: pack.mass },
    },
    {
      name: 'plates and stack',
      part: 'frame',
      primitive: { kind: 'box', length: 0.15, width: 0.04, height: 0.03 },
      place: [0, 0, 0],
      amount: { mass: plates },
    },
  ];
}
