import { standardAtmosphere } from '../../air/standardAtmosphere.ts';
import { noLoadCurrentAt } from '../../drive/motor.ts';
import type { MotorModel } from '../../drive/types.ts';
import { STAND_SPREAD } from '../../rotor/spreads.ts';
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
export const STAND_RESISTANCE = 6e-3;
/** Share of the supply's power that the stand's controller loses by switching; common practice, no source. */
export const STAND_SWITCHING = 0.015;
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

/** What a motor's own numbers may be off, one standard deviation over the value. */
export interface MotorDoubt {
  readonly resistance: number;
  readonly noLoadCurrent: number;
  readonly resistanceRise: number;
}

/** Of what a table prints, one standard deviation over the value (common practice, no source). */
const PRINTED = { voltage: 0.015, current: 0.03 };

/**
 * Static points of the propeller that a table was taken with, for `fitBlade`: shaft power is what the supply
 * gave less every loss of the motor, whose current follows from the balance of powers, at any throttle.
 * Each tells how well its power is known: what is printed and what is reckoned off it, worst where little is left.
 * Lines whose losses exceed what was supplied are left out.
 */
export function propellerPoints(
  model: MotorModel,
  table: Table,
  doubt: MotorDoubt,
): readonly MeasuredPoint[] {
  const air = standardAtmosphere({ height: 0 });
  return fullLines(table).flatMap(({ angularSpeed, voltage, current, thrust }): readonly MeasuredPoint[] => {
    const power = shaftPower(model, angularSpeed, voltage * current);
    if (!(power > 0 && thrust > 0)) return [];
    const rise = model.resistanceRise ?? 0;
    const others = [
      shaftPower(model, angularSpeed, voltage * current * (1 + PRINTED.voltage)),
      shaftPower(model, angularSpeed, voltage * current * (1 + PRINTED.current)),
      shaftPower(
        { ...model, resistance: model.resistance * (1 + doubt.resistance) },
        angularSpeed,
        voltage * current,
      ),
      shaftPower(
        { ...model, resistanceRise: rise * (1 + doubt.resistanceRise) },
        angularSpeed,
        voltage * current,
      ),
      shaftPower(
        { ...model, noLoadCurrent: model.noLoadCurrent * (1 + doubt.noLoadCurrent) },
        angularSpeed,
        voltage * current,
      ),
    ];
    const powerSpread = Math.hypot(STAND_SPREAD, ...others.map((other) => other / power - 1));
    return [{ angularSpeed, thrust, power, powerSpread, air }];
  });
}

/** At the shaft [W] from what the supply gave [W]. */
function shaftPower(model: MotorModel, angularSpeed: number, drawn: number): number {
  const supplied = drawn * (1 - STAND_SWITCHING);
  const back = angularSpeed / model.speedConstant;
  const resistance = model.resistance * (1 + (model.resistanceRise ?? 0) * angularSpeed) + STAND_RESISTANCE;
  const motorCurrent = (Math.sqrt(back * back + 4 * resistance * supplied) - back) / (2 * resistance);
  return (motorCurrent - noLoadCurrentAt(model, angularSpeed)) * back;
}
