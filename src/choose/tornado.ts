import type { FigureName } from '../assess/figures.ts';
import type { Trust } from '../units/trusted.ts';
import type { DoubtedCraft } from './doubtedCraft.ts';

/** What one group of inputs does to a figure when it alone lies at its 10th and its 90th percentile. */
export interface TornadoBar {
  readonly label: string;
  readonly trust: Trust;
  /** The figure with the group low and high, same unit; absent where the craft then cannot hover. */
  readonly low?: number;
  readonly high?: number;
}

/** 90th percentile of the standard normal. */
const Z90 = 1.2815515655446004;

/**
 * One-at-a-time sensitivities, the widest first. A group of several causes is moved along the line on which the figure
 * changes most, as far in all as a single cause would be: its 10th and 90th percentile to first order (Hasofer and
 * Lind 1974, J. Eng. Mech. Div. 100, the same step; from memory). Moved by equal amounts instead, lift and drag of a propeller
 * would hide each other. Groups with less than a thousandth are left out.
 */
export function tornado(craft: DoubtedCraft, figure: FigureName): readonly TornadoBar[] {
  const nominal = craft.figures[figure] ?? Number.NaN;
  return craft.factors
    .map(({ label, trust, inputs }) => {
      const line = steepest(craft, figure, inputs);
      const at = (z: number) => craft.figuresAt((key) => z * (line.get(key) ?? 0))[figure];
      const [low, high] = [at(-Z90), at(Z90)];
      const width = Math.max(
        ...[low, high].map((value) => Math.abs((value ?? Number.POSITIVE_INFINITY) - nominal)),
      );
      return {
        bar: { label, trust, ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) },
        width,
      };
    })
    .filter(({ width }) => width > 1e-3 * Math.abs(nominal))
    .sort((a, b) => b.width - a.width)
    .map(({ bar }) => bar);
}

/** The unit vector of a group's causes along which the figure changes most; its first cause rises on it. */
function steepest(
  craft: DoubtedCraft,
  figure: FigureName,
  inputs: DoubtedCraft['factors'][number]['inputs'],
): ReadonlyMap<string, number> {
  const [first] = inputs;
  if (first === undefined || inputs.length === 1) return new Map(inputs.map(({ key }) => [key, 1]));
  const alone = (own: string, z: number) =>
    craft.figuresAt((key) => (key === own ? z : 0))[figure] ?? craft.figures[figure] ?? 0;
  const slopes = inputs.map(({ key }) => alone(key, Z90) - alone(key, -Z90));
  const length = Math.hypot(...slopes);
  if (length === 0) return new Map([[first.key, 1]]);
  const sign = (slopes[0] ?? 0) < 0 ? -1 : 1;
  return new Map(inputs.map(({ key }, index) => [key, (sign * (slopes[index] ?? 0)) / length]));
}
