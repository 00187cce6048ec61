import type { QuantityError } from './parseQuantity.ts';

/** An amount in the units of a currency named by its ISO 4217 code. */
export interface Money {
  readonly amount: number;
  readonly currency: string;
}

/** Reads `"24.90 GBP"`. The currency is any three capital letters; amounts are 0 to 1e6. */
export function parseMoney(text: string): { readonly ok: true; readonly value: Money } | QuantityError {
  const match = text.length > 40 ? null : /^\s*(\d{1,7}(?:\.\d{1,2})?)\s*([A-Z]{3})\s*$/.exec(text);
  const amount = match ? Number(match[1]) : Number.NaN;
  if (!match || !(amount <= 1e6)) {
    const found = `"${text.slice(0, 40)}"`;
    return {
      ok: false,
      reason: `${found} is not an amount of money`,
      found,
      allowed: 'an amount from 0 to 1000000 with at most two decimals and a three-letter currency code',
      remedy: 'Write it like "24.90 GBP".',
    };
  }
  return { ok: true, value: { amount, currency: match[2] ?? '' } };
}
