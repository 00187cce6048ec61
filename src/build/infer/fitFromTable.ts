import { fitMotor, type MotorFit } from '../../drive/fitMotor.ts';
import { ELECTRICAL_LAG } from '../../drive/motorFromNameplate.ts';
import type { MotorReading } from '../../drive/types.ts';
import type { PartOf } from '../schema/part.ts';
import type { MotorFacts } from './motorFacts.ts';
import { motorKnown } from './motorKnown.ts';
import { STAND_RESISTANCE } from './motorTable.ts';

/**
 * Speed constant, winding resistance, idle current and losses at speed of a motor, weighed between what the part tells and
 * the full-throttle lines of a thrust table, where the duty is known to be 1; the stand's own resistance taken off.
 * Undefined without such a line.
 *
 * What the lines don't tell stays what it was, and says so (`fitMotor`).
 */
export function fitFromTable(
  part: PartOf<'motor'>,
  facts: MotorFacts,
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
  const { guess, model } = facts;
  const rise = (part.poles / 2) * ELECTRICAL_LAG;
  const scatter = guess.resistanceRise.deviation / guess.resistanceRise.value;
  const prior = {
    ...guess,
    ...motorKnown(part, facts),
    model,
    resistanceRise: { ...guess.resistanceRise, value: rise, deviation: scatter * rise },
  };
  return fitMotor(prior, readings, part.trust === 'measured' ? 'measured' : 'maker');
}
