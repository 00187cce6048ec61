import { z } from 'zod';
import { parseMoney } from '../../units/parseMoney.ts';
import { check } from '../read/check.ts';
import { failed, type Reading } from '../read/fileError.ts';
import { parseText } from '../read/parseText.ts';
import { words } from '../schema/common.ts';
import { money } from '../schema/fields.ts';

export const RATES_FORMAT = 'quadwright-rates-1';

const code = z.string().regex(/^[A-Z]{3}$/, { error: 'must be a three-letter currency code' });

const ratesFile = z.strictObject({
  format: z.literal(RATES_FORMAT),
  asOf: z.iso.date({ error: 'must be a day such as 2026-11-20' }).describe('Day of the rates'),
  source: words.describe('Where they stand'),
  rates: z.record(code, money('Worth of one unit')),
});

/** What one unit of a currency was worth on a day, told by the user. */
export type Rates = z.output<typeof ratesFile>;

export function readRates(text: string, file: string): Reading<Rates> {
  const parsed = parseText(text, file);
  if (!parsed.ok) return parsed;
  const { value, errors } = check(ratesFile, parsed.value.data, parsed.value, file);
  return value === undefined ? failed(errors) : { ok: true, value };
}

/**
 * A price as a shelf writes it, in the currency that the rates give it a worth in, rounded to the hundredth; with
 * the words that say how it came about. The price as it is where the rates do not know its currency.
 */
export function atRates(
  price: string,
  rates: Rates,
): { readonly price: string; readonly says: string | undefined } {
  const read = parseMoney(price);
  const worth = read.ok ? rates.rates[read.value.currency] : undefined;
  if (!read.ok || worth === undefined) return { price, says: undefined };
  const amount = (read.value.amount * worth.amount).toFixed(2);
  return {
    price: `${amount} ${worth.currency}`,
    says: `price ${price} at ${worth.amount} ${worth.currency} for 1 ${read.value.currency}, ${rates.source}, ${rates.asOf}`,
  };
}
