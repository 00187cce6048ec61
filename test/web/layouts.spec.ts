import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutMotors } from '../../src/airframe/layout.ts';
import type { AircraftPicture } from '../../src/report/aircraftPicture.ts';
import { LAYOUT_KINDS, layoutOfKind, spacingOf } from '../../src/web/schedule/layouts.ts';
import { samplePicture } from '../report/samplePicture.ts';

const pictureOf = (places: readonly (readonly [number, number, number])[]): AircraftPicture => ({
  ...samplePicture,
  rotors: places.map(([x, y, z]) => ({ ...samplePicture.rotors[0]!, at: { x, y, z } })),
});

describe('layoutOfKind', () => {
  it('keeps the nearest motors as far apart as asked, whatever the layout', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LAYOUT_KINDS),
        fc.double({ min: 0.06, max: 0.4, noNaN: true }),
        (kind, apart) => {
          // The file's layouts and the physics' differ only in how a list of positions is written.
          const layout = layoutMotors(layoutOfKind(kind, apart) as Parameters<typeof layoutMotors>[0]);
          const picture = pictureOf(layout.motors.map((motor) => motor.position));
          expect(spacingOf(picture)).toBeCloseTo(apart, 9);
        },
      ),
    );
  });
});
