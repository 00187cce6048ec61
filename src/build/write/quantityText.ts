import { DIMENSIONS, type Dimension, type Unit } from '../../units/dimensions.ts';
import type { Given } from '../schema/fields.ts';

/** Twelve digits: finer than any measurement, and free of the last bits a conversion leaves. */
const DIGITS = 12;

const tidy = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** A value in SI as a file writes it, `129.54 mm`; `readBuild` reads the same value back. */
export function quantityText(value: number, dimension: Dimension, unitText?: string): string {
  const units: readonly Unit[] = DIMENSIONS[dimension].units;
  const unit = units.find(({ text }) => text === unitText) ?? units[0];
  if (unit === undefined) throw new RangeError(`dimension: ${dimension} has no units`);
  return `${tidy(value / unit.factor - (unit.offset ?? 0))} ${unit.text}`;
}

/** A value with its spread, trust and source where it has them, else its text alone. */
export function givenData(given: Given, dimension: Dimension, unitText?: string): unknown {
  const { value, deviation, trust, source } = given;
  const text = quantityText(value, dimension, unitText);
  if (deviation === undefined && trust === undefined && source === undefined) return text;
  return {
    value: text,
    ...(deviation === undefined ? {} : { spread: spreadText(deviation, value, dimension, unitText) }),
    ...(trust === undefined ? {} : { trust }),
    ...(source === undefined ? {} : { source }),
  };
}

/** A share, as most files tell it; in the value's own unit where it is nought or a share would pass 100 %. */
function spreadText(deviation: number, value: number, dimension: Dimension, unitText?: string): string {
  const asShare = deviation <= Math.abs(value) && value !== 0;
  return asShare
    ? quantityText(deviation / Math.abs(value), 'share')
    : quantityText(deviation, dimension, unitText);
}

/** `24.90 GBP` */
export const moneyText = ({
  amount,
  currency,
}: {
  readonly amount: number;
  readonly currency: string;
}): string => `${amount.toFixed(2)} ${currency}`;
