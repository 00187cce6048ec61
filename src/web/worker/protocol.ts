import type { Assessment } from '../../assess/assessment.ts';
import type { PartResult } from '../../assess/parts/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { CrashNotes } from '../../build/schema/crashLogFile.ts';
import type { PartKind } from '../../build/schema/partKinds.ts';
import type { DrawnBuilds } from '../../choose/drawBuilds.ts';
import type { SearchState } from '../../choose/shortlist/state.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import type { CraftSolids } from '../../report/solids/solidsOf.ts';
import type { CrashLogAsk, CrashLogRead, CrashLogView } from './crashLogProtocol.ts';
import type { FlyAsk, FlyView } from './flyProtocol.ts';
import type { DraftRead, Drive, OwnPart, PartDraft, PartField } from './ownPartProtocol.ts';
import type { PartsListAsk, PartsListView } from './partsListProtocol.ts';
import type { Patch } from './patch.ts';
import type { SearchAsk, SearchNews, SearchReport } from './searchProtocol.ts';
import type { TuneAsk, TuneView } from './tuneProtocol.ts';

/** What the page asks of its workers. Reading, checking and physics all happen over there. */
export interface Desk {
  /** Reads the shelf and the demo that ship with the page, and what was kept of the user's. */
  readonly open: (kept?: KeptFiles) => Promise<Opened>;
  /** Lays a file of the user's own parts over the shelf; nothing takes it away again. */
  readonly layShelf: (text: string | undefined) => Promise<ShelfLaid>;
  readonly assess: (build: Build, brief: Brief) => Promise<BuildView>;
  /** The same for a build on the desk, told as what has changed since the answer that the page has of it. */
  readonly follow: (ask: FollowAsk) => Promise<FollowAnswer>;
  /** One part of the full assessment, by its id. */
  readonly part: (build: Build, brief: Brief, part: string) => Promise<PartResult>;
  /** The full assessment, once its parts have been asked for. */
  readonly whole: (build: Build, brief: Brief) => Promise<Assessment | undefined>;
  /** The least that tells whether a change is one for the better. */
  readonly glance: (build: Build, brief: Brief) => Promise<Glance>;
  /** A build in the round; undefined when it can't be put together. */
  readonly solids: (build: Build) => Promise<CraftSolids | undefined>;
  /** Tells by its first line what a file is, and reads it as the command line would. */
  readonly read: (text: string, file: string) => Promise<FileRead>;
  /** Reads a list of parts, its columns told, remembered or guessed; keeps nothing. */
  readonly partsList: (ask: PartsListAsk) => Promise<PartsListView>;
  /** Sets continuous choices of a build under the wants. */
  readonly tune: (ask: TuneAsk) => Promise<TuneView>;
  /** Draws every unsure input of some builds; `tell` is given the share that is done. Undefined where one makes no aircraft. */
  readonly draw: (
    builds: readonly Build[],
    brief: Brief,
    tell: (share: number) => void,
  ) => Promise<DrawnBuilds | undefined>;
  /** Flies one scene; `tell` is given the share that is done. */
  readonly fly: (ask: FlyAsk, tell: (share: number) => void) => Promise<FlyView>;
  /** Holds a pilot's own log against the forecast of a build. */
  readonly judgeLog: (ask: CrashLogAsk) => Promise<CrashLogView>;
  readonly readLog: (text: string, file: string) => Promise<CrashLogRead>;
  /** Does pieces of a search for a foreman who holds the other end of the port. */
  readonly lend: (port: MessagePort) => Promise<void>;
  /** Searches the shelf with workers lent by their ports; see `searchForeman.ts`. */
  readonly search: (
    ask: SearchAsk,
    ports: readonly MessagePort[],
    kept: SearchState | undefined,
    tell: (news: SearchNews) => void,
  ) => Promise<SearchReport>;
  /** Ends the search after the tasks under way. */
  readonly stopSearch: () => Promise<void>;
  /** Reads files that were kept, of a snapshot or a link. */
  readonly readKept: (files: KeptFiles) => Promise<KeptRead>;
  /** The fields of a kind of part, to fill in. */
  readonly partFields: (kind: PartKind) => Promise<readonly PartField[]>;
  /** Checks what was filled in, and tells what is inferred from it. */
  readonly draftPart: (draft: PartDraft, ownShelf: string | undefined) => Promise<DraftRead>;
  /** What the values of a part drive in a build that has it: each 5 % more. */
  readonly drives: (
    raw: Readonly<Record<string, unknown>>,
    build: Build,
    brief: Brief,
    ownShelf: string | undefined,
  ) => Promise<readonly Drive[]>;
  readonly ownParts: (ownShelf: string) => Promise<readonly OwnPart[]>;
  /** The text of the user's shelf with a part laid onto it, or without the one of an id. */
  readonly withPart: (
    ownShelf: string | undefined,
    raw: Readonly<Record<string, unknown>>,
  ) => Promise<string>;
  readonly withoutPart: (ownShelf: string, id: string) => Promise<string | undefined>;
}

