import type { Spin } from '../airframe/types.ts';
import type { CostLine } from '../knocks/types.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import type { FitLine } from './fit/types.ts';
import type { PartData } from './parts/data.ts';
import type { Finding, Measure } from './types.ts';

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
  /** The brief's rates that prices were changed at, and their day, in words; absent where none was. */
  readonly rates?: string;
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
