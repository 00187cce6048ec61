import type { Trust } from '../units/trusted.ts';
import type { Leaning } from './types.ts';

/** One uncertain input: which trust it has and what one standard deviation of it does. */
export interface Uncertainty<State> {
  /** In words: `propeller thrust`. */
  readonly input: string;
  readonly trust: Trust;
  /** The state with this input alone raised by one standard deviation. */
  readonly raised: State;
}

/** A computed value with its 10th and 90th percentile and the inputs it leans on. */
export interface Banded {
  readonly value: number;
  readonly band: readonly [low: number, high: number];
  readonly leansOn: readonly Leaning[];
}

/** The first input that, raised, leaves a result without a finite value. */
export interface Lost {
  readonly input: string;
  /** What it is then: undefined, not a number, or without end. */
  readonly value: number | undefined;
  /** All results then; empty when nothing could be worked out. */
  readonly record: Readonly<Record<string, number | undefined>>;
}

/** 90th percentile of the standard normal. */
const Z90 = 1.2815515655446004;

/** Inputs below this share of the variance are not worth a builder's eye. */
const SMALLEST_SHARE = 0.03;

/**
 * Law of propagation of uncertainty for independent inputs, with sensitivities by one-sided
 * differences over one standard deviation (JCGM 100:2008, eq. 10 and 5.1.4): for every named
 * result u^2 = sum of (f(raised) - f(nominal))^2.
 *
 * A positive result whose deviation is over a twentieth of it is banded as log-normal, so that a
 * mass or a time never reaches below zero; else as normal. When a raised state has no
 * solution for a result (absent from its record) that result's band is absent and it is left out of
 * `banded`, its name standing in `unbanded`: a band must not be narrower than what is known. `lost` tells what
 * leaves it without.
 *
 * @param nominal results by name, any units
 * @param uncertainties independent inputs
 * @param evaluate results by name for one state; only names in `nominal` are looked at
 */
export function propagate<State, Name extends string>(
  nominal: Readonly<Record<Name, number>>,
  uncertainties: readonly Uncertainty<State>[],
  evaluate: (state: State) => Readonly<Partial<Record<Name, number>>>,
): {
  readonly banded: Partial<Record<Name, Banded>>;
  readonly unbanded: readonly Name[];
  readonly lost: Readonly<Partial<Record<Name, Lost>>>;
} {
  const raised = uncertainties.map((uncertainty) => evaluate(uncertainty.raised));
  const banded: Partial<Record<Name, Banded>> = {};
  const unbanded: Name[] = [];
  const lost: Partial<Record<Name, Lost>> = {};
  for (const name of Object.keys(nominal) as Name[]) {
    const value = nominal[name];
    let variance = 0;
    const parts: number[] = [];
    for (const record of raised) {
      const other = record[name];
      const difference = other === undefined ? Number.NaN : other - value;
      parts.push(difference * difference);
      variance += difference * difference;
    }
    if (!Number.isFinite(value) || !Number.isFinite(variance)) {
      unbanded.push(name);
      const first = parts.findIndex((part) => !Number.isFinite(part));
      const [input, record] = [uncertainties[first]?.input, raised[first]];
      if (input !== undefined && record !== undefined) lost[name] = { input, value: record[name], record };
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
