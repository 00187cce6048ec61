import type { Assessment } from '../assess/assessment.ts';
import { type SoftWant, standingOf, worthOf } from './shortlist/softWants.ts';

/** What one `risk` of the fit rules costs of the standing (ours; stops put a build last whatever it scores). */
export const RISK_COST = 0.04;

/** What a standing is made of: a shortlist's `Scored` is one, an assessment makes one. */
export interface Weighed {
  /** SI, by id of the measure. */
  readonly values: Readonly<Record<string, number>>;
  /** Of the fit rules. What is measured counts by its own scale, and not a second time as a risk. */
  readonly risks: number;
}

/** One of several to be put in order. */
export interface Candidate extends Weighed {
  readonly stops: number;
}

/** An assessment as the shortlist's evaluator would have it (tested); of one that does not fly no value counts. */
export function candidateOf({ flies, measures, fit, findings }: Assessment): Candidate {
  // Never too hot is told by no measure: it is as good as a time can be.
  const values: Record<string, number> = { 'full-throttle-time-to-limit': Number.POSITIVE_INFINITY };
  for (const { id, value } of measures) values[id] = value;
  return {
    values: flies ? values : {},
    risks: fit.filter(({ passes, severity }) => !passes && severity === 'risk').length,
    stops: findings.filter(({ severity }) => severity === 'stop').length,
  };
}

/** 1 is the best there is; less than 0 where the risks cost more than the wants bring. NaN where nothing is wanted. */
export const standing = (
  wants: readonly SoftWant[],
  { values, risks }: Weighed,
  riskCost: number = RISK_COST,
): number => standingOf(wants, (want) => worthOf(want, values), risks, riskCost);

/**
 * Indices of candidates, the leader first: fewer stops, then the higher standing, then as given. A standing
 * hangs on nothing but the build itself, so that the order of two never hangs on a third.
 */
export function orderOf(
  candidates: readonly Candidate[],
  wants: readonly SoftWant[],
  riskCost: number = RISK_COST,
): readonly number[] {
  const wanted = wants.some(({ weight }) => weight > 0);
  return candidates
    .map((each, index) => ({
      index,
      stops: each.stops,
      stands: wanted ? standing(wants, each, riskCost) : 0,
    }))
    .sort((a, b) => a.stops - b.stops || b.stands - a.stands || a.index - b.index)
    .map(({ index }) => index);
}
