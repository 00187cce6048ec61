import type { Quantity } from '../types.ts';

/** What the simulation is asked to fly. */
export const SCENES = ['hover', 'gust', 'bank', 'dash', 'rough air'] as const;
export type Scene = (typeof SCENES)[number];

export interface FlyRequest {
  readonly scene: Scene;
  /** Mean wind [m/s], of `gust` and `rough air`. */
  readonly wind: number;
  /** [s], of `hover`, `dash` and `rough air`; each its own when absent. */
  readonly duration?: number;
  /** Of the rough air: the same gives the same, 0 to 2^32 - 1. */
  readonly seed: number;
}

/** One number the closed forms tell too, at the most likely value of every input. */
export interface FlownFigure {
  /** Stable, kebab-case. */
  readonly id: string;
  readonly label: string;
  readonly quantity: Quantity;
  /** Absent where no closed form tells it. */
  readonly closedForm?: number;
  readonly simulated: number;
  /** 10th and 90th percentile of `simulated`, where it was flown for it (`flyWithBands`). */
  readonly band?: readonly [number, number];
  /** Why the two may differ, or how the number is got. */
  readonly how: string;
}

/** Histories at even steps, one entry a sample; the first at the scene's start. */
export interface FlightTrace {
  /** [s]; what happens (the gust, the command) happens at 0. */
  readonly time: readonly number[];
  /** Way north, east, down from the start [m]; the wind blows from the north, the nose points into it. */
  readonly place: readonly [readonly number[], readonly number[], readonly number[]];
  /** Over the ground [m/s]. */
  readonly speed: readonly number[];
  /** [rad] */
  readonly roll: readonly number[];
  readonly pitch: readonly number[];
  readonly yaw: readonly number[];
  /** One a motor, in the order of the stations, 0 to 1. */
  readonly throttle: readonly (readonly number[])[];
  /** [V] */
  readonly packVoltage: readonly number[];
  /** [A] */
  readonly packCurrent: readonly number[];
}

export interface Flown {
  readonly scene: Scene;
  /** One sentence: what was flown. */
  readonly says: string;
  readonly figures: readonly FlownFigure[];
  /** Names of the stations, as `throttle` has them. */
  readonly motors: readonly string[];
  readonly trace: FlightTrace;
}
