import type { DriveBounds } from './drivePoint.ts';
import { standingOf, utilityBound } from './softWants.ts';
import type { ShortlistQuestion } from './types.ts';

/** Ranges that everything below a point of the search lies in; SI and the brief's currency. */
export interface Ranges {
  readonly mass: readonly [low: number, high: number];
  /** Least first-flight cost. */
  readonly cost: number;
  readonly packMass: number;
  /** Least number of risks. */
  readonly risks: number;
  /** Absent before they are computed. */
  readonly drive?: DriveBounds;
}

/** Measures that a front may be made of, with a bound each. */
export const FRONT_MEASURES: Readonly<Record<string, 'more' | 'less'>> = {
  'first-flight-cost': 'less',
  'all-up-mass': 'less',
  'flown-time': 'more',
};

const EVERYTHING = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;

/** Range of a measure; everything where nothing is known of it. */
export function rangeOf(measure: string, ranges: Ranges): readonly [number, number] {
  const { mass, cost, drive, packMass } = ranges;
  switch (measure) {
    case 'all-up-mass':
      return mass;
    case 'first-flight-cost':
      return [cost, Number.POSITIVE_INFINITY];
    case 'pack-share':
      return [packMass / mass[1], packMass / mass[0]];
    case 'flown-time':
      return [0, drive?.flownTime ?? Number.POSITIVE_INFINITY];
    case 'thrust-to-weight':
      return drive?.thrustToWeight ?? [0, Number.POSITIVE_INFINITY];
    case 'full-throttle-time-to-limit':
      return [0, drive?.timeToLimit ?? Number.POSITIVE_INFINITY];
    case 'hardest-motor-load':
      return [1, Number.POSITIVE_INFINITY];
    default:
      return EVERYTHING;
  }
}

/** Sums are rounded differently here and there. */
const ROUNDING = 1e-9;

/** No combination inside the ranges stands higher: each want at its best end, each risk known for sure. */
export function standingBound(question: ShortlistQuestion, ranges: Ranges): number {
  const best = standingOf(
    question.wants,
    (want) => {
      const [low, high] = rangeOf(want.measure, ranges);
      return utilityBound(want.scale, low, high);
    },
    ranges.risks,
    question.riskCost,
  );
  return best + ROUNDING;
}

/** The name of a hard limit that everything inside the ranges breaks. */
export function surelyBroken(question: ShortlistQuestion, ranges: Ranges): string | undefined {
  const broken = question.limits.find(({ measure, least, most }) => {
    const [low, high] = rangeOf(measure, ranges);
    const slack = ROUNDING * Math.max(1, Math.abs(low));
    return (
      high + slack < (least ?? Number.NEGATIVE_INFINITY) || low - slack > (most ?? Number.POSITIVE_INFINITY)
    );
  });
  return broken === undefined ? undefined : `limit: ${broken.measure}`;
}

/** The best corner of the ranges as costs, less being better, for the front. */
export function frontBound(question: ShortlistQuestion, ranges: Ranges): readonly number[] {
  return question.front.map((measure) => {
    const [low, high] = rangeOf(measure, ranges);
    return FRONT_MEASURES[measure] === 'less' ? low - ROUNDING * Math.max(1, Math.abs(low)) : -high;
  });
}
