import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';

/**
 * A motor turning its propeller, in direct-current terms: J w' = (V - w/K_V)/(R K_V) - Q0 - k w2,
 * with the winding's inductance left out (its time constant is a hundredth of the mechanical one).
 */
export interface Spinner {
  /** Polar moment of everything that turns [kg m2], > 0. */
  readonly rotatingInertia: number;
  /** K_V [rad/s per V], > 0. */
  readonly speedConstant: number;
  /** Winding, controller and leads, warm [ohm], > 0. */
  readonly resistance: number;
  /** Torque lost at no load [N m], >= 0. */
  readonly noLoadTorque: number;
  /** Propeller torque over angular speed squared, static [N m s2], > 0. */
  readonly torqueFactor: number;
}

/**
 * Time constant of small speed changes about a running speed at fixed duty [s]:
 * J / (1/(R K_V2) + 2 k w): the motor's back-voltage and the propeller's own slope both damp. Thrust
 * follows with the same constant. A controller that regulates speed is quicker until it runs out of volts.
 *
 * @param angularSpeed [rad/s], >= 0
 */
export function motorTimeConstant(spinner: Spinner, angularSpeed: number): number {
  if (!(angularSpeed >= 0)) {
    throw new RangeError(`angularSpeed must be 0 rad/s or more; found ${angularSpeed} rad/s`);
  }
  return (
    spinner.rotatingInertia /
    (1 / (spinner.resistance * spinner.speedConstant ** 2) + 2 * spinner.torqueFactor * angularSpeed)
  );
}

/**
 * Where the motor settles on a steady voltage [rad/s], from a = b w + k w2; 0 when the no-load torque stalls it.
 *
 * @param voltage [V]
 */
export function settledSpeed(spinner: Omit<Spinner, 'rotatingInertia'>, voltage: number): number {
  const { speedConstant, resistance, noLoadTorque, torqueFactor } = spinner;
  const a = voltage / (resistance * speedConstant) - noLoadTorque;
  const b = 1 / (resistance * speedConstant ** 2);
  return a <= 0 ? 0 : (2 * a) / (b + Math.sqrt(b * b + 4 * torqueFactor * a));
}

/**
 * Time from one speed to another on a steady voltage [s], up or down: the closed integral of
 * dw / (a - b w - k w2), a Riccati equation. For the lag of large commands: full bus voltage up,
 * the lowest duty down (a controller that brakes) at its voltage.
 *
 * @param from, to [rad/s], >= 0
 * @param voltage at the controller's output under that load [V], >= 0
 * @returns words when the motor never gets there on this voltage
 */
export function spinTime(spinner: Spinner, from: number, to: number, voltage: number): Outcome<number> {
  for (const [name, value] of [
    ['from', from],
    ['to', to],
    ['voltage', voltage],
  ] as const) {
    if (!(value >= 0 && Number.isFinite(value)))
      throw new RangeError(`${name} must be 0 or more; found ${value}`);
  }
  const { speedConstant, resistance, torqueFactor, rotatingInertia } = spinner;
  const a = voltage / (resistance * speedConstant) - spinner.noLoadTorque;
  const b = 1 / (resistance * speedConstant ** 2);
  // a - b w - k w2 = -k (w - w1)(w - w2); w1 is where the motor settles.
  const discriminant = b * b + 4 * torqueFactor * a;
  if (from === to) return solved(0);
  if (discriminant <= 0) return noSolution('the motor is stalled by its own no-load torque at this voltage');
  const root = Math.sqrt(discriminant);
  const settles = (root - b) / (2 * torqueFactor);
  const other = (-root - b) / (2 * torqueFactor);
  if (from < to ? to >= settles : to <= settles) {
    return noSolution(`at ${voltage} V the motor settles at ${settles} rad/s and never passes ${to} rad/s`);
  }
  const ratio = ((from - settles) * (to - other)) / ((to - settles) * (from - other));
  return solved((rotatingInertia / root) * Math.log(ratio));
}
