import { type MotorTemperatures, temperaturesAfter } from '../../drive/motorHeat.ts';
import { forwardHeatLoad } from '../forward/forwardHeat.ts';
import { heatLoadOf } from '../heat.ts';
import type { FlightModel, Levers, OperatingPoint } from '../types.ts';
import type { LegLoad } from './legLoad.ts';

/**
 * Every motor's temperatures after a while of one leg, current and speed held.
 *
 * @param before one a station
 * @param duration [s]
 */
export function warmed(
  model: FlightModel,
  levers: Levers,
  { trim, climb }: LegLoad,
  point: OperatingPoint,
  before: readonly MotorTemperatures[],
  duration: number,
): readonly MotorTemperatures[] {
  return model.stations.map((station, i): MotorTemperatures => {
    const start = before[i] ?? { winding: model.airTemperature, case: model.airTemperature };
    const load =
      trim === undefined
        ? heatLoadOf(model, levers, station, point, i, climb)
        : forwardHeatLoad(model, levers, trim, point, i);
    return temperaturesAfter(station.motor, load, start, duration);
  });
}
