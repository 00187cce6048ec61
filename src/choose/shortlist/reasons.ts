import { standing, type Weighed } from '../standing.ts';
import { type SoftWant, worthOf } from './softWants.ts';
import type { ShortlistQuestion } from './types.ts';

/** What one want makes of the difference between two candidates. */
export interface WantReason {
  readonly measure: string;
  /** Of the standing, positive speaks for the first. */
  readonly difference: number;
  readonly values: readonly [first: number, second: number];
}

/** Why one stands higher than another: every want's share of the difference and the risks', largest first. */
export function reasonsBetween(
  { wants, riskCost }: Pick<ShortlistQuestion, 'wants' | 'riskCost'>,
  first: Weighed,
  second: Weighed,
): readonly WantReason[] {
  const total = wants.reduce((sum, { weight }) => sum + weight, 0);
  const risks: WantReason = {
    measure: 'risks',
    difference: riskCost * (second.risks - first.risks),
    values: [first.risks, second.risks],
  };
  return [
    ...wants.map((want): WantReason => {
      const values = [wantedOf(first, want), wantedOf(second, want)] as const;
      const difference = (want.weight / total) * (worthOf(want, first.values) - worthOf(want, second.values));
      return { measure: want.measure, difference, values };
    }),
    risks,
  ]
    .filter(({ difference }) => difference !== 0)
    .sort((a, b) => Math.abs(b.difference) - Math.abs(a.difference));
}

const wantedOf = ({ values }: Weighed, { measure }: SoftWant) => values[measure] ?? Number.NaN;

/** A change that puts the second level with the first. */
export type Flip =
  | { readonly kind: 'weight'; readonly measure: string; readonly from: number; readonly to: number }
  | { readonly kind: 'value'; readonly measure: string; readonly by: number };

/**
 * What would flip the order of two: for each want the weight at which they stand level, others left as they
 * are (exact: the difference is linear in a weight), and how much a measure of the first would have to change
 * alone (by bisection on its scale). Wants that cannot flip it are left out.
 */
export function flipsBetween(
  question: Pick<ShortlistQuestion, 'wants' | 'riskCost'>,
  first: Weighed,
  second: Weighed,
): readonly Flip[] {
  const { wants, riskCost } = question;
  const lead = (weights: readonly SoftWant[], own: Weighed) =>
    standing(weights, own, riskCost) - standing(weights, second, riskCost);
  return wants.flatMap((want): readonly Flip[] => {
    const others = wants.filter((each) => each !== want);
    const rest = others.reduce((sum, { weight }) => sum + weight, 0);
    const fixed = others.length === 0 ? 0 : rest * lead(others, first);
    const own = worthOf(want, first.values) - worthOf(want, second.values);
    const risk = riskCost * (second.risks - first.risks);
    // fixed + w own + w risk = 0, the risks of the others being in `fixed` already.
    const weight = -fixed / (own + risk);
    const flips: Flip[] = [];
    if (weight > 0 && Number.isFinite(weight) && weight <= 100 * want.weight) {
      flips.push({ kind: 'weight', measure: want.measure, from: want.weight, to: weight });
    }
    const by = changeNeeded(want, first, (moved) => lead(wants, moved));
    if (by !== undefined) flips.push({ kind: 'value', measure: want.measure, by });
    return flips;
  });
}

/** How far one measure of a candidate must move to the worse before its lead is gone; undefined when it never is. */
function changeNeeded(
  { measure, scale }: SoftWant,
  first: Weighed,
  leadOf: (moved: Weighed) => number,
): number | undefined {
  const value = first.values[measure];
  if (scale.kind !== 'ramp' || value === undefined || !Number.isFinite(value)) return undefined;
  const moved = (by: number): Weighed => ({ ...first, values: { ...first.values, [measure]: value + by } });
  const end = scale.worst - value;
  if (leadOf(moved(end)) > 0 || leadOf(first) <= 0) return undefined;
  let [safe, gone] = [0, end];
  for (let step = 0; step < 60; step++) {
    const middle = (safe + gone) / 2;
    if (leadOf(moved(middle)) > 0) safe = middle;
    else gone = middle;
  }
  return gone;
}
