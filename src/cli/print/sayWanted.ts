import { quantityOf } from '../../choose/searchMeasures.ts';
import type { Flip } from '../../choose/shortlist/reasons.ts';
import type { SoftWant } from '../../choose/shortlist/softWants.ts';
import { sayScale } from '../../report/sayScale.ts';
import { toldDifference } from '../../units/difference.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';

/** A value of a wanted measure, no finer than its band where one is told. */
export function sayWanted(
  measure: string,
  value: number | undefined,
  currency: string,
  band?: readonly [number, number],
): string {
  if (value === undefined || Number.isNaN(value)) return '-';
  if (value === Number.POSITIVE_INFINITY) return 'never';
  if (measure === 'risks') return String(value);
  return formatQuantity(value, quantityOf(measure), band === undefined ? { currency } : { currency, band });
}

/** Changes of which any one puts the second level with the first, who is told by a name. */
export const flipLines = (flips: readonly Flip[], currency: string, first: string): readonly string[] =>
  flips.map((flip) =>
    flip.kind === 'weight'
      ? `  a weight of ${flip.to.toPrecision(2)} instead of ${flip.from} on ${flip.measure.replaceAll('-', ' ')}`
      : `  ${flip.by > 0 ? '+' : '-'}${sayWanted(flip.measure, Math.abs(flip.by), currency, toldDifference(Math.abs(flip.by))?.band)} ${flip.measure.replaceAll('-', ' ')} of ${first}`,
  );

/** What a standing is made of: every want with its weight and its scale. */
export function wantLines(wants: readonly SoftWant[], currency: string): readonly string[] {
  const total = wants.reduce((sum, { weight }) => sum + weight, 0);
  return wants.map(
    (want) =>
      `  ${((100 * want.weight) / total).toFixed(1).padStart(5)} points  ${want.measure.replaceAll('-', ' ')}: ${sayScale(want, { currency })}`,
  );
}
