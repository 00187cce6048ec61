/**
 * Decimals to which a number with this band is worth showing; negative for tens and hundreds.
 * Undefined for a band without width, which bounds nothing.
 *
 * The last place shown is the power of ten at or below half of the half width, so rounding adds less than a
 * quarter to what is unknown (in the spirit of JCGM 100:2008, 7.2.6: uncertainties to two digits at most).
 */
export function decimalsForBand(band: readonly [low: number, high: number]): number | undefined {
  const half = Math.abs(band[1] - band[0]) / 2;
  if (!(half > 0) || !Number.isFinite(half)) return undefined;
  return Math.min(6, -Math.floor(Math.log10(half / 2)));
}

/** Significant digits that a value with this band deserves, 1 to 6; 6 for a band without width. */
export function digitsForBand(value: number, band: readonly [low: number, high: number]): number {
  const decimals = decimalsForBand(band);
  if (decimals === undefined) return 6;
  const leading = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return Math.max(1, Math.min(6, leading + decimals + 1));
}

/** To so many decimals (negative: tens, hundreds), or to three digits without needless zeros. */
export function roundedText(value: number, decimals: number | undefined): string {
  if (decimals === undefined) {
    const rounded = Number(value.toPrecision(3));
    const whole = Math.abs(value) >= 1000 ? Math.round(value) : rounded;
    return plain(whole, 6)
      .replace(/(\.\d*?)0+$/, '$1')
      .replace(/\.$/, '');
  }
  if (decimals >= 0) return plain(value, decimals);
  const step = 10 ** -decimals;
  return plain(Math.round(value / step) * step, 0);
}

/** Never `-0`, never an exponent. */
function plain(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}
