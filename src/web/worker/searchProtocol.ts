import type { Measure, Quantity } from '../../assess/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { SearchCounts } from '../../choose/shortlist/counts.ts';
import type { Flip, WantReason } from '../../choose/shortlist/reasons.ts';
import type { SearchProgress } from '../../choose/shortlist/searchAll.ts';
import type { SoftWant } from '../../choose/shortlist/softWants.ts';
import type { SearchSeat } from '../../choose/shortlist/space.ts';
import type { SearchState } from '../../choose/shortlist/state.ts';
import type { HardLimit } from '../../choose/shortlist/types.ts';
import type { TornadoBar } from '../../choose/tornado.ts';
import type { Want } from '../../choose/wants.ts';

/** What a search of the shelf is asked. Plain data: it is kept beside a checkpoint, and sent to workers. */
export interface SearchAsk {
  readonly template: Build;
  readonly brief: Brief;
  readonly seats: readonly SearchSeat[];
  readonly wants: readonly Want[];
  readonly limits: readonly HardLimit[];
  /** Whether the Pareto front of money, mass and minutes is searched too. */
  readonly front: boolean;
  /** Whether it is searched again with each limit a tenth wider. */
  readonly relax?: boolean;
}

/** How far it is, with what a later visit could go on from, now and then. */
export interface SearchNews {
  readonly progress: SearchProgress;
  /** The limit that is a tenth wider in what is searched now. */
  readonly wider?: string;
  readonly state?: SearchState;
}

/** One aircraft of the list. */
export interface ListedBuild {
  readonly build: Build;
  /** Names of its parts, frame first. */
  readonly parts: readonly string[];
  /** 0 to 1. */
  readonly standing: number;
  readonly risks: number;
  /** Its wanted measures with bands, in the order of the wants. */
  readonly measures: readonly Measure[];
  /** Share of the draws in which it comes first; absent beyond those that were drawn. */
  readonly first?: number;
  /** How many others are told from it by less than a hundredth of every scale. */
  readonly alike: number;
  /** Against the first; empty for the first itself. */
  readonly reasons: readonly WantReason[];
  readonly flips: readonly Flip[];
}

/** What a limit a tenth wider would bring. */
export interface WiderLimit {
  readonly limit: string;
  /** Names of the parts of the best then, frame first; absent when there is still none. */
  readonly best?: readonly string[];
  /** Of its standing over the first now, 0 to 1. */
  readonly gain: number;
  /** How many of the list would be new. */
  readonly entersList: number;
}

/** A place on the front [SI]. */
export interface FrontPoint {
  readonly cost: number;
  readonly mass: number;
  readonly time: number;
}

export interface SearchReport {
  readonly brief: string;
  readonly template: string;
  /** Combinations in the space. */
  readonly size: number;
  readonly counts: SearchCounts;
  /** False when it was stopped before its end. */
  readonly finished: boolean;
  readonly wants: readonly SoftWant[];
  readonly limits: readonly HardLimit[];
  readonly list: readonly ListedBuild[];
  readonly front: readonly FrontPoint[];
  /** Empty when that was not asked. */
  readonly wider: readonly WiderLimit[];
  /** How many draws `first` rests on, and one standard error of a share. */
  readonly draws: number;
  readonly error: number;
  /** What the first one's flown minutes lean on. */
  readonly leanings?: {
    readonly label: string;
    readonly quantity: Quantity;
    readonly nominal: number;
    readonly bars: readonly TornadoBar[];
  };
}
