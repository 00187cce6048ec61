/** A difference worth telling, with a band that only says how finely. */
export interface ToldDifference {
  readonly value: number;
  readonly band: readonly [low: number, high: number];
}

/**
 * A difference between two like figures as finely as it is known: to two digits, and to a tenth of what the figures
 * themselves are unsure by, since most of that doubt is in both. Undefined where less than a twentieth of it is left: no
 * difference that can be told (ours, no source).
 *
 * @param difference in any unit
 * @param halfWidth of the figures' bands in the same unit, >= 0; 0 where none is told
 */
export function toldDifference(difference: number, halfWidth = 0): ToldDifference | undefined {
  const size = Math.abs(difference);
  if (!(size > halfWidth / 20) || !Number.isFinite(size)) return undefined;
  const step = Math.max(decade(size) / 10, halfWidth > 0 ? decade(halfWidth / 10) : 0);
  return { value: difference, band: [difference - 2.5 * step, difference + 2.5 * step] };
}

/** The power of ten at or below. */
const decade = (value: number): number => 10 ** Math.floor(Math.log10(value));
