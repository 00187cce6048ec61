import { quantityOf } from '../../choose/searchMeasures.ts';
import type { Flip } from '../../choose/shortlist/reasons.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { toldDifference } from '../../units/difference.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';

/** How much more or less of a measure the first would need to have, to two digits. */
export function sayFlippedValue(
  { measure, by }: Extract<Flip, { readonly kind: 'value' }>,
  manner: Manner,
): string {
  const told = toldDifference(Math.abs(by));
  const size = formatQuantity(
    Math.abs(by),
    quantityOf(measure),
    told ? { ...manner, band: told.band } : manner,
  );
  return `${size} ${by > 0 ? 'more' : 'less'}`;
}
