import type { Banded } from '../../assess/propagate.ts';

/** Which input decides the band of each figure most, and how that input is known, as one line. */
export function leansOnText(
  figures: readonly (readonly [name: string, figure: Banded | undefined])[],
): string {
  const told = figures.flatMap(([name, figure]) => {
    const first = figure?.leansOn[0];
    return first === undefined ? [] : [`${name} on ${first.input} (${first.trust})`];
  });
  const leaning = told.length === 0 ? '' : ` Leaning most: ${told.join('; ')}.`;
  return `Bands are 10th to 90th percentile.${leaning}\n`;
}
