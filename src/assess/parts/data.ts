import type { MissionEnd } from '../../flight/mission/types.ts';
import type { Held } from '../../flight/reserve/types.ts';
import type { Corner } from '../../numerics/polygon.ts';
import type { HitsReport, KnocksReport, PictureReport, ShakeReport } from './airframeData.ts';

/** What parts compute beside measures, to be drawn or tabled. SI. */
export interface PartData {
  /** Level flight over airspeed, from 0 to the top speed, half charge. */
  readonly powerCurve?: readonly SpeedPoint[];
  /** Corners of roll (across) against pitch (up) that can be had at once in hover, yaw held [N m]. */
  readonly rollAndPitch?: readonly Corner[];
  /** After each motor in turn has stopped. */
  readonly motorOut?: readonly MotorOutReport[];
  /** With each motor in turn held to what it bears for good. */
  readonly motorHot?: readonly MotorHotReport[];
  /** Every motor in cruise and at top speed. */
  readonly motorsAtSpeed?: readonly MotorAtSpeed[];
  readonly mission?: MissionReport;
  /** One for each camera on board. */
  readonly pictures?: readonly PictureReport[];
  readonly shake?: ShakeReport;
  readonly hits?: HitsReport;
  readonly knocks?: KnocksReport;
}

export interface SpeedPoint {
  /** Through the air [m/s]. */
  readonly speed: number;
  /** Nose down [rad]. */
  readonly tilt: number;
  /** Drawn from the pack at its terminals [W]. */
  readonly power: number;
  /** [A] */
  readonly packCurrent: number;
  /** Of the motor that works hardest, 0 to 1. */
  readonly largestDuty: number;
}

export interface MotorOutReport {
  readonly motor: string;
  readonly held: Held;
  /** Smallest of the moments still held over the same of the whole craft, 0 to 1. */
  readonly share: number;
  /** Largest with those held. */
  readonly liftToWeight: number;
  /** Steady, about the vertical axis, with the least yaw moment left over [rad/s]; absent when it does not turn, falls, or is not known. */
  readonly turning?: number;
}

export interface MotorHotReport extends MotorOutReport {
  /** Net thrust that it bears for good, standing still [N], and that over its full throttle. */
  readonly bears: number;
  readonly bearsShare: number;
}

export interface MotorAtSpeed {
  readonly motor: string;
  readonly cruise: MotorState;
  readonly top: MotorState;
}

export interface MotorState {
  /** Net [N]. */
  readonly thrust: number;
  /** [A] */
  readonly motorCurrent: number;
  /** Settled [K]; absent when it never settles, or is burnt before. */
  readonly windingTemperature?: number;
  readonly caseTemperature?: number;
  /** Until a limit, from the air's temperature [s]; absent when never. */
  readonly timeToLimit?: number;
}

export interface MissionReport {
  readonly legs: readonly MissionLegReport[];
  /** What ended it. */
  readonly end: MissionEnd;
}

export interface MissionLegReport {
  readonly what: string;
  /** [s] */
  readonly duration: number;
  /** Over the ground [m]. */
  readonly distance: number;
  /** [A] */
  readonly meanCurrent: number;
  /** At the pack [V]. */
  readonly lowestVoltage: number;
  /** Least throttle that its bursts were eased to, 0 to 1; absent when none was. */
  readonly eased?: number;
  /** Of all motors [K]; absent when one is burnt. */
  readonly hottestWinding?: number;
  /** 0 to 1, at the end of the leg. */
  readonly chargeLeft: number;
}
