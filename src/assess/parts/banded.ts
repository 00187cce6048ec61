import { openMeasure } from '../openEnd.ts';
import { guessedBand, type Uncertainty } from '../propagate.ts';
import { propagateHeat } from '../propagateHeat.ts';
import type { Measure } from '../types.ts';

/** All of a measure but its number. */
export interface MeasureForm extends Omit<Measure, 'value' | 'band' | 'leansOn'> {
  /** Of a temperature that settles: what its insulation bears [K]; hotter is told in words. */
  readonly bears?: number;
}

/** Numbers by measure id; what has no solution is left out. */
export type Numbers = Readonly<Record<string, number | undefined>>;

/**
 * Measures with bands by `propagate`, in the order of the forms. A form without a number is left out. Where a state of doubt
 * has no solution the measure says so; where none has one the band is a guess.
 *
 * @param evaluate what is without end never settles, never ends; what could not be flown is left out
 * @param air temperature that temperatures are told from [K]
 */
export function bandedMeasures<State>(
  forms: readonly MeasureForm[],
  nominal: Numbers,
  states: readonly Uncertainty<State>[],
  evaluate: (state: State) => Numbers,
  air = 0,
): readonly Measure[] {
  const limits = new Map(forms.flatMap(({ id, bears }) => (bears === undefined ? [] : [[id, bears]])));
  const bears = (id: string): number | undefined => limits.get(id);
  const known = definite(nominal, bears);
  const { banded, unbanded, lost } = propagateHeat(known, states, evaluate, { air, bears });
  return forms.flatMap(({ bears: _, ...form }): readonly Measure[] => {
    const value = known[form.id];
    if (value === undefined) return [];
    const without = lost[form.id];
    const open: Partial<Pick<Measure, 'open' | 'how' | 'lost'>> =
      without === undefined ? {} : openMeasure(form, without, without.value !== undefined);
    const found = banded[form.id];
    if (found !== undefined) {
      if (found.words !== undefined) return [{ ...form, ...found }];
      const [low, high] = found.band;
      // What moves by rounding only stands in every state.
      if (high - low <= 1e-6 * Math.abs(value)) {
        return [
          {
            ...form,
            ...open,
            value,
            band: [value, value],
            how: `${open.how ?? form.how} ${ALIKE}`,
            leansOn: [],
          },
        ];
      }
      // A magnitude: none of these can be less than nothing.
      return [{ ...form, ...open, ...found, band: value < 0 ? [low, high] : [Math.max(0, low), high] }];
    }
    if (!unbanded.includes(form.id)) return [];
    const zero = form.quantity === 'temperature' ? air : 0;
    return [{ ...form, ...open, value, band: guessedBand(value, zero), leansOn: [] }];
  });
}

/** Why a number that leans on doubtful inputs has no width. */
const ALIKE = 'The same in every state of doubt.';

/** What has a number, and what never settles. */
function definite(numbers: Numbers, bears: (id: string) => number | undefined): Record<string, number> {
  const kept: Record<string, number> = {};
  for (const [id, value] of Object.entries(numbers)) {
    if (value === undefined) continue;
    if (Number.isFinite(value) || (value === Number.POSITIVE_INFINITY && bears(id) !== undefined))
      kept[id] = value;
  }
  return kept;
}
