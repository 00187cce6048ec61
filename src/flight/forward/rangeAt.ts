import { type Outcome, solved } from '../../numerics/outcome.ts';
import { type Drain, drain, steadyDraw } from '../drain.ts';
import { emptySupply, feed } from '../feed.ts';
import { sourceAt } from '../operatingPoint.ts';
import { type ForwardCraft, forwardTrim } from './forwardTrim.ts';

/** A pack flown down at one airspeed. */
export interface FlownAtSpeed extends Drain {
  /** Over the ground [m]; negative when the wind carries it back. */
  readonly distance: number;
}

const SLICES = 16;

/**
 * Endurance and range at one airspeed, level, from full to the landing reserve. At 0 m/s it is the hover's.
 *
 * @param airspeed [m/s]
 * @param headwind [m/s]; negative blows along
 * @param reserve share of the charge to land with, 0 to 0.9
 */
export function rangeAt(
  craft: ForwardCraft,
  airspeed: number,
  headwind: number,
  reserve: number,
): Outcome<FlownAtSpeed> {
  const trimmed = forwardTrim(craft, airspeed);
  if (!trimmed.ok) return trimmed;
  const { circuit } = craft;
  const supply = emptySupply(circuit.branches.length);
  const flown = drain(circuit, reserve, SLICES, (charge) =>
    feed(circuit, sourceAt(circuit, charge), trimmed.value.load, supply) === 'fed'
      ? steadyDraw(supply.packCurrent)
      : undefined,
  );
  return solved({ ...flown, distance: (airspeed - headwind) * flown.duration });
}
