import type { TipGap } from '../../airframe/types.ts';
import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { Finding, Quantity, Severity } from '../types.ts';

/** All that a rule may look at. Figures that need a flyable craft are absent when it cannot hover. */
export interface FitContext {
  readonly craft: Craft;
  readonly brief: Brief;
  readonly shelf: Shelf;
  readonly gaps: readonly TipGap[];
  readonly figures: FitFigures;
}

/** Figures of the flight that some rules hold against a rating; a rule without its figure stays silent. */
export interface FitFigures {
  /** At full throttle on a full pack: largest of any motor's current [A]. */
  readonly peakMotorCurrent?: number;
  /** At full throttle on a full pack [A]. */
  readonly peakPackCurrent?: number;
  /** Loaded, per cell, at full throttle on a pack down to the landing reserve [V]. */
  readonly fullThrottleCellVoltage?: number;
  /** Hottest motor's case in a settled hover [K]. */
  readonly hoverCaseTemperature?: number;
  /** In level flight [m/s]. */
  readonly topSpeed?: number;
}

/** What a rule found at one place, whether it passes or not: the fit sheet shows both. */
export interface FitLine {
  readonly id: string;
  /** What was looked at, in a few words: `motor screws into the winding`. */
  readonly title: string;
  readonly passes: boolean;
  /** Only when it does not pass. */
  readonly severity: Severity;
  readonly says: string;
  readonly number?: { readonly value: number; readonly limit: number; readonly quantity: Quantity };
  readonly remedy: string;
  readonly source: string;
  readonly place?: { readonly x: number; readonly y: number };
  readonly parts: readonly string[];
}

/**
 * A rule of the trade. Small and pure: it looks at one thing and says what it found, passing or not.
 * No lines means that it does not apply, or that the files tell too little to judge; a comment at the
 * rule says which.
 */
export interface FitRule {
  readonly id: string;
  readonly title: string;
  /** The limit in words, as the method page lists it. */
  readonly limit: string;
  /** Every severity it can give, worst first. */
  readonly severities: readonly Severity[];
  /** Where its limit comes from; `common practice, no source` when absent. A verdict may name its own. */
  readonly source?: string;
  readonly look: (context: FitContext) => readonly FitVerdict[];
}

export type FitVerdict = Omit<FitLine, 'id' | 'title' | 'source'> & { readonly source?: string };

export const TRADE = 'common practice, no source';

export const toFinding = (line: FitLine): Finding => ({
  id: line.id,
  sheet: 'fit',
  severity: line.severity,
  says: line.says,
  ...(line.number === undefined ? {} : { number: line.number }),
  remedy: line.remedy,
  source: line.source,
  ...(line.place === undefined ? {} : { place: line.place }),
  parts: line.parts,
});
