import type { MassItem } from '../../airframe/types.ts';
import type { CraftMotor } from '../craft.ts';
import { sizeOf } from '../infer/sizes.ts';
import type { Part } from '../schema/part.ts';

/** Guards that are bought apart from the frame. */
export const isGuard = (part: Part): boolean =>
  part.kind === 'guardSet' || (part.kind === 'mount' && part.holds === 'arm guard');

/** Play of a guard round its propeller, and its wall [m] (common practice, no source). */
const GUARD = { play: 0.002, wall: 0.0015 };

/** Guards from a bag stand on the arms' ends: hoops round the discs, or shoes under the motors. */
export function guardItems(
  part: Part,
  path: string,
  mass: number,
  motors: readonly CraftMotor[],
): readonly MassItem[] {
  const { size } = sizeOf(part);
  return motors.map(({ place, discPlace, fit }): MassItem => {
    const [x, y] = place.position;
    const hoop = part.kind === 'guardSet';
    const inner = hoop ? part.forPropeller + 2 * GUARD.play : 0.8 * fit.bellDiameter;
    return {
      name: `${place.name} guard`,
      part: path,
      primitive: {
        kind: 'tube',
        innerDiameter: inner,
        outerDiameter: inner + 2 * GUARD.wall,
        height: size.height,
      },
      place: [x, y, hoop ? discPlace[2] : 0],
      amount: { mass: mass / motors.length },
    };
  });
}
