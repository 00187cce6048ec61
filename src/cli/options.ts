import type { Dimension } from '../units/dimensions.ts';
import { parseQuantity } from '../units/parseQuantity.ts';
import { BadInput } from './io.ts';

/** Reads one option's quantity into SI, or says what is wrong with it. */
export function quantityOption(option: string, text: string, dimension: Dimension): number {
  const outcome = parseQuantity(text, dimension);
  if (!outcome.ok) {
    throw new BadInput(`${option}: ${outcome.reason}. Allowed: ${outcome.allowed}. ${outcome.remedy}`);
  }
  return outcome.value;
}

/** As `quantityOption`, with a range in SI told in the option's own words. */
export function quantityWithin(
  option: string,
  text: string,
  dimension: Dimension,
  range: { readonly low: number; readonly high: number; readonly words: string },
): number {
  const value = quantityOption(option, text, dimension);
  if (value < range.low || value > range.high) {
    throw new BadInput(`${option}: "${text}" is out of range. Allowed: ${range.words}.`);
  }
  return value;
}

/** Heights that the standard atmosphere knows, as a range of `quantityWithin`. */
export const HEIGHTS = { low: -2000, high: 20_000, words: '-2000 m to 20000 m' } as const;

/** A comma-separated list, each read by `read`. */
export function listOption<T>(option: string, text: string, read: (item: string) => T): readonly T[] {
  const items = text
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '');
  if (items.length === 0) throw new BadInput(`${option}: the list is empty. Give at least one value.`);
  if (items.length > 1000) throw new BadInput(`${option}: ${items.length} values; at most 1000 at a time.`);
  return items.map(read);
}

/** A bare number, for options whose quantity has no unit or one fixed by the option's name. */
export function numberOption(option: string, text: string, low: number, high: number): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value) || value < low || value > high) {
    throw new BadInput(`${option}: found "${text}". Allowed: a number from ${low} to ${high}.`);
  }
  return value;
}

/** A whole number within limits. */
export function wholeOption(option: string, text: string, low: number, high: number): number {
  const value = numberOption(option, text, low, high);
  if (!Number.isInteger(value)) {
    throw new BadInput(`${option}: found "${text}". Allowed: a whole number from ${low} to ${high}.`);
  }
  return value;
}
