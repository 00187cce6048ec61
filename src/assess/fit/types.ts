import type { TipGap } from '../../airframe/types.ts';
import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Finding, Quantity, Severity } from '../types.ts';

/** All that a rule may look at. Figures that need a flyable craft are absent when it cannot hover. */
export interface FitContext {
  readonly craft: Craft;
  readonly brief: Brief;
  readonly gaps: readonly TipGap[];
  readonly figures: FitFigures;
}

export interface FitFigures {
  /** At full throttle on a full pack: largest of any motor's current [A]. */
  readonly peakMotorCurrent?: number;
  /** At full throttle on a full pack [A]. */
  readonly peakPackCurrent?: number;
  /** Loaded, per cell, at full throttle on a half-empty pack [V]. */
  readonly fullThrottleCellVoltage?: number;
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

/** A rule of the trade: what it looks at, and its lines. No lines means it does not apply. */
export interface FitRule {
  readonly id: string;
  readonly title: string;
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
