import type { Part } from '../../build/schema/part.ts';

/**
 * How many orders a list of parts makes. Parts that take equally long to arrive are taken to come from one
 * shop in one parcel; what tells no days goes along with another order, or makes one by itself
 * (common practice, no source: a price list tells no shops).
 */
export function ordersOf(parts: readonly Part[]): number {
  if (parts.length === 0) return 0;
  return Math.max(1, new Set(parts.flatMap((part) => part.shippingDays ?? [])).size);
}
