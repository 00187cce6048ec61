import type { Banded } from '../../assess/propagate.ts';
import type { Leaning } from '../../assess/types.ts';

/** An input with how it is known; by which means of several stands in JSON. */
export const leaningText = ({ input, trust }: Leaning): string =>
  `${input.replace(/ \(.*\)$/, '')} (${trust})`;

/** Which input decides the band of each figure most, and how that input is known, as one line. */
export function leansOnText(
  figures: readonly (readonly [name: string, figure: Banded | undefined])[],
): string {
  const told = figures.flatMap(([name, figure]) => {
    const first = figure?.leansOn[0];
    return first === undefined ? [] : [`${name} on ${leaningText(first)}`];
  });
  const leaning = told.length === 0 ? '' : ` Leaning most: ${told.join('; ')}.`;
  return `Bands are 10th to 90th percentile.${leaning}\n`;
}
