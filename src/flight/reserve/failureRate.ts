import type { Impaired } from './motorOut.ts';
import { degreesHeld, type Held } from './types.ts';

/** Single-motor failures to be met in flight, by what is left after them. */
export interface FailureRate {
  /** Failures of one motor per flight hour. */
  readonly failuresPerHour: number;
  /** Of these, by what can still be held. */
  readonly byHeld: Readonly<Record<Held, number>>;
}

/**
 * How often one motor of a craft fails and what is left: rates add, so more motors fail more often,
 * and only the attainable set can earn some of it back.
 *
 * @param impaired from `motorOut`, one entry a motor
 * @param failuresPerMotorHour of motor, propeller, its controller and plugs together [1/h], >= 0: the
 *   user's own figure; no published one for small craft is known to us
 */
export function failureRate(impaired: readonly Impaired[], failuresPerMotorHour: number): FailureRate {
  if (!(failuresPerMotorHour >= 0)) {
    throw new RangeError(`failuresPerMotorHour must be 0 or more; found ${failuresPerMotorHour}`);
  }
  const rate = (held: Held): number =>
    impaired.filter((one) => one.held === held).length * failuresPerMotorHour;
  return {
    failuresPerHour: impaired.length * failuresPerMotorHour,
    byHeld: Object.fromEntries(degreesHeld.map((held) => [held, rate(held)])) as Record<Held, number>,
  };
}