export interface FollowAsk {
  /** Of the build on the desk. */
  readonly id: string;
  readonly build: Build;
  readonly brief: Brief;
  /** Number of the answer that the page has; absent when it has none. */
  readonly since?: number;
  /** It is being slid: what the full assessment tells of the airframe anyway may stand as it was for a moment. */
  readonly slid?: boolean;
}

/** The next answer, as a patch on the one it follows: on nothing where that is not the one asked for. */
export interface FollowAnswer {
  readonly number: number;
  readonly since?: number;
  /** Makes a `BuildView`. */
  readonly patch: Patch;
}

/** Files of the user's as texts, each in the form that the command line reads. */
export interface KeptFiles {
  readonly brief: string;
  readonly builds: readonly KeptBuild[];
  readonly shelf?: string;
}

export interface KeptBuild {
  readonly id: string;
  readonly text: string;
  /** As it came to the desk, to go back to. */
  readonly came: string;
  /** The pilot's own crash log of it. */
  readonly log?: string;
}

export interface OpenBuild {
  readonly id: string;
  readonly build: Build;
  readonly came: Build;
  readonly log?: CrashNotes;
}

export interface Opened {
  readonly brief: Brief;
  readonly builds: readonly OpenBuild[];
  readonly shelf: readonly ShelfRow[];
  /** Parts of the full assessment, in the order they are run. */
  readonly parts: readonly { readonly id: string; readonly label: string }[];
  /** The demo as it ships, to go back to. */
  readonly demo: { readonly brief: Brief; readonly builds: readonly OpenBuild[] };
  /** What was kept and could not be read any more, in words. */
  readonly faults: readonly string[];
}

/** `brief` and `builds` hold what could be read; `faults` the rest, in words. */
export interface KeptRead {
  readonly brief: Brief;
  readonly builds: readonly OpenBuild[];
  readonly faults: readonly string[];
}

export type ShelfLaid =
  | { readonly ok: true; readonly shelf: readonly ShelfRow[]; readonly own: number }
  | { readonly ok: false; readonly reasons: readonly string[] };

export type FileRead =
  | { readonly is: 'build'; readonly build: Build }
  | { readonly is: 'brief'; readonly brief: Brief }
  | { readonly is: 'shelf'; readonly text: string }
  | { readonly is: 'list' }
  | { readonly is: 'unreadable'; readonly reasons: readonly string[] };

/** A part as a picker lists it. */
export interface ShelfRow {
  readonly id: string;
  readonly kind: PartKind;
  readonly name: string;
  /** The few facts one chooses by, in trade units. */
  readonly says: string;
  /** [kg] */
  readonly mass: number;
  /** Of one piece, in `currency`. */
  readonly price: number;
  readonly currency: string;
  /** Of a camera: what it is for. */
  readonly roles?: readonly string[];
  /** From the user's own file. */
  readonly own: boolean;
}

export interface Glance {
  /** Why it can't be worked out; then nothing else is told. */
  readonly trouble?: string;
  readonly stops: number;
  readonly risks: number;
  readonly findings: readonly string[];
  readonly thrustToWeight?: number;
  /** [s] */
  readonly flownTime?: number;
}

/** Everything a sheet shows of one build; or why there is nothing to show. */
export type BuildView =
  | {
      readonly ok: true;
      readonly picture: AircraftPicture;
      readonly assessment: Assessment;
      /** Where its motors stand, as its file or its frame's tells it. */
      readonly layout: NonNullable<Build['frame']['layout']>;
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
  /** The same pack flown in every style, gentlest first. */
  readonly styles: readonly StyleMinutes[];
}

export interface StyleMinutes {
  readonly style: string;
  /** [s] */
  readonly duration: number;
  /** Whether the brief is flown so. */
  readonly asked: boolean;
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
