import { type Outcome, solved } from '../../numerics/outcome.ts';
import type { Matrix3 } from '../../numerics/vector3.ts';
import { type Branch, type Circuit, circuitOf, motorSide } from '../circuit.ts';
import { emptyLoad, loadForThrusts } from '../load.ts';
import type { Moment } from '../operatingPoint.ts';
import type { FlightModel, Levers } from '../types.ts';
import { attainableSet, reachAlong } from './attainableSet.ts';
import { gyroscopicCoupling } from './gyroscopic.ts';
import { type BusReserve, reserveOnBus } from './onBus.ts';
import { motorTimeConstant, type Spinner, settledSpeed, spinTime } from './spinUp.ts';
import { type BankTime, timeToBank } from './timeToBank.ts';
import { controlAxes } from './types.ts';

/** How lively a craft is at hover. */
export interface Agility {
  readonly onBus: BusReserve;
  /** Time constant of the slowest motor with its propeller at hover, small changes, fixed duty [s]. */
  readonly lag: number;
  /** From hover speed to 95 % of full speed at full voltage, slowest motor [s]. */
  readonly fullThrottleTime: number;
  /** To 90 degrees of bank right, and of pitch nose up. */
  readonly bank: { readonly roll: BankTime; readonly pitch: BankTime };
  /**
   * Under full yaw the rotors no longer cancel: the pitch moment that they make of a roll at 10 rad/s, over the
   * largest pitch moment in reserve.
   */
  readonly gyroscopicShare: number;
}

/** A brisk roll, to tell the gyroscopic share at [rad/s]. */
const BRISK_ROLL = 10;

/**
 * Reserve, lag and time to bank 90 degrees in one, on the sagging battery.
 *
 * @param inertia about the centre of gravity [kg m2]
 * @returns words when the craft cannot hover, or has no moment to bank with
 */
export function agility(
  flight: FlightModel,
  inertia: Matrix3,
  levers: Levers,
  moment: Moment,
): Outcome<Agility> {
  const onBus = reserveOnBus(flight, inertia, levers, moment);
  if (!onBus.ok) return onBus;
  const { accelerations } = onBus.value.reserve;
  const { load } = onBus.value.hover;
  const circuit = circuitOf(flight, levers, moment.windingTemperature);
  let lag = 0;
  let fullThrottleTime = 0;
  for (const [i, branch] of circuit.branches.entries()) {
    const speed = load.angularSpeed[i] ?? 0;
    if (speed <= 0) continue;
    const rotatingInertia = flight.stations[i]?.rotatingInertia ?? 0;
    const spinner = spinnerOf(branch, rotatingInertia, speed, load.torque[i] ?? 0);
    lag = Math.max(lag, motorTimeConstant(spinner, speed));
    const full = 0.95 * settledSpeed(spinner, onBus.value.busVoltage);
    const time = full > speed ? spinTime(spinner, speed, full, onBus.value.busVoltage) : solved(0);
    if (!time.ok) return time;
    fullThrottleTime = Math.max(fullThrottleTime, time.value);
  }
  const bank = (axis: 'roll' | 'pitch'): Outcome<BankTime> =>
    timeToBank({
      angle: Math.PI / 2,
      acceleration: accelerations[axis].positive,
      deceleration: accelerations[axis].negative,
      lag,
    });
  const roll = bank('roll');
  if (!roll.ok) return roll;
  const pitch = bank('pitch');
  if (!pitch.ok) return pitch;
  return solved({
    onBus: onBus.value,
    lag,
    fullThrottleTime,
    bank: { roll: roll.value, pitch: pitch.value },
    gyroscopicShare: gyroscopicShare(flight, circuit, onBus.value),
  });
}

function gyroscopicShare(flight: FlightModel, circuit: Circuit, { model, reserve }: BusReserve): number {
  const set = attainableSet(model);
  let largest = 0;
  for (const sign of [1, -1]) {
    const yawing = reachAlong(set, [0, 0, sign], { axes: controlAxes, lift: set.weight });
    if (!yawing.ok) continue;
    const load = emptyLoad(circuit.branches.length);
    if (!loadForThrusts(circuit, yawing.value.thrusts, 0, load).ok) continue;
    const rotors = flight.stations.map(({ spin, rotatingInertia }, i) => ({
      spin,
      rotatingInertia,
      angularSpeed: load.angularSpeed[i] ?? 0,
    }));
    largest = Math.max(largest, Math.abs(gyroscopicCoupling(rotors, [BRISK_ROLL, 0, 0]).moment[1]));
  }
  return largest / Math.min(reserve.moments.pitch.negative, reserve.moments.pitch.positive);
}

/** The motor and propeller of a branch about a running point. */
function spinnerOf(branch: Branch, rotatingInertia: number, speed: number, torque: number): Spinner {
  return {
    rotatingInertia,
    speedConstant: branch.speedConstant,
    resistance: motorSide(branch, speed),
    noLoadTorque: (branch.idleConstant + branch.idleSlope * speed) / branch.speedConstant,
    torqueFactor: torque / speed ** 2,
  };
}
