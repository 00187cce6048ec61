import { WINDING_BEARS } from '../drive/insulation.ts';
import {
  type HeatLoad,
  type MotorTemperatures,
  settledTemperatures,
  timeToLimit,
} from '../drive/motorHeat.ts';
import type { FlightModel, Levers, OperatingPoint, Station, StationPoint } from './types.ts';
import { COAXIAL_WAKE, inducedSpeed } from './wake.ts';

/** One motor's heat at a steady operating point. */
export interface StationHeat {
  /** Where it would settle; absent when copper loss outgrows the cooling. */
  readonly settled?: MotorTemperatures;
  /** Until winding or case reaches its limit [s], from the start given; Infinity when it never does. */
  readonly timeToLimit: number;
}

/** Where a motor settles as far as its winding bears it; absent where it never settles or is burnt before. */
export function borne(heat: StationHeat | undefined): MotorTemperatures | undefined {
  const settled = heat?.settled;
  return settled !== undefined && settled.winding <= WINDING_BEARS ? settled : undefined;
}

/**
 * Heat of every motor held at an operating point, in the wash of its own propeller.
 *
 * @param start temperatures at the beginning, one a station; the air's when absent
 * @param climb axial speed of the aircraft [m/s], adds to the wash
 */
export function heatAt(
  model: FlightModel,
  levers: Levers,
  point: OperatingPoint,
  start?: readonly StationHeat[],
  climb = 0,
): readonly StationHeat[] {
  const known: StationHeat[] = [];
  point.stations.forEach((station, i) => {
    const place = model.stations[i];
    if (place === undefined) return;
    const twin = point.stations.findIndex(
      (other, k) =>
        k < i &&
        model.stations[k]?.motor === place.motor &&
        model.stations[k]?.inWakeOf === place.inWakeOf &&
        other.motorCurrent === station.motorCurrent &&
        other.thrust === station.thrust,
    );
    const same = known[twin];
    known.push(
      same ??
        heatOf(place, heatLoadOf(model, levers, place, point, i, climb), model.airTemperature, start?.[i]),
    );
  });
  return known;
}

/** What heats and cools one motor at an operating point, in the wash of its own propeller; `forwardHeatLoad` in level flight. */
export function heatLoadOf(
  model: FlightModel,
  levers: Levers,
  place: Station,
  { stations }: OperatingPoint,
  i: number,
  climb: number,
): HeatLoad {
  const point = stations[i] as StationPoint;
  const disc = (Math.PI / 4) * place.propDiameter ** 2;
  // The lower motor of a coaxial pair is blown on by both.
  const above = place.inWakeOf === undefined ? undefined : stations[place.inWakeOf];
  const through =
    climb +
    (above === undefined ? 0 : COAXIAL_WAKE * inducedSpeed(above.thrust, climb, model.airDensity, disc));
  return {
    current: point.motorCurrent,
    resistanceScale: levers.windingResistanceScale,
    ironLoss: point.ironLoss,
    washSpeed: through + inducedSpeed(point.thrust, through, model.airDensity, disc),
    airTemperature: model.airTemperature,
    coolingScale: levers.coolingScale,
    ...insideOf(place, levers, point),
    heatCapacityScale: levers.heatCapacityScale,
  };
}

/** What levers say of the way of heat inside a motor, for its load. */
export function insideOf(
  { motor }: Station,
  levers: Levers,
  point: StationPoint,
): Pick<HeatLoad, 'windingLoss' | 'contactScale'> {
  const share = Math.min(Math.max(levers.speedLossPlaceScale - 1, 0), 1);
  // Copper loss over the winding's resistance, times what speed adds to that.
  const speedLoss =
    point.copperLoss * (motor.resistanceRise ?? 0) * levers.runningResistanceScale * point.angularSpeed;
  return { windingLoss: share * speedLoss, contactScale: levers.windingContactScale };
}

function heatOf(place: Station, load: HeatLoad, air: number, start?: StationHeat): StationHeat {
  const settled = settledTemperatures(place.motor, load);
  const from = start?.settled ?? { winding: air, case: air };
  const time = timeToLimit(place.motor, load, from);
  return settled.ok ? { settled: settled.value, timeToLimit: time } : { timeToLimit: time };
}
