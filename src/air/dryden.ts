/** Gust components: along the mean wind, across it, and up and down. */
export type GustComponent = 'longitudinal' | 'lateral' | 'vertical';

export const gustComponents: readonly GustComponent[] = ['longitudinal', 'lateral', 'vertical'];

/** Turbulence frozen in the air that drifts past, as Dryden's spectra describe it. */
export interface Turbulence {
  /** Root mean square gust speed [m/s]. */
  readonly intensity: Readonly<Record<GustComponent, number>>;
  /** Scale length [m]. */
  readonly scale: Readonly<Record<GustComponent, number>>;
}

const FOOT = 0.3048; // [m]

/** Heights between which the low-altitude model is given: 10 and 1000 ft [m]. */
export const drydenHeights: readonly [low: number, high: number] = [10 * FOOT, 1000 * FOOT];

/** The height at which the model wants the wind: 20 ft [m]. */
export const drydenWindHeight = 20 * FOOT;

/**
 * Low-altitude turbulence of MIL-F-8785C (1980), 3.7.3.4 (figures 10 and 11), with h in feet:
 * sigma_w = 0.1 W20; sigma_u = sigma_v = sigma_w / (0.177 + 0.000823 h)^0.4;
 * L_w = h; L_u = L_v = h / (0.177 + 0.000823 h)^1.2. (MIL-HDBK-1797 halves L_w and L_v.)
 *
 * Measured over airfields; in the lee of obstacles it is rougher than this.
 *
 * @param height above ground [m], 10 to 1000 ft (3.05 to 304.8 m)
 * @param windAt20Feet mean wind at 20 ft (6.1 m) [m/s], >= 0
 * @throws RangeError outside those ranges
 */
export function drydenLowAltitude(height: number, windAt20Feet: number): Turbulence {
  const [low, high] = drydenHeights;
  if (!(height >= low && height <= high)) {
    throw new RangeError(`height must be between ${low} and ${high} m; found ${height} m`);
  }
  if (!(windAt20Feet >= 0 && Number.isFinite(windAt20Feet))) {
    throw new RangeError(`windAt20Feet must be 0 m/s or more; found ${windAt20Feet} m/s`);
  }
  const h = height / FOOT; // [ft]
  const anisotropy = 0.177 + 0.000823 * h;
  const vertical = 0.1 * windAt20Feet;
  const horizontal = vertical / anisotropy ** 0.4;
  const length = height / anisotropy ** 1.2;
  return {
    intensity: { longitudinal: horizontal, lateral: horizontal, vertical },
    scale: { longitudinal: length, lateral: length, vertical: height },
  };
}

/**
 * One-sided power spectrum of a gust component as met by a craft [(m/s)2 per (rad/s)]: its integral
 * over all angular frequencies from 0 is the intensity squared. MIL-F-8785C, 3.7.1.2, Dryden form,
 * with the spatial frequency Omega = omega / airspeed:
 * Phi_u = sigma2 (2L/pi) / (1 + (L Omega)2),
 * Phi_v, Phi_w = sigma2 (L/pi) (1 + 3 (L Omega)2) / (1 + (L Omega)2)2.
 *
 * @param angularFrequency [rad/s], >= 0
 * @param airspeed [m/s], > 0: the speed through the air, which for a craft holding its place is the
 *   mean wind
 */
export function drydenSpectrum(
  turbulence: Turbulence,
  component: GustComponent,
  angularFrequency: number,
  airspeed: number,
): number {
  const sigma = turbulence.intensity[component];
  const time = passingTime(turbulence, component, airspeed);
  const square = (time * angularFrequency) ** 2;
  const shape =
    component === 'longitudinal' ? 2 / (1 + square) : (1 + 3 * square) / ((1 + square) * (1 + square));
  return ((sigma * sigma * time) / Math.PI) * shape;
}

/**
 * Time in which one scale length drifts past [s].
 *
 * @throws RangeError when the airspeed is not positive
 */
export function passingTime(turbulence: Turbulence, component: GustComponent, airspeed: number): number {
  if (!(airspeed > 0)) throw new RangeError(`airspeed must be over 0 m/s; found ${airspeed} m/s`);
  return turbulence.scale[component] / airspeed;
}
