import type { FigureName } from '../assess/figures.ts';
import type { Trust } from '../units/trusted.ts';
import type { DoubtedCraft } from './doubtedCraft.ts';
import { normalQuantile } from './normalQuantile.ts';
import { type SobolIndex, sobolIndices } from './sobolIndices.ts';

/** Share of a figure's variance that one group of inputs makes. */
export interface Sensitivity extends SobolIndex {
  readonly label: string;
  readonly trust: Trust;
}

/**
 * Variance-based sensitivities of a figure, largest total first. The bands of `assess` split the variance
 * by one-sided differences; this one sees curvature and inputs working together, for some thousand
 * evaluations.
 *
 * @param count rows of the sample; (groups + 2) x count evaluations
 */
export function sensitivities(
  craft: DoubtedCraft,
  figure: FigureName,
  count: number,
  seed: number,
): readonly Sensitivity[] {
  const keys = craft.factors.flatMap(({ inputs }) => inputs.map(({ key }) => key));
  const columnOf = new Map(keys.map((key, column) => [key, column]));
  const evaluate = (point: Float64Array): number =>
    craft.figuresAt((key) => normalQuantile(point[columnOf.get(key) ?? 0] ?? 0.5))[figure] ?? Number.NaN;
  const columns = craft.factors.map(({ inputs }) => inputs.map(({ key }) => columnOf.get(key) ?? 0));
  return sobolIndices(evaluate, columns, count, seed)
    .flatMap((index, position): readonly Sensitivity[] => {
      const factor = craft.factors[position];
      return factor === undefined ? [] : [{ label: factor.label, trust: factor.trust, ...index }];
    })
    .sort((a, b) => b.total - a.total);
}
