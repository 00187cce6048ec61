import type { StationReport } from '../../assess/types.ts';
import type { Craft } from '../../build/craft.ts';
import { pointForThrottles, pointForThrusts } from '../../flight/operatingPoint.ts';
import { type FlightModel, neutralLevers } from '../../flight/types.ts';
import type { Curves, DischargePoint, ThrottlePoint } from './protocol.ts';

/** A pack just under way, as the thrust-to-weight measure takes it. */
const UNDER_WAY = 0.9;
const THROTTLE_STEPS = 20;
const CHARGE_STEPS = 15;

/** Operating points over throttle and over charge, for the charts of lift, heat and flight. */
export function curvesOf(craft: Craft, model: FlightModel, stations: readonly StationReport[]): Curves {
  const { continuousCurrent, burstCurrent } = craft.controllerModel;
  return {
    throttle: overThrottle(model),
    discharge: overCharge(model, stations),
    continuousCurrent,
    burstCurrent,
  };
}

function overThrottle(model: FlightModel): readonly ThrottlePoint[] {
  const weight = model.mass * model.gravity;
  return Array.from({ length: THROTTLE_STEPS + 1 }, (_, i) => i / THROTTLE_STEPS).flatMap((throttle) => {
    const point = pointForThrottles(
      model,
      neutralLevers,
      model.stations.map(() => throttle),
      { charge: UNDER_WAY },
    );
    if (!point.ok) return [];
    const motorCurrent = Math.max(...point.value.stations.map((station) => station.motorCurrent));
    return [{ throttle, liftToWeight: point.value.netThrust / weight, motorCurrent }];
  });
}

function overCharge(model: FlightModel, stations: readonly StationReport[]): readonly DischargePoint[] {
  const thrusts = stations.map((station) => station.hover?.thrust ?? 0);
  const full = stations.map(() => 1);
  const cells = model.pack.series;
  return Array.from({ length: CHARGE_STEPS + 1 }, (_, i) => {
    const used = (i / CHARGE_STEPS) * (1 - model.landingReserve);
    const moment = { charge: 1 - used };
    const hover = pointForThrusts(model, neutralLevers, thrusts, moment);
    const punch = pointForThrottles(model, neutralLevers, full, moment);
    return {
      used,
      ...(hover.ok ? { hover: hover.value.packVoltage / cells } : {}),
      ...(punch.ok ? { fullThrottle: punch.value.packVoltage / cells } : {}),
    };
  });
}
