import { forwardPoint } from '../../../flight/forward/forwardPoint.ts';
import type { ForwardCraft } from '../../../flight/forward/forwardTrim.ts';
import { noSolution, type Outcome, solved } from '../../../numerics/outcome.ts';
import { withUnit } from '../../../units/formatQuantity.ts';
import { CRUISE_CHARGE } from '../level/levelNominal.ts';
import { bestSpeed } from '../level/onCurve.ts';
import type { MissionSpeeds } from './usualLegs.ts';

/** Speeds tried [m/s]; missions are not flown faster. */
const FASTEST = 36;
const STEPS = 12;

/** Airspeeds that get furthest against the wind and with it, from a coarse curve. */
export function missionSpeeds(craft: ForwardCraft, wind: number): Outcome<MissionSpeeds> {
  const speeds: number[] = [];
  const currents: number[] = [];
  for (let k = 0; k <= STEPS; k++) {
    const at = forwardPoint(craft, (FASTEST * k) / STEPS, CRUISE_CHARGE);
    if (!at.ok) break;
    speeds.push(at.value.speed);
    currents.push(at.value.point.packCurrent);
  }
  const out = bestSpeed(speeds, currents, wind);
  const home = bestSpeed(speeds, currents, -wind);
  return out === undefined || home === undefined
    ? noSolution(`it makes no way against ${withUnit(wind.toFixed(1), 'm/s')} of wind`)
    : solved({ out, home, wind });
}
