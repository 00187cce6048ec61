import { fitMotor, type MotorFit } from '../../drive/fitMotor.ts';
import { ELECTRICAL_LAG } from '../../drive/motorFromNameplate.ts';
import type { MotorReading } from '../../drive/types.ts';
import type { Trusted } from '../../units/trusted.ts';
import type { Given } from '../schema/fields.ts';
import type { PartOf } from '../schema/part.ts';
import type { MotorFacts } from './motorFacts.ts';
import { STAND_RESISTANCE } from './motorTable.ts';

/** Of what a maker tells without a spread: as in `unknownsOf` (common practice, no source). */
const TOLD = { speedConstant: 0.03, resistance: 0.12, noLoadCurrent: 0.15 };

/**
 * Speed constant, winding resistance, idle current and losses at speed of a motor, weighed between what the part tells and
 * the full-throttle lines of a thrust table, where the duty is known to be 1; the stand's own resistance taken off.
 * Undefined without such a line.
 *
 * What the lines don't tell stays what it was, and says so (`fitMotor`).
 */
export function fitFromTable(
  part: PartOf<'motor'>,
  { guess, model }: MotorFacts,
  table: PartOf<'motor'>['thrustTables'][number],
): MotorFit | undefined {
  const readings = table.points.flatMap(({ throttle, voltage, current, angularSpeed }): MotorReading[] => {
    if (throttle === undefined || throttle < 0.99 || !voltage || !current || !angularSpeed) return [];
    const atMotor = voltage.value - STAND_RESISTANCE * current.value;
    return atMotor > 0
      ? [{ voltage: atMotor, current: current.value, angularSpeed: angularSpeed.value }]
      : [];
  });
  if (readings.length === 0) return undefined;
  // The usual rise and not the one that these very lines gave: they would be counted twice.
  const rise = (part.poles / 2) * ELECTRICAL_LAG;
  const scatter = guess.resistanceRise.deviation / guess.resistanceRise.value;
  const prior = {
    ...guess,
    model,
    speedConstant: told(part, part.speedConstant, TOLD.speedConstant, guess.speedConstant),
    resistance: told(part, part.windingResistance, TOLD.resistance, guess.resistance),
    noLoadCurrent: told(part, part.noLoadCurrent, TOLD.noLoadCurrent, guess.noLoadCurrent),
    resistanceRise: { ...guess.resistanceRise, value: rise, deviation: scatter * rise },
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
