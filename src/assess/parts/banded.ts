import { openMeasure } from '../openEnd.ts';
import { propagate, type Uncertainty } from '../propagate.ts';
import type { Measure } from '../types.ts';

/** All of a measure but its number. */
export type MeasureForm = Omit<Measure, 'value' | 'band' | 'leansOn'>;

/** Numbers by measure id; what has no solution is left out. */
export type Numbers = Readonly<Record<string, number | undefined>>;

/**
 * Measures with bands by `propagate`, in the order of the forms. A form without a number is left out. Where one raised input
 * leaves no solution the value stands with a band that is a guess, and says so.
 */
export function bandedMeasures<State>(
  forms: readonly MeasureForm[],
  nominal: Numbers,
  states: readonly Uncertainty<State>[],
  evaluate: (state: State) => Numbers,
): readonly Measure[] {
  const known = definite(nominal);
  const { banded, unbanded, lost } = propagate(known, states, (state) => definite(evaluate(state)));
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
    const half = 0.5 * Math.abs(value);
    return [
      {
        ...form,
        value,
        band: [value - half, value + half],
        ...openMeasure(form, lost[form.id]),
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
