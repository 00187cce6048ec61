import type { Trust } from '../units/trusted.ts';

/** The sheets of an assessment, in the order of reading. */
export const SHEETS = [
  'airframe',
  'lift',
  'heat',
  'flight',
  'wind',
  'picture',
  'shake',
  'knocks',
  'money',
  'fit',
] as const;

/** The sheet a measure or finding is drawn on; one subject each. */
export type Sheet = (typeof SHEETS)[number];

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
  /** Said in place of the number where it says nothing by itself: `at once` for 0 s, `burnt` beyond what a model holds for. */
  readonly words?: string;
  /** 10th and 90th percentile, same unit as value. Equal to value when it is exact. */
  readonly band: readonly [low: number, high: number];
  /** In words, what lies beyond an end of the band that is open: `burnt`, `never settles in 2 of 13 states of doubt`. */
  readonly open?: string;
  /** The same as data: states of doubt, each of one input a standard deviation off, in which it has no value. */
  readonly lost?: { readonly states: readonly string[]; readonly of: number };
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
