import { packSource, usableCapacity } from '../drive/battery.ts';
import type { Circuit } from './circuit.ts';
import { cutOffVoltage } from './cutOff.ts';

/** What ended a flight. */
export type FlightEnd = 'landing reserve' | 'cut-off voltage' | 'thrust runs short';

/** A pack flown down. */
export interface Drain {
  /** [s] */
  readonly duration: number;
  readonly end: FlightEnd;
  /** Charge left at the end, 1 full. */
  readonly chargeLeft: number;
  /** Mean over time [A]. */
  readonly meanCurrent: number;
  /** Drawn from the chemistry over the flight [J]. */
  readonly energy: number;
}

/** What a flight draws at a charge [A]. */
export interface Draw {
  readonly mean: number;
  /** What keeps it flying and cannot be eased: all of it in steady flight. */
  readonly need: number;
}

/** Of steady flight, which cannot be eased; undefined where it cannot be fed. */
export const steadyDraw = (current: number | undefined): Draw | undefined =>
  current === undefined ? undefined : { mean: current, need: current };

/**
 * Integrates a flight over charge, from full to the landing reserve: dt = Q dq / I(q), midpoint rule. Ends early
 * where, on the polarisation of its mean current, what it needs pulls the terminals below the pack's cut-off, or where
 * the load cannot be fed any more; the last slice is cut where the voltage crosses, by a straight line. The pack is held
 * at its first temperature: `flyMission` lets it warm.
 *
 * @param drawAt at a charge, given the mean current that has settled before; undefined when the load cannot be fed
 * @param reserve 0 to 0.9
 * @param slices 8 for averaged styles, 16 for a hover: within 0.1 % of 1000 slices
 */
export function drain(
  circuit: Circuit,
  reserve: number,
  slices: number,
  drawAt: (charge: number, settledCurrent: number) => Draw | undefined,
): Drain {
  const { pack } = circuit;
  const capacity = usableCapacity(pack, circuit.packTemperature);
  const cutOff = cutOffVoltage(pack);
  const slice = (1 - reserve) / slices;
  let duration = 0;
  let energy = 0;
  let charge = 1;
  let settled = 0;
  let headroomBefore = Number.NaN;
  const ended = (end: FlightEnd): Drain => ({
    duration,
    end,
    chargeLeft: charge,
    meanCurrent: duration > 0 ? ((1 - charge) * capacity) / duration : settled,
    energy,
  });
  for (let k = 0; k < slices; k++) {
    const middle = 1 - (k + 0.5) * slice;
    const draw = drawAt(middle, settled);
    if (draw === undefined) return ended('thrust runs short');
    const current = draw.mean;
    settled = current;
    const source = packSource(pack, {
      charge: middle,
      temperature: circuit.packTemperature,
      settledCurrent: current,
    });
    const headroom = source.emf - source.resistance * draw.need - cutOff;
    let share = 1;
    if (headroom < 0) {
      // The crossing between the two midpoints may lie in the slice before: then a little of it is given back.
      const crossing = headroomBefore / (headroomBefore - headroom);
      share = Number.isNaN(headroomBefore) ? 0 : crossing - 0.5;
    }
    const step = (share * slice * capacity) / current;
    duration += step;
    energy += step * current * source.openCircuit;
    charge -= share * slice;
    if (headroom < 0) return ended('cut-off voltage');
    headroomBefore = headroom;
  }
  return ended('landing reserve');
}
