import type { StationReport } from '../../assess/assessment.ts';
import type { Flight } from '../../assess/parts/types.ts';
import type { Craft } from '../../build/craft.ts';
import { hoverStory } from '../../flight/hoverStory.ts';
import { pointForThrottles, pointForThrusts } from '../../flight/operatingPoint.ts';
import { styles } from '../../flight/styles.ts';
import { type FlightModel, neutralLevers } from '../../flight/types.ts';
import type { Curves, DischargePoint, StyleMinutes, ThrottlePoint } from './protocol.ts';

/** A pack just under way, as the thrust-to-weight measure takes it. */
const UNDER_WAY = 0.9;
const THROTTLE_STEPS = 20;
const CHARGE_STEPS = 15;

/** The hover that has settled the pack, as the punch out of a hover is computed from. */
const HALF = 0.5;

/** Operating points over throttle and over charge, for the charts of lift, heat and flight. */
export function curvesOf(craft: Craft, flight: Flight, stations: readonly StationReport[]): Curves {
  const { model } = flight;
  const { continuousCurrent, burstCurrent } = craft.controllerModel;
  const thrusts = stations.map((station) => station.hover?.thrust ?? 0);
  const hover = pointForThrusts(model, neutralLevers, thrusts, { charge: HALF });
  const settledCurrent = hover.ok ? hover.value.packCurrent : 0;
  return {
    throttle: overThrottle(model, settledCurrent),
    discharge: overCharge(model, thrusts, settledCurrent),
    continuousCurrent,
    burstCurrent,
    styles: minutesByStyle(flight),
  };
}

const GENTLEST_FIRST = [styles.filming, styles.novice, styles.cruise, styles.freestyle, styles.race];

function minutesByStyle({ model, style, told }: Flight): readonly StyleMinutes[] {
  const story = hoverStory(model, neutralLevers, GENTLEST_FIRST, told.story);
  if (!story.ok) return [];
  return story.value.styles.map(({ style: name, duration }) => ({
    style: name,
    duration,
    asked: name === style.name,
  }));
}

function overThrottle(model: FlightModel, settledCurrent: number): readonly ThrottlePoint[] {
  const weight = model.mass * model.gravity;
  return Array.from({ length: THROTTLE_STEPS + 1 }, (_, i) => i / THROTTLE_STEPS).flatMap((throttle) => {
    const throttles = model.stations.map(() => throttle);
    const point = pointForThrottles(model, neutralLevers, throttles, { charge: UNDER_WAY, settledCurrent });
    if (!point.ok) return [];
    const motorCurrent = Math.max(...point.value.stations.map((station) => station.motorCurrent));
    return [{ throttle, liftToWeight: point.value.netThrust / weight, motorCurrent }];
  });
}

function overCharge(
  model: FlightModel,
  thrusts: readonly number[],
  settledCurrent: number,
): readonly DischargePoint[] {
  const full = thrusts.map(() => 1);
  const cells = model.pack.series;
  return Array.from({ length: CHARGE_STEPS + 1 }, (_, i) => {
    const used = (i / CHARGE_STEPS) * (1 - model.landingReserve);
    const moment = { charge: 1 - used, settledCurrent };
    const hover = pointForThrusts(model, neutralLevers, thrusts, moment);
    const punch = pointForThrottles(model, neutralLevers, full, moment);
    return {
      used,
      ...(hover.ok ? { hover: hover.value.packVoltage / cells } : {}),
      ...(punch.ok ? { fullThrottle: punch.value.packVoltage / cells } : {}),
    };
  });
}
