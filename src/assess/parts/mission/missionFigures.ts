import { packEnergy, usableCapacity } from '../../../drive/battery.ts';
import type { ForwardCraft } from '../../../flight/forward/forwardTrim.ts';
import { rangeAt } from '../../../flight/forward/rangeAt.ts';
import { flyMission } from '../../../flight/mission/flyMission.ts';
import type { MissionFlown } from '../../../flight/mission/types.ts';
import type { FlightModel, Levers } from '../../../flight/types.ts';
import type { WakeTable } from '../../../flight/wakes/wakeTable.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';
import type { Numbers } from '../banded.ts';
import type { CraftDrag } from '../dragOf.ts';
import type { MissionSpeeds, NamedLeg } from './usualLegs.ts';

/** Turn back when this share of the charge is used (common practice, no source). */
export const TURN_BACK = 0.4;

export interface MissionAnswers {
  readonly flown: MissionFlown;
  /** Drawn from the chemistry, landed or not [J]. */
  readonly energy: number;
  readonly figures: Numbers;
}

/**
 * Legs flown, and what is told of them: of a flight that ends in the air other figures than of one that lands, since its charge
 * left is no reserve and its lowest voltage is where it ended.
 */
export function missionAnswers(
  model: FlightModel,
  levers: Levers,
  drag: CraftDrag,
  legs: readonly NamedLeg[],
  wakes?: WakeTable,
): Outcome<MissionAnswers> {
  const found = flyMission(
    model,
    levers,
    drag.bluff,
    legs.map(({ leg }) => leg),
    { bars: drag.bars, dragCentre: drag.centre, ...(wakes === undefined ? {} : { wakes }) },
  );
  if (!found.ok) return found;
  const { pack } = model;
  const flown = found.value;
  const usable = (usableCapacity(pack, model.packTemperature) / pack.capacity) * levers.packCapacityScale;
  const energy = packEnergy(pack, flown.chargeLeft) * usable;
  const hottest = Math.max(...flown.legs.map(({ hottestWinding }) => hottestWinding));
  if (flown.end !== 'landed') {
    return solved({
      flown,
      energy,
      figures: {
        'mission-ends-after': flown.duration,
        'mission-charge-stranded': flown.chargeLeft,
        'mission-winding-temperature': hottest,
      },
    });
  }
  const lowest = Math.min(...flown.legs.map(({ lowestVoltage }) => lowestVoltage));
  return solved({
    flown,
    energy,
    figures: {
      'mission-time': flown.duration,
      'mission-charge-left': flown.chargeLeft,
      'mission-energy': energy,
      'mission-cell-voltage': lowest / pack.series,
      'mission-winding-temperature': hottest,
    },
  });
}

/** How far out it is, against the wind, when it is time to turn back [m]. */
export function turnBackDistance(craft: ForwardCraft, { out, wind }: MissionSpeeds): number | undefined {
  const flown = rangeAt(craft, out, wind, 1 - TURN_BACK);
  return flown.ok && flown.value.end === 'landing reserve' ? flown.value.distance : undefined;
}

/** Charge used when it flies out with the wind until it is time to turn back, and home against it, 1 all of it. */
export function usedDownwind(craft: ForwardCraft, { out, home, wind }: MissionSpeeds): number | undefined {
  const away = rangeAt(craft, home, -wind, 1 - TURN_BACK);
  const back = rangeAt(craft, out, wind, 1 - TURN_BACK);
  if (!away.ok || !back.ok || !(back.value.distance > 0)) return undefined;
  return TURN_BACK * (1 + away.value.distance / back.value.distance);
}
