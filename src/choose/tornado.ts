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
 * One-at-a-time sensitivities, the widest first: every cause of a group is moved together, so a group's bar
 * is what its worst reading of the sheet does. Groups with less than a thousandth are left out.
 */
export function tornado(craft: DoubtedCraft, figure: FigureName): readonly TornadoBar[] {
  const nominal = craft.figures[figure] ?? Number.NaN;
  return craft.factors
    .map(({ label, trust, inputs }) => {
      const own = new Set(inputs.map((input) => input.key));
      const at = (z: number) => craft.figuresAt((key) => (own.has(key) ? z : 0))[figure];
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
