import type { Brief } from '../../build/schema/brief.ts';
import type { Money } from '../../units/parseMoney.ts';

/**
 * A price in the brief's currency; undefined where its rate is not told, which the caller says
 * aloud: a price must never be left out in silence.
 */
export function inBriefCurrency(price: Money, brief: Brief): number | undefined {
  if (price.currency === brief.currency) return price.amount;
  const rate = brief.exchange[price.currency];
  return rate?.currency === brief.currency ? price.amount * rate.amount : undefined;
}
