import { turbulenceOfDay } from '../../../air/turbulenceOfDay.ts';
import type { ForwardCraft, ForwardTrim } from '../../../flight/forward/forwardTrim.ts';
import { type Fed, refeed } from '../../../flight/forward/refeed.ts';
import { gustCraft } from '../../../flight/gustCraft.ts';
import { gustJolt, type Jolt } from '../../../flight/gustJolt.ts';
import { holdInGusts, plainHold } from '../../../flight/gustResponse.ts';
import { noSolution, type Outcome } from '../../../numerics/outcome.ts';
import type { Numbers } from '../banded.ts';

/** Briefs tell the wind at 10 m over open grass; the craft is taken to hang there. */
const HEIGHT = 10;
const GRASS = 0.03;
/** The gust that comes by every few minutes, in standard deviations of the turbulence (common practice, no source). */
const GUST = 3;
/** Before pilot or controller has leant the craft against it [s] (common practice, no source). */
const REACTION = 0.3;
const HALF_CHARGE = 0.5;

/**
 * Holding station is level flight at the speed of the wind.
 *
 * @param trim in that wind; none where there is no such flight
 */
export function stationFigures(craft: ForwardCraft, trim: ForwardTrim | undefined): Numbers {
  const fed = trim && fedIn(craft, trim);
  if (fed === undefined) return {};
  const hardest = fed.point.stations.reduce((most, { throttle }) => Math.max(most, throttle), 0);
  return { 'wind-tilt': trim?.tilt, 'wind-throttle': hardest };
}

/** Undefined where the pack cannot hold it there. */
function fedIn(craft: ForwardCraft, trim: ForwardTrim): Fed | undefined {
  const fed = refeed(trim, craft.circuit, HALF_CHARGE);
  return fed === undefined || fed.largestDuty > 1 ? undefined : fed;
}

/** What the sharp gust of the day does to it, or why that is not known. @param trim in the wind [m/s] */
export function joltOfDay(craft: ForwardCraft, trim: ForwardTrim, wind: number): Outcome<Jolt> {
  return fedIn(craft, trim) === undefined
    ? noSolution('at half charge the pack cannot turn the motors as fast as that asks')
    : gustJolt(craft, trim, dayGust(wind));
}

/**
 * The sharp gust and a stretch of rough air, in a mean wind [m/s].
 *
 * @param trim in that wind; without one that the pack holds the sharp gust stays untold
 */
export function gustFigures(craft: ForwardCraft, trim: ForwardTrim | undefined, wind: number): Numbers {
  if (!(wind > 0)) return {};
  const struck = trim && joltOfDay(craft, trim, wind);
  const jolt = struck?.ok ? struck.value : undefined;
  return {
    'gust-jolt': jolt && Math.hypot(jolt.push, jolt.heave),
    'gust-push': jolt?.drift,
    ...roughFigures(craft, wind),
  };
}

function roughFigures(craft: ForwardCraft, wind: number): Numbers {
  const found = gustCraft(craft, craft.model.gravity);
  if (!found.ok) return {};
  const { turbulence } = dayGust(wind);
  const hold = holdInGusts({ ...found.value, wind, turbulence, controller: plainHold });
  const along = hold.ok ? hold.value.longitudinal : undefined;
  return {
    'hold-sway': along?.place,
    'hold-speed': along?.speed,
    'hold-tilt': along?.answer,
  };
}

/** The sharp gust that is taken, the time before it is answered, and the turbulence it comes from. */
export function dayGust(wind: number) {
  const { turbulence } = turbulenceOfDay({ speed: wind, height: 10, roughnessLength: GRASS }, HEIGHT);
  return {
    turbulence,
    along: GUST * turbulence.intensity.longitudinal,
    upward: GUST * turbulence.intensity.vertical,
    reactionTime: REACTION,
  };
}

/** Speed of that gust along the wind [m/s]. */
export const gustOfDay = (wind: number): number => dayGust(wind).along;
