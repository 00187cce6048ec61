import type { FlightModel } from '../../../flight/types.ts';
import { type Matrix3, scale3 } from '../../../numerics/vector3.ts';

/** Parts as even blocks (common practice, no source). */
export const INERTIA_SPREAD = 0.06;
/** Bells and propellers by what they weigh and how wide they are (docs/method/build.md). */
export const TURNING_SPREAD = 0.2;

/** A model with all that turns so many times as heavy to turn. */
export const turningAs = (model: FlightModel, by: number): FlightModel =>
  by === 1
    ? model
    : {
        ...model,
        stations: model.stations.map((each) => ({ ...each, rotatingInertia: each.rotatingInertia * by })),
      };

/** A tensor so many times as large. */
export const scaled = (m: Matrix3, by: number): Matrix3 => [
  scale3(m[0], by),
  scale3(m[1], by),
  scale3(m[2], by),
];
