import type { Camera } from '../../view/types.ts';
import type { CraftCamera } from '../craft.ts';
import type { Build } from '../schema/build.ts';
import type { PartOf } from '../schema/part.ts';
import type { Placed } from './placing.ts';

/** Pictures are reckoned at this height [pixels]; only their ratio of sides matters for cover. */
const PICTURE_HEIGHT = 720;
/** Shutter on a bright day (common practice, no source) [s]. */
const EXPOSURE = 1 / 500;

const ASPECTS: Readonly<Record<PartOf<'camera'>['aspect'], number>> = {
  '4:3': 4 / 3,
  '16:9': 16 / 9,
  '1:1': 1,
  '8:7': 8 / 7,
  '3:2': 3 / 2,
};

/** A camera as the view room sees it: its pupil at the front of its body, tilted up as the build says. */
export function cameraOf(
  part: PartOf<'camera'>,
  seat: Build['cameras'][number],
  placed: Placed,
): CraftCamera {
  const aspect = ASPECTS[part.aspect];
  const reach = placed.size.length / 2;
  const [x, y, z] = placed.place;
  const { law, fieldOfView, across } = part.lens;
  const camera: Camera = {
    position: [x + reach * Math.cos(seat.tilt), y, z - reach * Math.sin(seat.tilt)],
    pitch: seat.tilt,
    roll: 0,
    yaw: 0,
    lensLaw: law,
    field:
      across === 'vertical'
        ? { across: 'width', angle: widthFromHeight(law, fieldOfView, aspect) }
        : { across: across === 'diagonal' ? 'diagonal' : 'width', angle: fieldOfView },
    width: Math.round(PICTURE_HEIGHT * aspect),
    height: PICTURE_HEIGHT,
    exposure: EXPOSURE,
  };
  return { partId: part.id, role: seat.role, camera, place: placed.place, size: placed.size };
}

/** Angle across the width from the angle across the height: radii on the sensor are as the sides. */
function widthFromHeight(law: Camera['lensLaw'], height: number, aspect: number): number {
  switch (law) {
    case 'rectilinear':
      return 2 * Math.atan(aspect * Math.tan(height / 2));
    case 'equidistant':
      return Math.min(2 * Math.PI, aspect * height);
    case 'equisolid':
      return 4 * Math.asin(Math.min(1, aspect * Math.sin(height / 4)));
  }
}
