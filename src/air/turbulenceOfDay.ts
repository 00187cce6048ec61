import { drydenHeights, drydenLowAltitude, drydenWindHeight, type Turbulence } from './dryden.ts';
import { type MeasuredWind, windAtHeight } from './windProfile.ts';

/** The wind and its gusts where a craft flies. */
export interface WindyAir {
  /** Mean wind at the craft [m/s]. */
  readonly wind: number;
  readonly turbulence: Turbulence;
  /** Height for which the turbulence is given [m]: the craft's, or the nearest that the model knows. */
  readonly turbulenceHeight: number;
}

/**
 * Mean wind and Dryden turbulence at a height from a wind measured elsewhere over the same ground. Below 10 ft and
 * above 1000 ft the turbulence is that of the nearest height the model is given for, and says so.
 *
 * @param height of the craft above ground [m], > 0
 */
export function turbulenceOfDay(measured: MeasuredWind, height: number): WindyAir {
  const [low, high] = drydenHeights;
  const turbulenceHeight = Math.min(high, Math.max(low, height));
  return {
    wind: windAtHeight(measured, height),
    turbulence: drydenLowAltitude(turbulenceHeight, windAtHeight(measured, drydenWindHeight)),
    turbulenceHeight,
  };
}
