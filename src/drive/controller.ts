import type { ControllerModel } from './types.ts';

/**
 * A speed controller as an averaged step-down converter: at duty d it turns its input voltage V into
 * d V, lossless but for three losses (the split as in Green and McDonald 2015 and in any
 * power-electronics handbook):
 *
 *   conduction  i2 R         two of the six switches carry the motor current all the time
 *   switching   V i t f      overlap of voltage and current at each edge
 *   idle        V i_idle     logic and gate drivers
 *
 * Complementary switching is assumed, so current may flow both ways.
 */

/** Input current per motor current beyond the duty itself: t f, dimensionless. */
export function switchingShare(controller: ControllerModel): number {
  return controller.switchingTime * controller.pulseFrequency;
}

/**
 * Drawn from the supply [A] at a duty while the motor carries `motorCurrent` [A].
 * Energy: V x supplyCurrent = (d V) i + switching + idle, exactly.
 */
export function supplyCurrent(controller: ControllerModel, duty: number, motorCurrent: number): number {
  return duty * motorCurrent + switchingShare(controller) * Math.abs(motorCurrent) + controller.idleCurrent;
}

/** All that the controller turns into heat [W]. */
export function controllerLoss(
  controller: ControllerModel,
  supplyVoltage: number,
  motorCurrent: number,
): number {
  return (
    motorCurrent * motorCurrent * controller.resistance +
    supplyVoltage * (switchingShare(controller) * Math.abs(motorCurrent) + controller.idleCurrent)
  );
}

/** Duty, 0 to 1, from throttle, 0 to 1: linear from the idle duty up (common practice, no source). */
export function dutyFromThrottle(controller: ControllerModel, throttle: number): number {
  return controller.idleDuty + (1 - controller.idleDuty) * throttle;
}

/** Throttle that gives a duty; below 0 for duties under the idle duty. */
export function throttleFromDuty(controller: ControllerModel, duty: number): number {
  return (duty - controller.idleDuty) / (1 - controller.idleDuty);
}

/** What a listing says of a controller. */
export interface ControllerNameplate {
  /** [A], one motor */
  readonly continuousCurrent: number;
  /** [A], about ten seconds; 1.2 x continuous when absent */
  readonly burstCurrent?: number;
  /** Full voltage of the largest pack it takes [V] */
  readonly maximumVoltage: number;
  /** [Hz]; 48 kHz when absent */
  readonly pulseFrequency?: number;
}

/**
 * A controller from its listing. Resistance falls as rating rises: the makers size switches for about
 * 0.15 V across the pair at continuous current, hot. Switching time 50 ns, logic 30 mA, idle duty 4 %.
 * Common practice, no source; take +-40 % (one standard deviation) on the resistance.
 */
export function controllerFromNameplate(plate: ControllerNameplate): ControllerModel {
  return {
    resistance: 0.15 / plate.continuousCurrent,
    switchingTime: 50e-9,
    pulseFrequency: plate.pulseFrequency ?? 48e3,
    idleCurrent: 0.03,
    idleDuty: 0.04,
    continuousCurrent: plate.continuousCurrent,
    burstCurrent: plate.burstCurrent ?? 1.2 * plate.continuousCurrent,
    maximumVoltage: plate.maximumVoltage,
  };
}
