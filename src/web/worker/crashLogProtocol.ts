import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { CrashNotes } from '../../build/schema/crashLogFile.ts';
import type { CrashesByThen } from '../../knocks/crashCount.ts';
import type { LogAgainstForecast } from '../../knocks/crashLog.ts';
import type { Spread } from '../../knocks/types.ts';

export interface CrashLogAsk {
  readonly build: Build;
  readonly brief: Brief;
  readonly notes: CrashNotes;
}

/** A pilot's own log beside a forecast of as many flights; or why they can not be held together. */
export type CrashLogView =
  | {
      readonly ok: true;
      readonly against: LogAgainstForecast;
      readonly histories: number;
      /** Forecast by the end of each flight. */
      readonly crashes: readonly CrashesByThen[];
      readonly money: {
        /** At the end, in the brief's currency. */
        readonly spread: Spread;
        readonly mean: readonly number[];
        readonly p10: readonly number[];
        readonly p90: readonly number[];
      };
      readonly parts: Readonly<Record<string, Spread>>;
      /** The log's money is in a currency the brief has no rate for. */
      readonly unpriced: boolean;
    }
  | { readonly ok: false; readonly reason: string };

export type CrashLogRead =
  | { readonly ok: true; readonly notes: CrashNotes }
  | { readonly ok: false; readonly reasons: readonly string[] };
