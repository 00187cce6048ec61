import { openMeasure } from '../openEnd.ts';
import { guessedBand, propagate, type Uncertainty } from '../propagate.ts';
import type { Measure } from '../types.ts';

/** All of a measure but its number. */
export type MeasureForm = Omit<Measure, 'value' | 'band' | 'leansOn'>;

/** Numbers by measure id; what has no solution is left out. */
export type Numbers = Readonly<Record<string, number | undefined>>;

/**
 * Measures with bands by `propagate`, in the order of the forms. A form without a number is left out. Where one raised input
 * leaves no solution the value stands with a band that is a guess, and says so.
 *
 * @param evaluate what is not a number or without end never settles, never ends; what could not be flown is left out
 * @param air temperature that guesses of temperatures are told from [K]
 */
export function bandedMeasures<State>(
  forms: readonly MeasureForm[],
  nominal: Numbers,
  states: readonly Uncertainty<State>[],
  evaluate: (state: State) => Numbers,
  air = 0,
): readonly Measure[] {
  const known = definite(nominal);
  const { banded, unbanded, lost } = propagate(known, states, evaluate);
  return forms.flatMap((form): readonly Measure[] => {
    const found = banded[form.id];
    if (found !== undefined) {
      const { value, band } = found;
      // What moves by rounding only is exact.
      const exact = band[1] - band[0] <= 1e-6 * Math.abs(value);
      return [exact ? { ...form, value, band: [value, value], leansOn: [] } : { ...form, ...found }];
    }
    const value = known[form.id];
    if (value === undefined || !unbanded.includes(form.id)) return [];
    return [
      {
        ...form,
        value,
        band: guessedBand(value, form.quantity === 'temperature' ? air : 0),
        ...openMeasure(form, lost[form.id], lost[form.id]?.value !== undefined),
        leansOn: [],
      },
    ];
  });
}

function definite(numbers: Numbers): Record<string, number> {
  const kept: Record<string, number> = {};
  for (const [id, value] of Object.entries(numbers)) {
    if (value !== undefined && Number.isFinite(value)) kept[id] = value;
  }
  return kept;
}
