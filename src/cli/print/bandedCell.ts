import type { BandedFigure } from '../../assess/bandedFigures.ts';
import type { Quantity } from '../../assess/types.ts';
import { isAtOnce } from '../../units/atOnce.ts';
import { formatBand, formatQuantity, QUANTITY_SPACE } from '../../units/formatQuantity.ts';
import { shownIn } from '../../units/shownUnits.ts';
import { decimalsForBand, roundedText } from '../../units/significance.ts';

/** The same in the unit of its column, which stands in the header: `2.18 (2.05 to 2.31)`; an open end has a star, for `OPEN_NOTE`. */
export function bandedNumber(
  figure: Pick<BandedFigure, 'value' | 'band' | 'open' | 'words'> | undefined,
  convert: (value: number) => number,
): string {
  if (figure === undefined) return '-';
  const { open, words } = figure;
  if (words !== undefined) return words;
  const [value, low, high] = [figure.value, ...figure.band].map(convert) as [number, number, number];
  if (high - low <= 1e-6 * Math.abs(value)) return roundedText(value, undefined);
  const decimals = decimalsForBand([low, high]);
  const text = (each: number) => roundedText(each, decimals);
  return `${text(value)} (${text(low)} to ${text(high)})${open === undefined ? '' : '*'}`;
}

/** The same by the kind of quantity, in the trade's unit for one of this size [SI]. */
export const bandedIn = (figure: Parameters<typeof bandedNumber>[0], quantity: Quantity, size = 1): string =>
  bandedNumber(figure, shownIn(quantity, size, {}).convert);

/** Below a table of `bandedNumber`s that has stars. */
export const OPEN_NOTE =
  '* One end lies open: in some states of doubt it cannot be flown, is burnt, never settles or is never too hot.';

/** A value with its band in one cell, `2.18 (2.05 to 2.31) N`, no digit finer than the band; a dash with no value. */
export function bandedCell(
  figure: Pick<BandedFigure, 'value' | 'band' | 'open' | 'words'> | undefined,
  quantity: Quantity,
): string {
  if (figure === undefined) return '-';
  const { value, band, open, words } = figure;
  if (words !== undefined) return words;
  // What rounding left of nothing is nothing.
  if (Math.max(Math.abs(band[0]), Math.abs(band[1])) < 1e-9) return formatQuantity(0, quantity);
  if (band[1] - band[0] <= 1e-6 * Math.abs(value)) return formatQuantity(value, quantity);
  const [number = '', unit] = formatQuantity(value, quantity, { band }).split(QUANTITY_SPACE);
  const [range = ''] = formatBand(value, band, quantity).split(QUANTITY_SPACE);
  return `${number} (${range}${open === undefined ? '' : ` or ${open}`})${unit === undefined ? '' : `${QUANTITY_SPACE}${unit}`}`;
}

/** A time until a motor is too hot: `never` with no value, `at once` where it is so from the start. */
export function limitCell(figure: Pick<BandedFigure, 'value' | 'band' | 'open'> | undefined): string {
  if (figure === undefined) return 'never';
  return isAtOnce(figure.value) ? 'at once' : bandedCell(figure, 'time');
}
