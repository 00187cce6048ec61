import { lensStretch } from './lens.ts';
import type { Camera } from './types.ts';
import { viewFrame } from './viewFrame.ts';

/** A camera rocking as one sine about an axis square to its optical axis. */
export interface Shake {
  /** Peak angle, half of peak to peak [rad], >= 0. */
  readonly amplitude: number;
  /** [Hz], > 0 */
  readonly frequency: number;
}

/** How the sensor takes the picture, besides the camera's exposure. */
export interface Readout {
  /** Time from reading the first row to the last [s], >= 0; 0 for a global shutter. */
  readonly rowsTime: number;
  /** Pictures a second [Hz], > 0. */
  readonly pictureRate: number;
}

export interface ShakeInPicture {
  /** Smear of a point in the worst-timed exposure, at the picture's centre and at its corners [pixels]. */
  readonly blur: number;
  readonly blurAtCorner: number;
  /** How far rows of one picture stand apart sideways, peak to peak, at the centre: the jello [pixels]. */
  readonly wobble: number;
  /** Waves from top to bottom of the picture; well below one it looks like a lean, not jello. */
  readonly waves: number;
  /** How fast the waves seem to crawl from picture to picture [Hz], folded by the picture rate. */
  readonly crawl: number;
}

/**
 * What a shake does to a picture. A point's travel during an exposure t is at most
 * 2 A sin(min(pi f t, pi / 2)) about the steepest moment; each row shows the mean over its exposure,
 * A sinc(pi f t), and rows read within T differ by at most 2 A sinc(pi f t) sin(min(pi f T, pi / 2)).
 * Angles become pixels by the focal length, times the lens's stretch off the axis. Derived here from
 * the sine alone; no source needed.
 *
 * @throws RangeError for values out of range
 */
export function shakeInPicture(camera: Camera, shake: Shake, readout: Readout): ShakeInPicture {
  const { amplitude, frequency } = shake;
  if (!(amplitude >= 0 && frequency > 0)) {
    throw new RangeError(
      `amplitude >= 0 and frequency > 0 are needed; found ${amplitude} rad, ${frequency} Hz`,
    );
  }
  if (!(readout.rowsTime >= 0 && readout.pictureRate > 0)) {
    throw new RangeError(
      `rowsTime >= 0 and pictureRate > 0 are needed; found ${readout.rowsTime} s, ${readout.pictureRate} Hz`,
    );
  }
  const view = viewFrame(camera);
  const halfPhase = Math.PI * frequency * camera.exposure;
  const smear = 2 * amplitude * Math.sin(Math.min(halfPhase, Math.PI / 2));
  const softened = halfPhase > 0 ? Math.abs(Math.sin(halfPhase) / halfPhase) : 1;
  const rowsApart = Math.sin(Math.min(Math.PI * frequency * readout.rowsTime, Math.PI / 2));
  const folds = Math.round(frequency / readout.pictureRate);
  return {
    blur: view.focal * smear,
    blurAtCorner: view.focal * smear * lensStretch(view.law, view.cornerAngle),
    wobble: view.focal * 2 * amplitude * softened * rowsApart,
    waves: frequency * readout.rowsTime,
    crawl: Math.abs(frequency - folds * readout.pictureRate),
  };
}
