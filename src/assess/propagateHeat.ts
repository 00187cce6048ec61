import { formatQuantity } from '../units/formatQuantity.ts';
import { type Banded, propagate, type Uncertainty } from './propagate.ts';
import type { Measure } from './types.ts';

/** What is told of a settled temperature that its insulation may not bear. */
export type Told = Banded & Pick<Measure, 'open' | 'words'>;

/** Where temperatures settle above, and which results are such temperatures. */
export interface Settling {
  /** [K] */
  readonly air: number;
  /** What the insulation of a result bears [K]; undefined where it is no settled temperature. */
  readonly bears: (name: string) => number | undefined;
}

/** Colder than this above the air nothing is heated [K]. */
const LEAST_RISE = 0.1;

/**
 * `propagate` for results among which temperatures are: they are doubted by the inverse of their rise, which is cooling over
 * heat. That is linear in how well a thing is cooled and is nothing where it runs away, so a band never reaches below the air.
 * What its insulation does not bear is told in words, the value and its band ending there.
 *
 * @param nominal results by name, SI; a temperature that never settles is Infinity, in `evaluate` as well
 */
export function propagateHeat<State, Name extends string>(
  nominal: Readonly<Record<Name, number>>,
  uncertainties: readonly Uncertainty<State>[],
  evaluate: (state: State) => Readonly<Partial<Record<Name, number>>>,
  { air, bears }: Settling,
  bothSides = false,
): Omit<ReturnType<typeof propagate<State, Name>>, 'banded'> & {
  readonly banded: Partial<Record<Name, Told>>;
} {
  const names = Object.keys(nominal) as Name[];
  const settling = names.filter((name) => bears(name) !== undefined && nominal[name] > air + LEAST_RISE);
  const runsAway = new Set<Name>();
  const cooled = <Results extends Readonly<Partial<Record<Name, number>>>>(results: Results): Results => {
    const changed: Partial<Record<Name, number>> = { ...results };
    for (const name of settling) {
      const value = results[name];
      if (value === undefined) continue;
      changed[name] = 1 / Math.max(value - air, LEAST_RISE);
    }
    return changed as Results;
  };
  const found = propagate(
    cooled(nominal),
    uncertainties,
    (state) => {
      const results = evaluate(state);
      const changed: Partial<Record<Name, number>> = { ...cooled(results) };
      for (const name of settling) {
        if (results[name] !== Number.POSITIVE_INFINITY) continue;
        runsAway.add(name);
        changed[name] = results[name]; // lost: `propagate` counts it
      }
      return changed;
    },
    bothSides,
  );
  const banded: Partial<Record<Name, Told>> = { ...found.banded };
  for (const name of settling) {
    const each = found.banded[name];
    const limit = bears(name);
    if (limit === undefined) continue;
    if (each === undefined) {
      // Without a band, and burnt as it is.
      const value = nominal[name];
      if (value > limit) banded[name] = asFarAsBorne({ value, band: [value, value], leansOn: [] }, limit);
      continue;
    }
    const [least, most] = each.band;
    const band = [air + 1 / most, least > 0 ? air + 1 / least : Number.POSITIVE_INFINITY] as const;
    const told = asFarAsBorne({ ...each, value: nominal[name], band }, limit);
    banded[name] =
      runsAway.has(name) && told.words === undefined
        ? { ...each, value: told.value, band: [band[0], limit] }
        : told;
  }
  return { ...found, banded };
}

/**
 * @param told with ends at Infinity where it never settles
 * @param limit what the insulation bears [K]
 */
function asFarAsBorne(told: Banded, limit: number): Told {
  const { value, band } = told;
  const [low, high] = band;
  if (value <= limit) {
    if (high <= limit) return told;
    return { ...told, band: [low, limit], open: Number.isFinite(high) ? BURNT : NEVER };
  }
  const over = Number.isFinite(value) ? `${BURNT}: over ${formatQuantity(limit, 'temperature')}` : NEVER;
  // So near the limit `at best` says nothing.
  const best =
    low < limit - WORTH_TELLING
      ? `, at best ${formatQuantity(low, 'temperature', { band: [low, limit] })}`
      : '';
  return { ...told, value: limit, band: [Math.min(low, limit), limit], words: `${over}${best}` };
}

/** [K] */
const WORTH_TELLING = 5;
const BURNT = 'burnt';
const NEVER = 'never settles';
