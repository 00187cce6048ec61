import { type ForwardPoint, forwardPoint } from '../../../flight/forward/forwardPoint.ts';
import { type ForwardCraft, forwardTrim } from '../../../flight/forward/forwardTrim.ts';
import { refeed } from '../../../flight/forward/refeed.ts';
import { topSpeed } from '../../../flight/forward/speeds.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';

/** A top speed found, with what is needed to correct it for a small change. */
export interface KnownTop {
  readonly at: ForwardPoint;
  /** What stands in the way of more, in words. */
  readonly limit: string;
  /** Of the pack, and largest duty allowed. */
  readonly charge: number;
  readonly duty: number;
  /** Of the largest duty over speed, near the top [s/m]. */
  readonly slope: number;
}

/** As `topSpeed`, ready for `raisedTop`. */
export function knownTop(craft: ForwardCraft, charge: number, duty: number): Outcome<KnownTop> {
  const found = topSpeed(craft, charge, duty);
  if (!found.ok) return found;
  const { at, limit } = found.value;
  const slower = forwardPoint(craft, 0.95 * at.speed, charge);
  const slope =
    slower.ok && at.speed > 0 ? (at.largestDuty - slower.value.largestDuty) / (0.05 * at.speed) : 0;
  return solved({ at, limit, charge, duty, slope });
}

/**
 * The top speed [m/s] of a craft with one input raised: by the duty missing at the known one, twice corrected; searched
 * anew where voltage is not the limit. Undefined when it has none.
 *
 * @param sameTrims when `raised` differs from `nominal` in its electrical side only
 */
export function raisedTop(
  known: KnownTop,
  nominal: ForwardCraft,
  raised: ForwardCraft,
  sameTrims: boolean,
): number | undefined {
  const { at, charge, duty, slope } = known;
  const dutyAt = (speed: number): number | undefined => {
    if (sameTrims && speed === at.speed) return refeed(at, raised.circuit, charge)?.largestDuty;
    const trim = forwardTrim(sameTrims ? nominal : raised, speed);
    return trim.ok ? refeed(trim.value, raised.circuit, charge)?.largestDuty : undefined;
  };
  const here = dutyAt(at.speed);
  if (here === undefined || at.largestDuty < duty - 0.02 || !(slope > 0)) {
    const found = topSpeed(raised, charge, duty);
    return found.ok ? found.value.at.speed : undefined;
  }
  const first = Math.max(0, at.speed - (here - at.largestDuty) / slope);
  if (Math.abs(first - at.speed) < 0.02 * at.speed) return first;
  const there = dutyAt(first);
  if (there === undefined) return first;
  const steepness = (there - here) / (first - at.speed);
  return steepness > 0 ? Math.max(0, first - (there - at.largestDuty) / steepness) : first;
}
