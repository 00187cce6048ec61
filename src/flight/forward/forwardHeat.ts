import { type HeatLoad, settledTemperatures, timeToLimit } from '../../drive/motorHeat.ts';
import { insideOf, type StationHeat } from '../heat.ts';
import type { FlightModel, Levers, OperatingPoint } from '../types.ts';
import type { ForwardTrim } from './forwardTrim.ts';

/**
 * Heat of every motor held in level or climbing flight, from the air's temperature. The air over a motor is its propeller's induced
 * flow and the flight's own together; `heatAt` is its neighbour for hover and climb.
 */
export function forwardHeat(
  model: FlightModel,
  levers: Levers,
  trim: ForwardTrim,
  point: OperatingPoint,
): readonly StationHeat[] {
  const air = model.airTemperature;
  return model.stations.map((station, i): StationHeat => {
    const load = forwardHeatLoad(model, levers, trim, point, i);
    const settled = settledTemperatures(station.motor, load);
    const time = timeToLimit(station.motor, load, { winding: air, case: air });
    return settled.ok ? { settled: settled.value, timeToLimit: time } : { timeToLimit: time };
  });
}

/** What heats and cools the motor of one station there. */
export function forwardHeatLoad(
  model: FlightModel,
  levers: Levers,
  trim: ForwardTrim,
  point: OperatingPoint,
  i: number,
): HeatLoad {
  const at = point.stations[i];
  const station = model.stations[i];
  const induced = trim.rotors[i]?.inducedSpeed ?? 0;
  return {
    current: at?.motorCurrent ?? 0,
    resistanceScale: levers.windingResistanceScale,
    ironLoss: at?.ironLoss ?? 0,
    washSpeed: Math.hypot(
      // The wakes of others are in it: the lower motor of a coaxial pair is blown on by both.
      (trim.load.axialSpeed[i] as number) + induced,
      trim.speed * Math.cos(trim.tilt) - trim.climb * Math.sin(trim.tilt),
    ),
    airTemperature: model.airTemperature,
    coolingScale: levers.coolingScale,
    ...(at === undefined || station === undefined ? {} : insideOf(station, levers, at)),
    heatCapacityScale: levers.heatCapacityScale,
  };
}
