import { fitMotor, type MotorFit } from '../../drive/fitMotor.ts';
import type { MotorReading } from '../../drive/types.ts';
import type { Trusted } from '../../units/trusted.ts';
import type { Given } from '../schema/fields.ts';
import type { PartOf } from '../schema/part.ts';
import type { MotorFacts } from './motorFacts.ts';

/** Of what a maker tells without a spread: as in `unknownsOf` (common practice, no source). */
const TOLD = { speedConstant: 0.03, resistance: 0.12, noLoadCurrent: 0.15 };

/**
 * Speed constant, winding resistance and idle current of a motor, weighed between what the part tells and the
 * full-throttle lines of a thrust table, where the duty is known to be 1. Undefined without such a line.
 *
 * Without torque the idle current stays what it was, and its trust says so (`fitMotor`).
 */
export function fitFromTable(
  part: PartOf<'motor'>,
  { guess, model }: MotorFacts,
  table: PartOf<'motor'>['thrustTables'][number],
): MotorFit | undefined {
  const readings = table.points.flatMap(({ throttle, voltage, current, angularSpeed }): MotorReading[] =>
    throttle !== undefined && throttle >= 0.99 && voltage && current && angularSpeed
      ? [{ voltage: voltage.value, current: current.value, angularSpeed: angularSpeed.value }]
      : [],
  );
  if (readings.length === 0) return undefined;
  const prior = {
    ...guess,
    model,
    speedConstant: told(part, part.speedConstant, TOLD.speedConstant, guess.speedConstant),
    resistance: told(part, part.windingResistance, TOLD.resistance, guess.resistance),
    noLoadCurrent: told(part, part.noLoadCurrent, TOLD.noLoadCurrent, guess.noLoadCurrent),
  };
  return fitMotor(prior, readings, part.trust === 'measured' ? 'measured' : 'maker');
}

function told(part: PartOf<'motor'>, given: Given | undefined, usual: number, guess: Trusted): Trusted {
  if (given === undefined) return guess;
  return {
    value: given.value,
    deviation: given.deviation ?? usual * given.value,
    trust: given.trust ?? part.trust,
    source: given.source ?? part.source,
  };
}
