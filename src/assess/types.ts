import type { Spin } from '../airframe/types.ts';
import type { CostLine } from '../knocks/types.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import type { Trust } from '../units/trusted.ts';
import type { FitLine } from './fit/types.ts';
import type { PartData } from './parts/data.ts';

/** The sheet a measure or finding is drawn on; one subject each. */
export type Sheet =
  | 'airframe'
  | 'lift'
  | 'heat'
  | 'flight'
  | 'wind'
  | 'picture'
  | 'shake'
  | 'knocks'
  | 'money'
  | 'fit';

/** Which way is better; `window` measures are judged by a window for the purpose. */
export type Direction = 'more' | 'less' | 'window' | 'neither';

/** A number a person sees. All quantities in SI; faces convert by `quantity`. */
export interface Measure {
  /** Stable, kebab-case, e.g. `thrust-to-weight`. */
  readonly id: string;
  readonly label: string;
  readonly sheet: Sheet;
  /** What kind of quantity it is; faces choose the trade unit to show by this. */
  readonly quantity: Quantity;
  readonly value: number;
  /** 10th and 90th percentile, same unit as value. Equal to value when it is exact. */
  readonly band: readonly [low: number, high: number];
  readonly better: Direction;
  /** Where the trade expects it for this purpose, same unit; absent when it has no window. */
  readonly window?: { readonly low: number; readonly high: number; readonly source: string };
  /** One line in words with the governing relation. */
  readonly how: string;
  readonly source: string;
  /** The inputs it leans on most, by share of its variance, largest first. */
  readonly leansOn: readonly Leaning[];
}

export interface Leaning {
  /** The input in words, e.g. `propeller thrust coefficient`. */
  readonly input: string;
  readonly trust: Trust;
  /** Share of the measure's variance, 0 to 1. */
  readonly share: number;
}

export type Quantity =
  | 'mass' // kg
  | 'length' // m
  | 'force' // N
  | 'torque' // N m
  | 'time' // s
  | 'speed' // m/s
  | 'angle' // rad
  | 'angularSpeed' // rad/s
  | 'angularAcceleration' // rad/s2
  | 'acceleration' // m/s2, shown in g
  | 'pixels' // of a picture 720 high
  | 'current' // A
  | 'voltage' // V
  | 'power' // W
  | 'energy' // J
  | 'temperature' // K
  | 'frequency' // Hz
  | 'inertia' // kg m2
  | 'money' // units of the brief's currency
  | 'share' // 0 to 1, shown as per cent
  | 'ratio'
  | 'count';

export type Severity = 'stop' | 'risk' | 'note';

/** Something to act on. */
export interface Finding {
  /** Stable, kebab-case, e.g. `motor-screw-into-winding`. */
  readonly id: string;
  readonly sheet: Sheet;
  readonly severity: Severity;
  /** What is the matter, as a sentence with the number in it. */
  readonly says: string;
  /** The number and the limit it is held against; absent only where the matter is not a number. */
  readonly number?: { readonly value: number; readonly limit: number; readonly quantity: Quantity };
  /** What to do about it. */
  readonly remedy: string;
  readonly source: string;
  /** Where on the aircraft it speaks of, in build axes [m] (x forward, y right), for leader lines. */
  readonly place?: { readonly x: number; readonly y: number };
  /** Keys of the parts concerned, e.g. `frame`, `motors`, `pack`. */
  readonly parts: readonly string[];
}

/** One motor in the drawing: where it is and how it works in hover and at full throttle. */
export interface StationReport {
  /** `front left` */
  readonly name: string;
  /** [m] */
  readonly place: Vector3;
  readonly spin: Spin;
  /** Absent when it cannot hover. */
  readonly hover?: {
    /** Net of what the arm takes [N]. */
    readonly thrust: number;
    /** [rad/s] */
    readonly angularSpeed: number;
    /** [A] */
    readonly motorCurrent: number;
    /** 0 to 1 */
    readonly throttle: number;
    /** Settled [K]; absent when it would not settle. */
    readonly windingTemperature?: number;
    readonly caseTemperature?: number;
  };
  readonly fullThrottle?: {
    readonly thrust: number;
    readonly angularSpeed: number;
    readonly motorCurrent: number;
    /** Until winding or case is too hot [s]; absent when never. */
    readonly timeToLimit?: number;
  };
}

/** What is spent before the first flight, in the brief's currency. */
export interface MoneyReport {
  readonly currency: string;
  readonly lines: readonly (CostLine & { readonly owned: boolean })[];
  /** What has no price or no exchange rate, in words. */
  readonly unpriced: readonly string[];
}

/** Everything computed for a build under a brief. */
export interface Assessment {
  readonly build: string;
  readonly brief: string;
  /** False when it has no hover; `findings` say why. */
  readonly flies: boolean;
  readonly measures: readonly Measure[];
  /** Stops first, then risks, then notes. */
  readonly findings: readonly Finding[];
  /** Every fit rule's lines, passing ones too. */
  readonly fit: readonly FitLine[];
  readonly stations: readonly StationReport[];
  readonly money: MoneyReport;
  /** What was inferred from other values, in words. */
  readonly inferred: readonly string[];
  /** Curves and tables of the full tier; absent in the quick one. */
  readonly data?: PartData;
}
