import type { Craft } from '../../../build/craft.ts';
import type { ChangeKind } from '../../../view/clearing.ts';

/** Slots in the cheeks let a flying camera slide this far [m] (common practice, no source). */
const SLOT = 0.004;
/** A printed mount taller than this under a recording camera wags in every turn [m] (common practice, no source). */
const TALLEST_MOUNT = 0.03;

/** How far a camera can be moved on what holds it, and what that is. */
export interface CameraReach {
  /** [m], 0 when it stands at the end of its reach or beyond. */
  readonly forward: number;
  /** [m] */
  readonly up: number;
  /** For a sentence: `the cheeks carry it`. */
  readonly held: string;
}

/**
 * The reach of one camera on this frame: a flying camera slides in its cheeks and stays between the plates; one on a
 * printed mount stands over the plates with its back, on a mount of a sensible height.
 */
export function cameraReach(craft: Craft, index: number): CameraReach {
  const placed = craft.cameras[index];
  if (placed === undefined)
    throw new RangeError(`camera: must be below ${craft.cameras.length}, got ${index}`);
  const [x, , z] = placed.place;
  const { length, height } = placed.size;
  const { frame } = craft;
  const [cos, sin] = [Math.cos(placed.camera.pitch), Math.abs(Math.sin(placed.camera.pitch))];
  const cheeks = frame.camera;
  if (placed.role === 'flying' && cheeks !== undefined && craft.parts.cameras[index]?.needsMount !== true) {
    const room = Math.max(0, (frame.stack.headroom - height) / 2);
    return {
      forward: Math.max(0, cheeks.place[0] + SLOT - x),
      up: Math.max(0, z - (cheeks.place[2] - room)),
      held: 'the cheeks carry it',
    };
  }
  const nose = Math.max(...frame.plates.flatMap(({ outline }) => outline.map(([forward]) => forward)));
  const top = Math.min(...frame.plates.map((plate) => plate.z - plate.thickness / 2));
  const back = x - (length * cos + height * sin) / 2;
  const foot = z + (length * sin + height * cos) / 2;
  return {
    forward: Math.max(0, nose - back),
    up: Math.max(0, TALLEST_MOUNT - (top - foot)),
    held: 'a printed mount carries it',
  };
}

/**
 * Why what holds the camera does not allow a change of this size; undefined when it does.
 *
 * @param amount of the change [m] or [rad]
 */
export function barredBy(
  craft: Craft,
  index: number,
  change: ChangeKind,
  amount: number,
): string | undefined {
  switch (change) {
    case 'forward':
    case 'up': {
      const reach = cameraReach(craft, index);
      const most = reach[change];
      if (amount <= most + 1e-9) return undefined;
      const way = change === 'forward' ? 'further forward' : 'higher';
      const by = most < 0.0005 ? `no ${way}` : `${(1000 * most).toFixed(0)} mm ${way} at most`;
      return `${reach.held} ${by}; it would take ${Math.ceil(1000 * amount - 0.05)} mm`;
    }
    case 'tilt up':
      return tiltBarred(craft, index, amount);
    case 'tilt down':
      return tiltBarred(craft, index, -amount);
    case 'smaller propellers':
      return undefined;
  }
}

/** Why the frame's cheeks do not let the flying camera tilt by so much [rad]; undefined when they do. */
function tiltBarred(craft: Craft, index: number, by: number): string | undefined {
  const placed = craft.cameras[index];
  const range = craft.frame.camera?.tiltRange;
  if (by === 0 || placed?.role !== 'flying' || range === undefined) return undefined;
  const tilt = placed.camera.pitch + by;
  const slack = 1e-9;
  if (tilt >= range[0] - slack && tilt <= range[1] + slack) return undefined;
  const [low, high] = range.map((angle) => Math.round((angle * 180) / Math.PI));
  return `the frame holds its camera between ${low} and ${high} degrees`;
}
