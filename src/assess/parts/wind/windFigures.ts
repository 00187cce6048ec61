import { turbulenceOfDay } from '../../../air/turbulenceOfDay.ts';
import type { ForwardCraft, ForwardTrim } from '../../../flight/forward/forwardTrim.ts';
import { forwardTrim } from '../../../flight/forward/forwardTrim.ts';
import { refeed } from '../../../flight/forward/refeed.ts';
import { gustCraft } from '../../../flight/gustCraft.ts';
import { gustJolt } from '../../../flight/gustJolt.ts';
import { holdInGusts, plainHold } from '../../../flight/gustResponse.ts';
import type { Numbers } from '../banded.ts';

/** Briefs tell the wind at 10 m over open grass; the craft is taken to hang there. */
const HEIGHT = 10;
const GRASS = 0.03;
/** The gust that comes by every few minutes, in standard deviations of the turbulence (common practice, no source). */
const GUST = 3;
/** Before pilot or controller has leant the craft against it [s] (common practice, no source). */
const REACTION = 0.3;
const HALF_CHARGE = 0.5;

/** Station holding, a sharp gust and a stretch of rough air, in a mean wind [m/s]. */
export function windFigures(craft: ForwardCraft, wind: number): Numbers {
  return { ...stationFigures(craft, undefined, wind), ...gustFigures(craft, wind) };
}

/**
 * Holding station is level flight at the speed of the wind.
 *
 * @param known a trim in that wind to be fed anew; trimmed when absent
 */
export function stationFigures(craft: ForwardCraft, known: ForwardTrim | undefined, wind: number): Numbers {
  const found = known === undefined ? forwardTrim(craft, wind) : undefined;
  const trim = known ?? (found?.ok ? found.value : undefined);
  const fed = trim && refeed(trim, craft.circuit, HALF_CHARGE);
  if (fed === undefined || fed.largestDuty > 1) return {};
  const hardest = fed.point.stations.reduce((most, { throttle }) => Math.max(most, throttle), 0);
  return { 'wind-tilt': trim?.tilt, 'wind-throttle': hardest };
}

/** What the air does to it that no battery has a part in. */
export function gustFigures(craft: ForwardCraft, wind: number): Numbers {
  if (!(wind > 0)) return {};
  const found = gustCraft(craft, craft.model.gravity);
  if (!found.ok) return {};
  const { turbulence, ...gust } = dayGust(wind);
  const jolt = gustJolt(found.value, { wind, ...gust });
  const hold = holdInGusts({ ...found.value, wind, turbulence, controller: plainHold });
  const along = hold.ok ? hold.value.longitudinal : undefined;
  return {
    'gust-jolt': Math.hypot(jolt.push, jolt.heave),
    'gust-push': jolt.drift,
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
