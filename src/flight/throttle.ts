import type { PackSource } from '../drive/types.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { secantRoot } from '../numerics/secantRoot.ts';
import { turnAllAtOnce } from './allAtOnce.ts';
import { type Branch, type Circuit, motorSide } from './circuit.ts';
import type { Supply } from './feed.ts';
import { copyStation, discSpeed, type Load, settleStation } from './load.ts';
import type { RotorLoads } from './types.ts';

/**
 * All motors at given duties on one sagging pack: quickly by `turnAllAtOnce`, and should that miss by a bracket on
 * the bus voltage, and inside it one on the speed of each motor.
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
  if (turnAllAtOnce(circuit, source, duties, climb, load, supply)) return solved(load);
  load.angularSpeed.fill(0);
  const resistance = source.resistance + circuit.mainResistance;
  const excess = (bus: number): number => {
    const current = circuit.avionicsPower / bus + currentOnBus(circuit, duties, bus, climb, load, supply);
    supply.packCurrent = current;
    return bus + resistance * current - source.emf;
  };
  const lowest = Math.max(Math.sqrt(resistance * circuit.avionicsPower), 1e-6 * source.emf);
  const bus =
    lowest < source.emf ? secantRoot(excess, lowest, source.emf * (1 + 1e-12), 0.9 * source.emf) : lowest;
  if (!(excess(bus) <= 1e-9 * source.emf)) {
    return noSolution(
      `a pack of ${source.emf.toFixed(1)} V behind ${(1000 * resistance).toFixed(0)} mohm cannot hold up its own electronics (${circuit.avionicsPower.toFixed(1)} W)`,
    );
  }
  supply.busVoltage = bus;
  supply.packVoltage = source.emf - source.resistance * supply.packCurrent;
  return solved(load);
}

/** Turns all motors at given duties on a bus of known voltage, and adds up what their controllers draw [A]. */
export function currentOnBus(
  circuit: Circuit,
  duties: ArrayLike<number>,
  bus: number,
  climb: number,
  load: Load,
  supply: Supply,
): number {
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  let current = 0;
  for (const i of circuit.order) {
    turn(circuit, i, duties, bus, climb, load, supply, loads);
    current += supply.current[i] as number;
  }
  return current;
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
  const slopeAt = (speed: number): number => {
    const motorSlope =
      ((2 * loads.torque) / speed) * branch.torqueScale * branch.speedConstant + branch.idleSlope;
    return 1 / branch.speedConstant + motorSlope * perAmpere(1, speed);
  };
  const stalled = push <= branch.idleConstant * perAmpere(1, 0);
  if (stalled) {
    settleStation(branch, load, i, 0, loads);
    const current = Math.max(push, 0) / perAmpere(1, 0);
    load.current[i] = current;
    load.voltage[i] = current * branch.motorSideResistance;
  } else {
    const known = load.angularSpeed[i] as number;
    const free = branch.speedConstant * push;
    let top = free;
    let speed = secantRoot(lacking, 0, top, known > 0 ? known : 0.7 * free, slopeAt);
    // Air that drives the propeller can carry it past its free speed.
    while (speed > 0.999 * top && top < 8 * free && lacking(top) < 0) {
      top *= 2;
      speed = secantRoot(lacking, 0, top, speed);
    }
    settleStation(branch, load, i, speed, loads);
  }
  const current = load.current[i] as number;
  supply.current[i] = current * duty + branch.switchingShare * Math.abs(current) + branch.idleCurrent;
  supply.voltage[i] = bus - branch.supplyResistance * (supply.current[i] as number);
}
