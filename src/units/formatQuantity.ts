import { type ShownQuantity, shownIn, type UnitSystem } from './shownUnits.ts';
import { decimalsForBand, roundedText } from './significance.ts';

/** How a face wants its numbers. */
export interface FormatOptions {
  /** Default `metric`. */
  readonly system?: UnitSystem;
  /** 10th and 90th percentile in SI; the number is shown no finer than it is known. */
  readonly band?: readonly [low: number, high: number];
  /** ISO 4217 code, for money. */
  readonly currency?: string;
  /** Before the decimals; a point where absent. Files and JSON always have points. */
  readonly mark?: ',' | '.';
}

/** No-break space: a number never parts from its unit, and `restate` knows a quantity in a sentence by it. */
export const QUANTITY_SPACE = '\u00a0';

/**
 * A value in SI as people of the trade read it, `5.1 in`, `33 g`, with a no-break space. With a band the
 * last place shown is about a fifth of the band's half width; without one three digits are shown.
 * Use `parseQuantity` for the way back.
 */
export function formatQuantity(value: number, quantity: ShownQuantity, options: FormatOptions = {}): string {
  if (!Number.isFinite(value)) return 'not known';
  const shown = shownIn(quantity, value, options);
  const number = roundedText(shown.convert(value), places(shown.convert, value, quantity, options));
  return withUnit(marked(number, options), shown.text);
}

/** The band of a value in the same unit and to the same place as the value itself: `4.8 to 5.4 in`. */
export function formatBand(
  value: number,
  band: readonly [low: number, high: number],
  quantity: ShownQuantity,
  options: Omit<FormatOptions, 'band'> = {},
): string {
  if (![value, ...band].every(Number.isFinite)) return 'not known';
  const shown = shownIn(quantity, value, options);
  const decimals = places(shown.convert, value, quantity, { ...options, band });
  const [low, high] = band.map((end) => marked(roundedText(shown.convert(end), decimals), options));
  return withUnit(`${low} to ${high}`, shown.text);
}

function places(
  convert: (value: number) => number,
  value: number,
  quantity: ShownQuantity,
  options: FormatOptions,
): number | undefined {
  if (options.band) return decimalsForBand([convert(options.band[0]), convert(options.band[1])]);
  if (quantity === 'money') return Math.abs(value) < 100 ? 2 : 0;
  return quantity === 'count' ? 0 : undefined;
}

const marked = (number: string, { mark = '.' }: FormatOptions): string => number.replace('.', mark);

/** A number that is already rounded, with its unit, as `formatQuantity` joins them. */
export const withUnit = (number: string | number, unit: string): string =>
  unit === '' ? `${number}` : `${number}${QUANTITY_SPACE}${unit}`;
