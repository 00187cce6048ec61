import type { AssessContext } from '../assess/assess.ts';
import { type Figures, tellHover } from '../assess/figures.ts';
import { shifted } from '../assess/flownMeasures.ts';
import { prepareFlight } from '../assess/prepareFlight.ts';
import type { Craft } from '../build/craft.ts';
import type { Outcome } from '../numerics/outcome.ts';
import { type DoubtFactor, doubtedState, doubtFactors } from './doubts.ts';

/** A craft whose inputs can be moved within their doubt. */
export interface DoubtedCraft {
  readonly factors: readonly DoubtFactor[];
  /** At the most likely value of every input. */
  readonly figures: Figures;
  /** Figures when every cause lies so many standard deviations off; empty where it cannot hover. */
  readonly figuresAt: (normal: (key: string) => number) => Figures;
}

/** Makes a craft ready to be drawn again and again; words when it does not hover. */
export function doubtedCraft(craft: Craft, context: AssessContext): Outcome<DoubtedCraft> {
  const flight = prepareFlight(craft, context);
  if (!flight.ok) return flight;
  const { model, style, doubt, told } = flight.value;
  const factors = doubtFactors(craft, doubt);
  return {
    ok: true,
    value: {
      factors,
      figures: told.figures,
      figuresAt: (normal) => {
        const { levers, balanceShift } = doubtedState(factors, normal);
        const found = tellHover(shifted(model, balanceShift), levers, style, craft);
        return found.ok ? found.value.figures : {};
      },
    },
  };
}
