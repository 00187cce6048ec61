import type { MotorTemperatures } from '../../drive/motorHeat.ts';

/** One piece of a flight. Durations [s], speeds [m/s], distances and heights [m], all >= 0. */
export type Leg =
  | { readonly kind: 'hover'; readonly duration: number }
  /** Level over the ground, into a headwind (negative: with the wind). */
  | {
      readonly kind: 'cruise';
      readonly airspeed: number;
      readonly distance: number;
      readonly headwind?: number;
    }
  /** Straight up. */
  | { readonly kind: 'climb'; readonly speed: number; readonly height: number }
  /**
   * Thrust held at a multiple of the weight, static, as in turns and climbs; full throttle where the pack cannot. Above
   * the weight it is a burst, as full throttle is: eased where it would pull the pack below its cut-off.
   */
  | { readonly kind: 'pull'; readonly thrustToWeight: number; readonly duration: number }
  /** All motors at full throttle, as held static: an upper bound of what they draw. */
  | { readonly kind: 'full throttle'; readonly duration: number }
  /** On the ground, armed, at throttle 0. */
  | { readonly kind: 'idle'; readonly duration: number };

/** What an aircraft carries from one leg to the next: the state of its pack and how warm its motors are. */
export interface Condition {
  /** 1 full */
  readonly charge: number;
  /** Slow polarisation built up [V]. */
  readonly polarisation: number;
  /** Of the cells [K]. */
  readonly temperature: number;
  /** One a station. */
  readonly motors: readonly MotorTemperatures[];
}

export interface LegFlown {
  readonly leg: Leg;
  /** [s] */
  readonly duration: number;
  /** Over the ground [m]. */
  readonly distance: number;
  /** Mean [A] */
  readonly meanCurrent: number;
  /** Lowest in the leg, at the pack [V]; the cut-off where it ended the flight, without load where it could not be fed at all. */
  readonly lowestVoltage: number;
  /** Least throttle, 0 to 1, that a burst was eased to so that the pack kept its cut-off voltage; absent when none was. */
  readonly eased?: number;
  /** Hottest winding of all motors in the leg [K]. */
  readonly hottestWinding: number;
  readonly after: Condition;
}

/** `landed` when every leg was flown; otherwise what ended it in the air. */
export type MissionEnd = 'landed' | 'empty' | 'cut-off voltage' | 'thrust runs short';

export interface MissionFlown {
  readonly legs: readonly LegFlown[];
  /** [s] */
  readonly duration: number;
  readonly chargeLeft: number;
  readonly end: MissionEnd;
  /** True when it ended below the landing reserve. */
  readonly intoReserve: boolean;
}
