import type { Trust, Trusted } from '../../units/trusted.ts';
import type { Given } from '../schema/fields.ts';
import type { PartOf } from '../schema/part.ts';
import type { MotorFacts } from './motorFacts.ts';

/** What is known of the four numbers that a motor's electrical model stands on. */
export interface MotorKnown {
  readonly speedConstant: Trusted;
  readonly resistance: Trusted;
  readonly noLoadCurrent: Trusted;
  readonly resistanceRise: Trusted;
}

/** One standard deviation, relative, of what is told without a spread (common practice, no source). */
const TOLD: Readonly<Record<string, Readonly<Record<Trust, number>>>> = {
  speedConstant: { maker: 0.03, measured: 0.01, inferred: 0.05 },
  windingResistance: { maker: 0.12, measured: 0.03, inferred: 0.3 },
  noLoadCurrent: { maker: 0.15, measured: 0.05, inferred: 0.3 },
};
/** Of the losses at speed where the motor's own table tells them. */
const RISE_FROM_TABLE = 0.2;

/** The values that the physics uses for a motor, told or inferred, each with its spread. */
export function motorKnown(part: PartOf<'motor'>, { guess, model, riseFromTable }: MotorFacts): MotorKnown {
  const rise = model.resistanceRise ?? 0;
  const usual = guess.resistanceRise;
  return {
    speedConstant: told(part, 'speedConstant', part.speedConstant, guess.speedConstant),
    resistance: told(part, 'windingResistance', part.windingResistance, guess.resistance),
    noLoadCurrent: told(part, 'noLoadCurrent', part.noLoadCurrent, guess.noLoadCurrent),
    resistanceRise: riseFromTable
      ? {
          value: rise,
          deviation: RISE_FROM_TABLE * rise,
          trust: 'maker',
          source: "full-throttle line of the motor's own thrust table",
        }
      : { ...usual, value: rise, deviation: (usual.deviation / usual.value) * rise },
  };
}

function told(part: PartOf<'motor'>, name: string, given: Given | undefined, guess: Trusted): Trusted {
  if (given === undefined) return guess;
  const trust = given.trust ?? part.trust;
  return {
    value: given.value,
    deviation: given.deviation ?? (TOLD[name]?.[trust] ?? 0.3) * given.value,
    trust,
    source: given.source ?? part.source,
  };
}
