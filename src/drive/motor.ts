import { copperRatio } from './copper.ts';
import type { MotorModel, MotorPoint } from './types.ts';

/**
 * First-order direct-current equivalent motor: M. Drela, 'First-Order DC Electric Motor Model',
 * MIT, 2007. Current carries torque, speed carries voltage:
 *
 *   torque  Q = (i - i0) / K_V        (K_Q = K_V in SI)
 *   voltage v = Omega / K_V + i R
 *
 * Refined as Drela's 'Second-Order DC Electric Motor Model' (2006) proposes: i0 grows with speed,
 * R with winding temperature and, by `resistanceRise`, with speed. Valid for a motor that a controller keeps in step; no field weakening.
 */

/**
 * No-load current at an angular speed [A]: a constant part (hysteresis, bearings) and a part
 * proportional to speed (eddy currents).
 */
export function noLoadCurrentAt(motor: MotorModel, angularSpeed: number): number {
  const share = motor.eddyShare;
  return motor.noLoadCurrent * (1 - share + (share * Math.abs(angularSpeed)) / motor.noLoadSpeed);
}

/** Winding resistance [ohm] at a winding temperature [K]. */
export function windingResistanceAt(motor: MotorModel, temperature: number): number {
  return motor.resistance * copperRatio(temperature, motor.referenceTemperature);
}

/** What speed adds to the winding's resistance [ohm], for voltage and loss; the loss heats the iron. */
export function runningResistanceAt(motor: MotorModel, temperature: number, angularSpeed: number): number {
  return windingResistanceAt(motor, temperature) * (motor.resistanceRise ?? 0) * Math.abs(angularSpeed);
}

/**
 * The motor turning at `angularSpeed` against `torque`: what it asks and where the power goes.
 * To start from a voltage instead, use `motorOnVoltage`.
 *
 * @param torque at the shaft [N m]; may be negative (driven by the propeller)
 * @param angularSpeed [rad/s], >= 0
 * @param windingTemperature [K]
 */
export function motorAt(
  motor: MotorModel,
  torque: number,
  angularSpeed: number,
  windingTemperature: number,
): MotorPoint {
  const idle = noLoadCurrentAt(motor, angularSpeed);
  return pointOf(motor, torque * motor.speedConstant + idle, angularSpeed, windingTemperature);
}

/**
 * The motor held at `voltage` while it turns at `angularSpeed`: its current and torque follow.
 *
 * @param voltage at the terminals, direct-current equivalent [V]
 * @param angularSpeed [rad/s], >= 0
 * @param windingTemperature [K]
 */
export function motorOnVoltage(
  motor: MotorModel,
  voltage: number,
  angularSpeed: number,
  windingTemperature: number,
): MotorPoint {
  const resistance =
    windingResistanceAt(motor, windingTemperature) +
    runningResistanceAt(motor, windingTemperature, angularSpeed);
  return pointOf(
    motor,
    (voltage - angularSpeed / motor.speedConstant) / resistance,
    angularSpeed,
    windingTemperature,
  );
}

function pointOf(motor: MotorModel, current: number, angularSpeed: number, temperature: number): MotorPoint {
  const idle = noLoadCurrentAt(motor, angularSpeed);
  const resistance = windingResistanceAt(motor, temperature);
  const running = runningResistanceAt(motor, temperature, angularSpeed);
  const backVoltage = angularSpeed / motor.speedConstant;
  const torque = (current - idle) / motor.speedConstant;
  const voltage = backVoltage + current * (resistance + running);
  const shaftPower = torque * angularSpeed;
  const electrical = voltage * current;
  return {
    angularSpeed,
    torque,
    current,
    voltage,
    shaftPower,
    copperLoss: current * current * resistance,
    ironLoss: idle * backVoltage + current * current * running,
    efficiency: electrical > 0 && shaftPower > 0 ? shaftPower / electrical : 0,
  };
}

/**
 * Current of best efficiency at a fixed voltage with i0 taken constant [A]: sqrt(v i0 / R)
 * (Drela 2007; set the derivative of (1 - i0/i)(1 - i R/v) to zero).
 */
export function bestCurrent(motor: MotorModel, voltage: number): number {
  return Math.sqrt((voltage * motor.noLoadCurrent) / motor.resistance);
}
