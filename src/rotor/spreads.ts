import type { Blade, KnownBy } from './types.ts';

/** What is not known of a propeller, one standard deviation each. */
export interface Spreads {
  /** Effective pitch [rad]. */
  readonly pitch: number;
  /** ln of profile drag. */
  readonly drag: number;
  /** ln of chord. */
  readonly chord: number;
  /** ln of thrust, and of power, that none of these explains: the stand, the section, the propeller's twin. */
  readonly thrust: number;
  readonly power: number;
}

const DEGREE = Math.PI / 180;

/**
 * Calibrated on the UIUC Propeller Database (development half) so that the 10-90 band holds 80 % of
 * the measured points, propellers counting alike; checked on propellers left out
 * (`scripts/rotorAccuracy.ts`). `fitBlade` takes the first three as its prior.
 */
export const SPREADS: Record<KnownBy, Spreads> = {
  nameplate: { pitch: 1.6 * DEGREE, drag: 0.19, chord: 0.17, thrust: 0.04, power: 0.05 },
  'nameplate and chord': { pitch: 1.75 * DEGREE, drag: 0.26, chord: 0.05, thrust: 0.04, power: 0.05 },
  'blade table': { pitch: 1.5 * DEGREE, drag: 0.23, chord: 0.04, thrust: 0.07, power: 0.05 },
};

/** How near a thrust stand can be trusted, 1 sd, relative: the same propeller measured twice differs by 3 to 6 %. */
export const STAND_SPREAD = 0.02;

/**
 * What is open about ln of chord when a blade is matched: not only the width but all that the unknown
 * section does to lift, so a measured chord doesn't pin it. With whole families of the UIUC Propeller Database
 * (development half) left out, errors after one point fall from 7.2 to 5.8 % where the blade table is known.
 */
export const LIFT_SPREAD = 0.17;

/** Once anchored in still air: little is open there, more with every step of advance ratio. */
const ANCHORED_STILL: Spreads = { pitch: 0.2 * DEGREE, drag: 0.04, chord: 0.02, thrust: 0.026, power: 0.02 };
const ANCHORED_AHEAD: Spreads = { pitch: 1 * DEGREE, drag: 0.13, chord: 0.02, thrust: 0.02, power: 0.02 };
/** Advance ratio over which an anchor in still air loses its hold. */
const ANCHOR_REACH = 0.3;

/** What is open about a blade at an advance ratio. */
export function spreadsOf(blade: Pick<Blade, 'knownBy' | 'anchored'>, advanceRatio: number): Spreads {
  if (!blade.anchored) return SPREADS[blade.knownBy];
  const share = Math.min(1, Math.abs(advanceRatio) / ANCHOR_REACH);
  const mix = (key: keyof Spreads) =>
    ANCHORED_STILL[key] + (ANCHORED_AHEAD[key] - ANCHORED_STILL[key]) * share;
  return {
    pitch: mix('pitch'),
    drag: mix('drag'),
    chord: mix('chord'),
    thrust: mix('thrust'),
    power: mix('power'),
  };
}
