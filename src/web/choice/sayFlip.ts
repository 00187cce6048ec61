import { quantityOf } from '../../choose/searchMeasures.ts';
import type { Flip } from '../../choose/shortlist/reasons.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';

/** How much more or less of a measure the first would need to have. */
export function sayFlippedValue(
  { measure, by }: Extract<Flip, { readonly kind: 'value' }>,
  label: string,
  manner: Manner,
): string {
  const size = sayInWords(Math.abs(by), quantityOf(measure), manner);
  return `${size} ${by > 0 ? 'more' : 'less'} ${label}`;
}
