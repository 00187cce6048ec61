import type { Air } from '../../air/standardAtmosphere.ts';
import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { FlightModel, Style } from '../../flight/types.ts';
import type { SectionTables } from '../../rotor/sections.ts';
import type { Told } from '../figures.ts';
import type { RotorDoubt } from '../levers.ts';
import type { PreparedRotors } from '../prepareRotors.ts';
import type { Finding, Measure } from '../types.ts';
import type { PartData } from './data.ts';

/** One craft on its day, ready to be flown by any part. */
export interface Flight {
  readonly air: Air;
  readonly model: FlightModel;
  readonly rotors: PreparedRotors;
  readonly doubt: RotorDoubt;
  readonly style: Style;
  /** The hover story at the most likely value of every input. */
  readonly told: Told;
}

/** All that a part may look at. `flight` is absent for a craft that has no hover. */
export interface PartContext {
  readonly craft: Craft;
  readonly brief: Brief;
  readonly shelf: Shelf;
  readonly sections: SectionTables;
  readonly flight?: Flight;
}

export interface PartResult {
  readonly measures: readonly Measure[];
  readonly findings: readonly Finding[];
  /** For figures; each key is filled by one part at most. */
  readonly data?: PartData;
}

/**
 * One subject of the full assessment, computed after the quick tier and on its own, so that a face can
 * show each as it arrives.
 */
export interface AssessPart {
  /** Stable, kebab-case, e.g. `level-flight`. */
  readonly id: string;
  /** While it runs a person reads this: `level flight and top speed`. */
  readonly label: string;
  readonly run: (context: PartContext) => PartResult;
}

/** Of a part that has nothing to say, such as flight of a craft that has no hover. */
export const NOTHING: PartResult = { measures: [], findings: [] };
