import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { secantRoot } from '../numerics/secantRoot.ts';
import { type Branch, type Circuit, motorSide } from './circuit.ts';
import type { RotorLoads } from './types.ts';
import { COAXIAL_WAKE, inducedSpeed } from './wake.ts';

/**
 * What the motors turn at and ask, whatever feeds them: one number a station. Solvers write into it, so
 * that sweeps over charge and style allocate nothing.
 */
export interface Load {
  /** [rad/s] */
  readonly angularSpeed: Float64Array;
  /** Of the rotor, before download [N]. */
  readonly thrust: Float64Array;
  /** [N m] */
  readonly torque: Float64Array;
  /** Axial speed at the disc, wakes included [m/s]. */
  readonly axialSpeed: Float64Array;
  /** Motor current [A]. */
  readonly current: Float64Array;
  /** Controller output needed, behind its own and the leads' resistance: duty x input voltage [V]. */
  readonly voltage: Float64Array;
}

export function emptyLoad(count: number): Load {
  const column = (): Float64Array => new Float64Array(count);
  return {
    angularSpeed: column(),
    thrust: column(),
    torque: column(),
    axialSpeed: column(),
    current: column(),
    voltage: column(),
  };
}

/** The same rotors, turning as they do, hung on motors that differ: what these need for it. */
export function rehang(circuit: Circuit, turning: Load): Load {
  const current = new Float64Array(turning.current.length);
  const voltage = new Float64Array(turning.voltage.length);
  for (let i = 0; i < current.length; i++) {
    const branch = circuit.branches[i] as Branch;
    const speed = turning.angularSpeed[i] as number;
    current[i] =
      speed > 0
        ? (turning.torque[i] as number) * branch.speedConstant +
          branch.idleConstant +
          branch.idleSlope * speed
        : 0;
    voltage[i] = speed / branch.speedConstant + (current[i] as number) * motorSide(branch, speed);
  }
  return { ...turning, current, voltage };
}

/** No small propeller turns faster [rad/s]; 115 000 rpm. */
const FASTEST = 12000;

/** Copies everything of station `from` to station `to`. */
export function copyStation(load: Load, from: number, to: number): void {
  load.angularSpeed[to] = load.angularSpeed[from] as number;
  load.thrust[to] = load.thrust[from] as number;
  load.torque[to] = load.torque[from] as number;
  load.axialSpeed[to] = load.axialSpeed[from] as number;
  load.current[to] = load.current[from] as number;
  load.voltage[to] = load.voltage[from] as number;
}

/** Axial speed at a branch's disc [m/s]: the aircraft's own and the wake it works in. */
export function discSpeed(circuit: Circuit, branch: Branch, load: Load, climb: number): number {
  if (branch.inWakeOf < 0) return climb;
  const above = circuit.branches[branch.inWakeOf] as Branch;
  const thrust = load.thrust[branch.inWakeOf] as number;
  return climb + COAXIAL_WAKE * inducedSpeed(thrust, climb, circuit.airDensity, above.discArea);
}

/** Reads a rotor at one station's speed and writes all that follows. `loads` is scratch. */
export function settleStation(branch: Branch, load: Load, i: number, speed: number, loads: RotorLoads): void {
  if (speed > 0) branch.rotor(speed, load.axialSpeed[i] as number, loads);
  else loads.thrust = loads.torque = 0;
  writeStation(branch, load, i, speed, loads);
}

/** Writes all that follows from a station's speed and what its rotor reads there. */
export function writeStation(
  branch: Branch,
  load: Load,
  i: number,
  speed: number,
  loads: Readonly<RotorLoads>,
): void {
  const torque = loads.torque * branch.torqueScale;
  const idle = branch.idleConstant + branch.idleSlope * speed;
  const current = speed > 0 ? torque * branch.speedConstant + idle : 0;
  load.angularSpeed[i] = speed;
  load.thrust[i] = loads.thrust * branch.thrustScale;
  load.torque[i] = torque;
  load.current[i] = current;
  load.voltage[i] = speed / branch.speedConstant + current * motorSide(branch, speed);
}

/**
 * Turns every motor so fast that the airframe gets `netThrusts`.
 *
 * @param netThrusts after download [N], one a station, >= 0; 0 stops the motor
 * @param climb axial speed of the aircraft [m/s]
 * @param load written; its angular speeds are the first guess
 */
export function loadForThrusts(
  circuit: Circuit,
  netThrusts: ArrayLike<number>,
  climb: number,
  load: Load,
): Outcome<Load> {
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  for (const i of circuit.order) {
    const branch = circuit.branches[i] as Branch;
    const wanted = netThrusts[i] as number;
    if (!(wanted >= 0)) return noSolution(`motor ${i + 1} would have to pull down`);
    const twin = branch.sameAs;
    if (twin < i && Math.abs((netThrusts[twin] as number) - wanted) <= 1e-12 * wanted) {
      copyStation(load, twin, i);
      continue;
    }
    const axial = discSpeed(circuit, branch, load, climb);
    load.axialSpeed[i] = axial;
    let speed = 0;
    if (wanted > 0) {
      const gross = wanted / (branch.netShare * branch.thrustScale);
      // In the square of speed thrust is nearly a straight line through nothing.
      const square = secantRoot(
        (s) => {
          branch.rotor(Math.sqrt(s), axial, loads);
          return loads.thrust - gross;
        },
        0,
        FASTEST * FASTEST,
        (load.angularSpeed[i] || 2000) ** 2,
        (s) => loads.thrust / s,
      );
      speed = Math.sqrt(square);
    }
    settleStation(branch, load, i, speed, loads);
    if (!(loads.thrust * (1 + 1e-8) >= wanted / (branch.netShare * branch.thrustScale))) {
      return noSolution(
        `the propeller of motor ${i + 1} cannot give ${(wanted / branch.netShare).toFixed(2)} N at any speed`,
      );
    }
  }
  return solved(load);
}
