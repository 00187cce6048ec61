/** How often a pilot crashes, and how fast that gets better. */
export interface Learning {
  /** Crashes a flight expected of someone who never flew this kind, >= 0. */
  readonly first: number;
  /** What it falls to with long experience, 0 to `first`. */
  readonly settled: number;
  /** Flights after which the excess has fallen to 1/e, > 0. */
  readonly flightsToLearn: number;
  /** Flights already flown before flight 1 of the forecast, >= 0. */
  readonly flightsBefore: number;
  /**
   * Shape of the gamma factor (mean 1) by which pilots differ; its variance is 1/shape.
   * Absent: every pilot is the average one.
   */
  readonly pilotShape?: number;
}

/** A way of hitting something. Its speed is log-normal, cut off at the top speed. */
export interface HitKind {
  /** For instance `flat on grass`, `end-on against wood`, `prop strike`. */
  readonly id: string;
  /** Weight among the kinds, > 0; weights are normalised. */
  readonly weight: number;
  /** [m/s] */
  readonly medianSpeed: number;
  /** Standard deviation of ln(speed), >= 0. */
  readonly logDeviation: number;
}

/** The speed at which half of these parts break in this kind of hit. */
export interface BreakingSpeed {
  /** `id` of the hit kind. */
  readonly hit: string;
  /** [m/s] */
  readonly median: number;
  /** Standard deviation of ln(breaking speed), >= 0, from the strength scatter. */
  readonly logDeviation: number;
  /** How many of this part such a hit reaches, whole number >= 1. */
  readonly reached: number;
}

/** A part that can break, and what having it broken costs. */
export interface BreakablePart {
  readonly id: string;
  /** Price of one [money of the brief]. */
  readonly price: number;
  /** Spares on the shelf at the start and after every order. */
  readonly spares: number;
  /** Bench time to change one [s]. */
  readonly benchTime: number;
  /** Hits that can break it; a hit kind not listed leaves it whole. */
  readonly breaks: readonly BreakingSpeed[];
}

/** Everything the forecast needs. */
export interface KnockPlan {
  /** Flights flown, whole number >= 1. */
  readonly flights: number;
  /** Flights a day the pilot would fly, > 0; turns waiting into flights lost. */
  readonly flightsPerDay: number;
  readonly learning: Learning;
  readonly hits: readonly HitKind[];
  /** No hit is faster than this [m/s]. */
  readonly topSpeed: number;
  readonly parts: readonly BreakablePart[];
  /** An order placed when a needed part is not on the shelf; it refills all spares. */
  readonly order: { readonly days: number; readonly shipping: number };
  /** A crash after which the aircraft is not found, and what replacing it costs. */
  readonly loss?: { readonly share: number; readonly price: number; readonly days: number };
}

/** Mean, 10th, 50th and 90th percentile over the histories. */
export interface Spread {
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export interface KnockForecast {
  readonly histories: number;
  readonly flights: number;
  readonly crashes: Spread;
  /** Parts and shipping [money]. */
  readonly money: Spread;
  readonly orders: Spread;
  readonly daysWaiting: Spread;
  readonly flightsLost: Spread;
  /** [s] */
  readonly benchTime: Spread;
  readonly parts: readonly { readonly id: string; readonly broken: Spread; readonly money: number }[];
  /** Share of histories that lose the aircraft at least once. */
  readonly lossChance: number;
  /** Money spent by the end of each flight, index 0 after flight 1. */
  readonly curve: {
    readonly mean: Float64Array;
    readonly p10: Float64Array;
    readonly p90: Float64Array;
  };
  /** One value a history, for questions the summary does not answer. */
  readonly each: {
    readonly crashes: Uint16Array;
    readonly money: Float64Array;
    readonly daysWaiting: Float64Array;
    /** Row by history, column by part. */
    readonly broken: Uint16Array;
  };
}

/** What really happened, as a pilot writes it down. */
export interface CrashLog {
  /** Flights flown. */
  readonly flights: number;
  /** Number of each flight that ended in a crash, 1 to `flights`, rising. */
  readonly crashedOn: readonly number[];
  /** Spent on repairs and shipping, where noted [money of the brief]. */
  readonly money?: number;
  /** Parts broken by part id, where noted. */
  readonly broken?: Readonly<Record<string, number>>;
}

export type CostGroup = 'aircraft' | 'missing from the box' | 'kit' | 'spares' | 'shipping';

/** A line of the buying list. */
export interface CostLine {
  readonly id: string;
  readonly what: string;
  readonly group: CostGroup;
  /** Pieces to buy, 1 or more. */
  readonly count: number;
  /** [money of the brief] */
  readonly unitPrice: number;
  /** Why it is needed, in a few words. */
  readonly why: string;
}
