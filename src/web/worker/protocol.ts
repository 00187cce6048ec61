import type { Assessment } from '../../assess/assessment.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { PartKind } from '../../build/schema/part.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';

/** What the page asks of its worker. Reading, checking and physics all happen over there. */
export interface Desk {
  /** Reads the shelf and the demo that ship with the page. */
  readonly open: () => Promise<Opened>;
  readonly assess: (build: Build) => Promise<BuildView>;
}

export interface Opened {
  readonly brief: Brief;
  readonly builds: readonly { readonly id: string; readonly build: Build }[];
  readonly shelf: readonly ShelfRow[];
}

/** A part as a picker lists it. */
export interface ShelfRow {
  readonly id: string;
  readonly kind: PartKind;
  readonly name: string;
  /** The few facts one chooses by, in trade units. */
  readonly says: string;
}

/** Everything a sheet shows of one build; or why there is nothing to show. */
export type BuildView =
  | {
      readonly ok: true;
      readonly picture: AircraftPicture;
      readonly assessment: Assessment;
      /** Absent when it can't be flown at all. */
      readonly curves?: Curves;
    }
  | { readonly ok: false; readonly reasons: readonly string[] };

/** The operating points that the charts are drawn from, at the most likely value of every input. */
export interface Curves {
  /** All motors at one throttle out of a hover, the pack just under way. Rising. */
  readonly throttle: readonly ThrottlePoint[];
  /** From a full pack down to the landing reserve. */
  readonly discharge: readonly DischargePoint[];
  /** [A], of the controllers. */
  readonly continuousCurrent: number;
  readonly burstCurrent: number;
}

export interface ThrottlePoint {
  /** 0 to 1 */
  readonly throttle: number;
  readonly liftToWeight: number;
  /** Of the motor that draws most [A]. */
  readonly motorCurrent: number;
}

export interface DischargePoint {
  /** Share of the charge used, 0 to 1. */
  readonly used: number;
  /** Under load, one cell [V]; absent where that can't be flown any more. */
  readonly hover?: number;
  readonly fullThrottle?: number;
}
