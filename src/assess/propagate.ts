import type { Trust } from '../units/trusted.ts';
import type { Leaning } from './types.ts';

/** One uncertain input: which trust it has and what one standard deviation of it does. */
export interface Uncertainty<State> {
  /** In words: `propeller thrust`. */
  readonly input: string;
  readonly trust: Trust;
  /** The state with this input alone raised by one standard deviation. */
  readonly raised: State;
  /** The same with it lowered by as much; made only where it is asked for. */
  readonly lowered?: (() => State) | undefined;
}

/** The same inputs with their states made into others. */
export const statesAs = <From, To>(
  uncertainties: readonly Uncertainty<From>[],
  as: (state: From) => To,
): readonly Uncertainty<To>[] =>
  uncertainties.map(({ input, trust, raised, lowered }) => ({
    input,
    trust,
    raised: as(raised),
    ...(lowered === undefined ? {} : { lowered: () => as(lowered()) }),
  }));

/** A computed value with its 10th and 90th percentile and the inputs it leans on. */
export interface Banded {
  readonly value: number;
  readonly band: readonly [low: number, high: number];
  readonly leansOn: readonly Leaning[];
}

/** The states of doubt, each of one input a standard deviation off, in which a result has no finite value. */
export interface Lost {
  /** Which input, and to which side, in words: `mass of the parts a step up`. */
  readonly states: readonly string[];
  /** Of so many that were looked at. */
  readonly of: number;
  /** What the result is in the first: undefined, not a number, or without end. */
  readonly value: number | undefined;
  /** All results then; empty when nothing could be worked out. */
  readonly record: Readonly<Record<string, number | undefined>>;
}

/** 90th percentile of the standard normal. */
const Z90 = 1.2815515655446004;

/** Inputs below this share of the variance are not worth a builder's eye. */
export const SMALLEST_SHARE = 0.03;

/**
 * Law of propagation of uncertainty for independent inputs, with sensitivities by one-sided
 * differences over one standard deviation (JCGM 100:2008, eq. 10 and 5.1.4): for every named
 * result u^2 = sum of (f(raised) - f(nominal))^2.
 *
 * A positive result whose deviation is over a twentieth of it is banded as log-normal, so that a
 * mass or a time never reaches below zero; else as normal. A result that a raised state leaves without a finite value takes
 * that input's difference from the lowered state; `lost` counts such states, and their end of the band lies open. An input
 * with neither adds nothing. What no state has at all stands in `unbanded`: its doubt is not known.
 *
 * @param nominal results by name, any units
 * @param uncertainties independent inputs
 * @param evaluate results by name for one state; only names in `nominal` are looked at
 * @param bothSides looks at every lowered state too, for what may have no solution there
 */
export function propagate<State, Name extends string>(
  nominal: Readonly<Record<Name, number>>,
  uncertainties: readonly Uncertainty<State>[],
  evaluate: (state: State) => Readonly<Partial<Record<Name, number>>>,
  bothSides = false,
): {
  readonly banded: Partial<Record<Name, Banded>>;
  readonly unbanded: readonly Name[];
  readonly lost: Readonly<Partial<Record<Name, Lost>>>;
} {
  type Results = Readonly<Partial<Record<Name, number>>>;
  const sides = uncertainties.map(({ raised, lowered }) => {
    let low: Results | undefined;
    return {
      raised: evaluate(raised),
      lowered: () => {
        if (low === undefined && lowered !== undefined) low = evaluate(lowered());
        return low;
      },
    };
  });
  const banded: Partial<Record<Name, Banded>> = {};
  const unbanded: Name[] = [];
  const lost: Partial<Record<Name, Lost>> = {};
  for (const name of Object.keys(nominal) as Name[]) {
    const value = nominal[name];
    const without: { readonly state: string; readonly record: Results }[] = [];
    let looked = 0;
    const differenceOf = (record: Results | undefined, state: string): number => {
      if (record === undefined) return Number.NaN;
      looked++;
      const difference = (record[name] ?? Number.NaN) - value;
      if (!Number.isFinite(difference)) without.push({ state, record });
      return difference;
    };
    const parts = sides.map(({ raised, lowered }, i): number => {
      const input = uncertainties[i]?.input ?? '';
      const up = differenceOf(raised, `${input} a step up`);
      if (Number.isFinite(up) && !bothSides) return up * up;
      const down = differenceOf(lowered(), `${input} a step down`);
      const difference = Number.isFinite(up) ? up : down;
      return Number.isFinite(difference) ? difference * difference : 0;
    });
    const [first] = without;
    if (first !== undefined) {
      const { record } = first;
      lost[name] = { states: without.map(({ state }) => state), of: looked, value: record[name], record };
    }
    const variance = parts.reduce((sum, part) => sum + part, 0);
    if (!Number.isFinite(value) || !Number.isFinite(variance) || (looked > 0 && without.length === looked)) {
      unbanded.push(name);
      continue;
    }
    banded[name] = {
      value,
      band: bandOf(value, Math.sqrt(variance)),
      leansOn: leanings(parts, variance, uncertainties),
    };
  }
  return { banded, unbanded, lost };
}

/** 10th and 90th percentile for a value and its standard deviation, same units. */
export function bandOf(value: number, deviation: number): readonly [number, number] {
  if (deviation === 0) return [value, value];
  if (value > 0 && deviation > 0.05 * value) {
    const logDeviation = Math.sqrt(Math.log1p((deviation / value) ** 2));
    return [value * Math.exp(-Z90 * logDeviation), value * Math.exp(Z90 * logDeviation)];
  }
  return [value - Z90 * deviation, value + Z90 * deviation];
}

/**
 * Where no honest band can be had: half of the value either way, told from `zero` up, since a motor
 * at 70 degC is not between -100 and 240 (half of its kelvins).
 *
 * @param zero of the scale that the value is doubted on: the air's temperature for a temperature, else 0
 */
export function guessedBand(value: number, zero = 0): readonly [number, number] {
  const half = 0.5 * Math.abs(value - zero);
  return [value - half, value + half];
}

function leanings(
  parts: readonly number[],
  variance: number,
  uncertainties: readonly { readonly input: string; readonly trust: Trust }[],
): readonly Leaning[] {
  if (variance === 0) return [];
  return uncertainties
    .map(({ input, trust }, index) => ({ input, trust, share: (parts[index] ?? 0) / variance }))
    .filter((leaning) => leaning.share >= SMALLEST_SHARE)
    .sort((a, b) => b.share - a.share)
    .slice(0, 5);
}
