import type { Finding, Measure } from '../../assess/types.ts';
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
      readonly measures: readonly Measure[];
      readonly findings: readonly Finding[];
    }
  | { readonly ok: false; readonly reasons: readonly string[] };
