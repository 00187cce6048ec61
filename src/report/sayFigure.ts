import { openBriefly } from '../assess/openEnd.ts';
import type { Measure, Quantity } from '../assess/types.ts';
import { formatBand, formatQuantity, QUANTITY_SPACE } from '../units/formatQuantity.ts';
import { restate } from '../units/restate.ts';
import type { UnitSystem } from '../units/shownUnits.ts';

/** A number as a person reads it, and its trade unit apart so that it can be set smaller. */
export interface Figure {
  readonly text: string;
  readonly unit: string;
}

export interface Manner {
  /** For money: the three letters of the brief's currency. */
  readonly currency: string;
  /** Metric where absent. */
  readonly system?: UnitSystem;
  /** Before decimals; a point where absent. */
  readonly mark?: ',' | '.';
}

/** Narrower than this share of the value a band says nothing a reader could use. */
const NARROW = 1e-3;

const isExact = ({ value, band: [low, high] }: Measure): boolean => high - low <= NARROW * Math.abs(value);

/** A measure's value, no finer than its band allows; its words where it has some. */
export const sayFigure = (measure: Measure, manner: Manner): Figure => {
  const { value, quantity, band, words } = measure;
  if (words !== undefined) return { text: restate(words, { system: manner.system ?? 'metric' }), unit: '' };
  const options = isExact(measure) ? manner : { ...manner, band };
  return parted(formatQuantity(value, quantity, options));
};

/** The band beside a measure, in its unit: `671 to 702`; empty when the number is exact or told in words. */
export function sayBand(measure: Measure, manner: Manner): string {
  if (isExact(measure) || measure.words !== undefined) return '';
  const { value, quantity, band } = measure;
  const open = openBriefly(measure);
  const { text } = parted(formatBand(value, band, quantity, manner));
  return open === undefined ? text : `${text} or ${open}`;
}

/** Where the trade expects it, in the measure's unit; empty when it has no window. */
export function sayWindow({ value, quantity, window }: Measure, manner: Manner): string {
  if (window === undefined) return '';
  return parted(formatBand(value, [window.low, window.high], quantity, manner)).text;
}

/** Figure and unit in one string, for running text and labels. */
export const sayInWords = (value: number, quantity: Quantity, manner: Manner): string =>
  formatQuantity(value, quantity, manner);

/** Number and unit stand on both sides of the quantity's space. */
function parted(text: string): Figure {
  const [figure = '', unit = ''] = text.split(QUANTITY_SPACE);
  return { text: figure, unit };
}
