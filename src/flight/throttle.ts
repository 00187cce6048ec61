import type { PackSource } from '../drive/types.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { secantRoot } from '../numerics/secantRoot.ts';
import { type Branch, type Circuit, motorSide } from './circuit.ts';
import type { Supply } from './feed.ts';
import { copyStation, discSpeed, type Load, settleStation } from './load.ts';
import type { RotorLoads } from './types.ts';

/**
 * All motors at given duties on one sagging pack: a bracket on the bus voltage, and inside it one on the speed of
 * each motor.
 *
 * Total current I(V) of motors at fixed duty rises with bus voltage V; the avionics' P/V falls. So
 * h(V) = emf - R (I(V) + P/V) - V falls all the way from V = sqrt(R P) to emf, where h <= 0: it has one
 * stable root there, exactly when h(sqrt(R P)) >= 0.
 *
 * @param duties of each controller, 0 to 1
 * @param climb axial speed of the aircraft [m/s]
 * @param load, supply written; their last contents are the first guess
 */
export function loadForDuties(
  circuit: Circuit,
  source: PackSource,
  duties: ArrayLike<number>,
  climb: number,
  load: Load,
  supply: Supply,
): Outcome<Load> {
  if (turnAlike(circuit, source, duties, climb, load, supply)) return solved(load);
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  const resistance = source.resistance + circuit.mainResistance;
  const excess = (bus: number): number => {
    let current = circuit.avionicsPower / bus;
    for (const i of circuit.order) {
      turn(circuit, i, duties, bus, climb, load, supply, loads);
      current += supply.current[i] as number;
    }
    supply.packCurrent = current;
    return bus + resistance * current - source.emf;
  };
  const lowest = Math.max(Math.sqrt(resistance * circuit.avionicsPower), 1e-6 * source.emf);
  const guess = supply.busVoltage > lowest ? supply.busVoltage : 0.9 * source.emf;
  const bus = lowest < source.emf ? secantRoot(excess, lowest, source.emf * (1 + 1e-12), guess) : lowest;
  if (!(excess(bus) <= 1e-9 * source.emf)) {
    return noSolution(
      `a pack of ${source.emf.toFixed(1)} V behind ${(1000 * resistance).toFixed(0)} mohm cannot hold up its own electronics (${circuit.avionicsPower.toFixed(1)} W)`,
    );
  }
  supply.busVoltage = bus;
  supply.packVoltage = source.emf - source.resistance * supply.packCurrent;
  return solved(load);
}

/** One motor at its duty on a bus of known voltage. */
function turn(
  circuit: Circuit,
  i: number,
  duties: ArrayLike<number>,
  bus: number,
  climb: number,
  load: Load,
  supply: Supply,
  loads: RotorLoads,
): void {
  const branch = circuit.branches[i] as Branch;
  const duty = duties[i] as number;
  const twin = branch.sameAs;
  if (twin < i && duties[twin] === duty) {
    copyStation(load, twin, i);
    supply.voltage[i] = supply.voltage[twin] as number;
    supply.current[i] = supply.current[twin] as number;
    return;
  }
  const axial = discSpeed(circuit, branch, load, climb);
  load.axialSpeed[i] = axial;
  const open = bus - branch.supplyResistance * branch.idleCurrent;
  const push = duty * open;
  // What a motor ampere costs in volts at the output: its own side, and the supply lead it loads twice over.
  const perAmpere = (current: number, speed: number): number =>
    motorSide(branch, speed) +
    branch.supplyResistance * duty * (duty + Math.sign(current) * branch.switchingShare);
  const lacking = (speed: number): number => {
    branch.rotor(speed, axial, loads);
    const current =
      loads.torque * branch.torqueScale * branch.speedConstant +
      branch.idleConstant +
      branch.idleSlope * speed;
    return speed / branch.speedConstant + current * perAmpere(current, speed) - push;
  };
  const stalled = push <= branch.idleConstant * perAmpere(1, 0);
  if (stalled) {
    settleStation(branch, load, i, 0, loads);
    const current = Math.max(push, 0) / perAmpere(1, 0);
    load.current[i] = current;
    load.voltage[i] = current * branch.motorSideResistance;
  } else {
    const known = load.angularSpeed[i] as number;
    // Air that drives the propeller can carry it past its free speed.
    const free = branch.speedConstant * push;
    let top = free;
    while (lacking(top) < 0 && top < 8 * free) top *= 2;
    settleStation(branch, load, i, secantRoot(lacking, 0, top, known > 0 ? known : 0.7 * free), loads);
  }
  const current = load.current[i] as number;
  supply.current[i] = current * duty + branch.switchingShare * Math.abs(current) + branch.idleCurrent;
  supply.voltage[i] = bus - branch.supplyResistance * (supply.current[i] as number);
}

/**
 * Short cut for motors all alike at one duty, such as a punch: their common speed is the only unknown, and gives
 * the voltages from the motor back to the pack. False when they are not alike, when they would stall, or when
 * there is no solution: then the long way has to tell.
 */
function turnAlike(
  circuit: Circuit,
  source: PackSource,
  duties: ArrayLike<number>,
  climb: number,
  load: Load,
  supply: Supply,
): boolean {
  const count = circuit.branches.length;
  const branch = circuit.branches[0] as Branch;
  const duty = duties[0] as number;
  if (!(duty > 0)) return false;
  for (let i = 1; i < count; i++) {
    if ((circuit.branches[i] as Branch).sameAs !== 0 || duties[i] !== duty) return false;
  }
  const resistance = source.resistance + circuit.mainResistance;
  const lowest = Math.sqrt(resistance * circuit.avionicsPower);
  if (!(lowest < source.emf)) return false;
  load.axialSpeed.fill(climb);
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  let current = 0;
  let bus = 0;
  const excess = (speed: number): number => {
    branch.rotor(speed, climb, loads);
    const motor =
      loads.torque * branch.torqueScale * branch.speedConstant +
      branch.idleConstant +
      branch.idleSlope * speed;
    const voltage = (speed / branch.speedConstant + motor * motorSide(branch, speed)) / duty;
    const each = motor * duty + branch.switchingShare * Math.abs(motor) + branch.idleCurrent;
    bus = voltage + branch.supplyResistance * each;
    current = count * each + circuit.avionicsPower / Math.max(bus, lowest);
    return bus + resistance * current - source.emf;
  };
  const free = branch.speedConstant * duty * source.emf;
  const known = load.angularSpeed[0] as number;
  const speed = secantRoot(excess, 0, free, known > 0 ? known : 0.7 * free);
  if (!(Math.abs(excess(speed)) <= 1e-9 * source.emf) || !(bus > lowest) || !(speed > 0)) return false;
  settleStation(branch, load, 0, speed, loads);
  const motor = load.current[0] as number;
  supply.current[0] = motor * duty + branch.switchingShare * Math.abs(motor) + branch.idleCurrent;
  supply.voltage[0] = bus - branch.supplyResistance * (supply.current[0] as number);
  for (let i = 1; i < count; i++) {
    copyStation(load, 0, i);
    supply.voltage[i] = supply.voltage[0] as number;
    supply.current[i] = supply.current[0] as number;
  }
  supply.packCurrent = current;
  supply.busVoltage = bus;
  supply.packVoltage = source.emf - source.resistance * current;
  return true;
}
