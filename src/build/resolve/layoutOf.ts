import { layoutMotors } from '../../airframe/layout.ts';
import type { Layout, LayoutParameters } from '../../airframe/types.ts';
import type { PartOf } from '../schema/part.ts';

/** Where the motors sit, from a file's layout; propellers under the arms when the build says so. */
export function layoutOf(told: PartOf<'frame'>['layout'], propellers: 'above' | 'below'): Layout {
  const layout = layoutMotors(parameters(told));
  if (propellers === 'above') return layout;
  const motors = layout.motors.map((motor) =>
    motor.coaxialWith === undefined ? { ...motor, propSide: propellers } : motor,
  );
  return { ...layout, motors };
}

function parameters(told: PartOf<'frame'>['layout']): LayoutParameters {
  if (told.kind === 'positions') {
    const motors = told.motors.map(({ name, x, y, spin }) => ({
      name,
      position: [x, y] as const,
      spin: spin === 'clockwise' ? (1 as const) : (-1 as const),
    }));
    return { kind: told.kind, motors };
  }
  if (told.kind === 'tri' || told.kind === 'Y6 coaxial') return told;
  // An optional field that is absent must stay absent, not become undefined.
  const { frontSpin, ...distances } = told;
  return frontSpin === undefined ? distances : { ...distances, frontSpin };
}
