import { standardAtmosphere } from '../../air/standardAtmosphere.ts';
import { noLoadCurrentAt } from '../../drive/motor.ts';
import type { MotorModel } from '../../drive/types.ts';
import type { MeasuredPoint } from '../../rotor/types.ts';
import type { PartOf } from '../schema/part.ts';

type Table = PartOf<'motor'>['thrustTables'][number];

/** A line of a thrust table that tells speed, volts and amperes. */
interface FullLine {
  readonly angularSpeed: number;
  readonly voltage: number;
  readonly current: number;
  /** [N] */
  readonly thrust: number;
  readonly throttle: number | undefined;
}

/** Controller and its wires on a maker's stand [ohm]; common practice, no source. */
const STAND_RESISTANCE = 6e-3;
/** Share of the supply's power that the stand's controller loses by switching; common practice, no source. */
const STAND_SWITCHING = 0.015;
/** A table outside this many times the usual rise is of something else, or is read wrongly. */
const MOST_RISE = 4;

function fullLines(table: Table): readonly FullLine[] {
  return table.points.flatMap(({ angularSpeed, voltage, current, thrust, throttle }) =>
    angularSpeed && voltage && current
      ? [
          {
            angularSpeed: angularSpeed.value,
            voltage: voltage.value,
            current: current.value,
            thrust: thrust.value,
            throttle,
          },
        ]
      : [],
  );
}

/**
 * How a motor's resistance grows with speed [s/rad], from the full-throttle lines of its tables, where the duty
 * is known to be 1: (V - Omega / K_V) / i = R (1 + rise Omega) + the stand's. Undefined without such a line, or
 * where the lines contradict the motor's own numbers.
 */
export function riseFromTables(model: MotorModel, tables: readonly Table[]): number | undefined {
  const usual = model.resistanceRise ?? 0;
  const found = tables.flatMap(fullLines).flatMap((line) => {
    if (line.throttle === undefined || line.throttle < 0.99) return [];
    const { angularSpeed, voltage, current } = line;
    const effective = (voltage - angularSpeed / model.speedConstant) / current - STAND_RESISTANCE;
    return [(effective / model.resistance - 1) / angularSpeed];
  });
  if (found.length === 0) return undefined;
  const mean = found.reduce((sum, rise) => sum + rise, 0) / found.length;
  return mean >= 0 && mean <= MOST_RISE * usual ? mean : undefined;
}

/**
 * Static points of the propeller that a table was taken with, for `fitBlade`: shaft power is what the supply
 * gave less every loss of the motor, whose current follows from the balance of powers, at any throttle.
 * Lines whose losses exceed what was supplied are left out.
 */
export function propellerPoints(model: MotorModel, table: Table): readonly MeasuredPoint[] {
  const air = standardAtmosphere({ height: 0 });
  return fullLines(table).flatMap(({ angularSpeed, voltage, current, thrust }): readonly MeasuredPoint[] => {
    const supplied = voltage * current * (1 - STAND_SWITCHING);
    const back = angularSpeed / model.speedConstant;
    const resistance = model.resistance * (1 + (model.resistanceRise ?? 0) * angularSpeed) + STAND_RESISTANCE;
    const motorCurrent = (Math.sqrt(back * back + 4 * resistance * supplied) - back) / (2 * resistance);
    const power = (motorCurrent - noLoadCurrentAt(model, angularSpeed)) * back;
    return power > 0 && thrust > 0 ? [{ angularSpeed, thrust, power, air }] : [];
  });
}
