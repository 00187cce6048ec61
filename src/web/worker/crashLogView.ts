import { inBriefCurrency } from '../../assess/money/price.ts';
import { forecastOf } from '../../assess/parts/knocks/knocksPart.ts';
import { crashLogOf } from '../../build/crashLogOf.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { Shelf } from '../../build/shelf.ts';
import { crashesOver } from '../../knocks/crashCount.ts';
import { judgeCrashLog } from '../../knocks/crashLog.ts';
import type { CrashLogAsk, CrashLogView } from './crashLogProtocol.ts';

/** Holds a pilot's own log against the forecast of a build over as many flights. */
export function crashLogView({ build, brief, notes }: CrashLogAsk, shelf: Shelf): CrashLogView {
  const craft = resolveBuild(build, shelf);
  if (!craft.ok) return { ok: false, reason: 'the build makes no aircraft as it is' };
  const found = forecastOf(craft.value, { ...brief, flightsPlanned: notes.flights });
  if (!found.ok) return found;
  const { plan, forecast } = found.value;
  const log = crashLogOf(notes, (money) => inBriefCurrency(money, brief));
  const { curve } = forecast;
  try {
    return {
      ok: true,
      against: judgeCrashLog(plan.learning, log, forecast),
      histories: forecast.histories,
      crashes: crashesOver(plan.learning, notes.flights),
      money: { spread: forecast.money, mean: [...curve.mean], p10: [...curve.p10], p90: [...curve.p90] },
      parts: Object.fromEntries(forecast.parts.map(({ id, broken }) => [id, broken])),
      unpriced: notes.money !== undefined && log.money === undefined,
    };
  } catch (error) {
    // The flights of the log do not go together: told by the judge itself.
    if (error instanceof RangeError) return { ok: false, reason: error.message };
    throw error;
  }
}
