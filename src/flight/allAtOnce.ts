import type { PackSource } from '../drive/types.ts';
import { type Branch, type Circuit, motorSide } from './circuit.ts';
import type { Supply } from './feed.ts';
import { copyStation, discSpeed, type Load, writeStation } from './load.ts';
import type { RotorLoads } from './types.ts';

const PASSES = 20;
/** What is left of voltages when they agree, over the whole. */
const CLOSE = 1e-12;

/** The motors' equations as straight lines about a point, one entry a motor. */
interface Tangents {
  /** Voltage lacking for the speed [V]. */
  readonly miss: Float64Array;
  /** What of it a rad/s adds [V s]. */
  readonly steepness: Float64Array;
  /** Current of the controller a rad/s [A s]. */
  readonly draw: Float64Array;
  readonly lastSpeed: Float64Array;
  readonly lastTorque: Float64Array;
  readonly loads: RotorLoads;
}

/**
 * All motors at given duties on one sagging pack, by Newton's method in all speeds and the bus voltage together: one
 * reading of each rotor a pass. The motors meet on the bus only, so each step is solved by hand. The slope
 * of a torque is that of a square law first, then the secant of the last two passes.
 *
 * Quick but not guaranteed: false when it does not settle on running motors and a bus above sqrt(R P), where the
 * one stable root is, and then what it wrote is worth nothing. `loadForDuties` has the guarantee.
 *
 * @param load, supply written; their last speeds and voltage are the first guess
 */
export function turnAllAtOnce(
  circuit: Circuit,
  source: PackSource,
  duties: ArrayLike<number>,
  climb: number,
  load: Load,
  supply: Supply,
): boolean {
  const count = circuit.branches.length;
  const column = (): Float64Array => new Float64Array(count);
  const tangents: Tangents = {
    miss: column(),
    steepness: column(),
    draw: column(),
    lastSpeed: column(),
    lastTorque: column(),
    loads: { thrust: 0, torque: 0 },
  };
  const resistance = source.resistance + circuit.mainResistance;
  const lowest = Math.sqrt(resistance * circuit.avionicsPower);
  const known = supply.busVoltage;
  let bus = known > lowest && known < source.emf ? known : 0.9 * source.emf;
  for (let pass = 0; pass < PASSES; pass++) {
    if (!(bus > lowest && bus <= source.emf)) return false;
    let current = circuit.avionicsPower / bus;
    let drawByMisses = 0;
    let drawByBus = -current / bus;
    let worst = 0;
    for (const i of circuit.order) {
      const off = tangentAt(circuit, i, duties, bus, climb, load, supply, tangents);
      if (Number.isNaN(off)) return false;
      worst = Math.max(worst, off);
      const perVolt = (tangents.draw[i] as number) / (tangents.steepness[i] as number);
      current += supply.current[i] as number;
      drawByMisses += perVolt * (tangents.miss[i] as number);
      drawByBus += perVolt * (duties[i] as number);
    }
    const excess = bus + resistance * current - source.emf;
    if (worst <= CLOSE && Math.abs(excess) <= CLOSE * source.emf) {
      supply.packCurrent = current;
      supply.busVoltage = bus;
      supply.packVoltage = source.emf - source.resistance * current;
      for (let i = 0; i < count; i++) {
        supply.voltage[i] =
          bus - (circuit.branches[i] as Branch).supplyResistance * (supply.current[i] as number);
      }
      return true;
    }
    const step = (resistance * drawByMisses - excess) / (1 + resistance * drawByBus);
    bus += step;
    for (let i = 0; i < count; i++) {
      const wanted = (duties[i] as number) * step - (tangents.miss[i] as number);
      load.angularSpeed[i] = (load.angularSpeed[i] as number) + wanted / (tangents.steepness[i] as number);
    }
  }
  return false;
}

/** Writes one motor's tangent; returns its miss over its voltage, NaN when it stands or would stall. */
function tangentAt(
  circuit: Circuit,
  i: number,
  duties: ArrayLike<number>,
  bus: number,
  climb: number,
  load: Load,
  supply: Supply,
  tangents: Tangents,
): number {
  const branch = circuit.branches[i] as Branch;
  const duty = duties[i] as number;
  const push = duty * (bus - branch.supplyResistance * branch.idleCurrent);
  const twin = branch.sameAs;
  if (twin < i && duties[twin] === duty) {
    copyStation(load, twin, i);
    supply.current[i] = supply.current[twin] as number;
    tangents.miss[i] = tangents.miss[twin] as number;
    tangents.steepness[i] = tangents.steepness[twin] as number;
    tangents.draw[i] = tangents.draw[twin] as number;
    return Math.abs(tangents.miss[i] as number) / push;
  }
  const { loads } = tangents;
  const known = load.angularSpeed[i] as number;
  const speed =
    known > 0 || (tangents.lastSpeed[i] as number) > 0 ? known : 0.7 * branch.speedConstant * push;
  if (!(speed > 0 && push > branch.idleConstant * branch.motorSideResistance)) return Number.NaN;
  const axial = discSpeed(circuit, branch, load, climb);
  load.axialSpeed[i] = axial;
  branch.rotor(speed, axial, loads);
  const change = speed - (tangents.lastSpeed[i] as number);
  const secant = (loads.torque - (tangents.lastTorque[i] as number)) / change;
  // Of a first pass, and of steps so small that the secant is rounding: a square law.
  const first = change === speed || !(Math.abs(change) > 1e-7 * speed);
  const slope = first ? (2 * loads.torque) / speed : secant;
  tangents.lastSpeed[i] = speed;
  tangents.lastTorque[i] = loads.torque;
  writeStation(branch, load, i, speed, loads);
  const motor = load.current[i] as number;
  const share = duty + Math.sign(motor) * branch.switchingShare;
  // What a motor ampere costs in volts at the output: its own side, and the supply lead it loads twice over.
  const side = motorSide(branch, speed) + branch.supplyResistance * duty * share;
  const motorSlope = slope * branch.torqueScale * branch.speedConstant + branch.idleSlope;
  tangents.miss[i] = speed / branch.speedConstant + motor * side - push;
  tangents.steepness[i] = 1 / branch.speedConstant + motorSlope * side + motor * branch.resistanceSlope;
  tangents.draw[i] = share * motorSlope;
  supply.current[i] = motor * share + branch.idleCurrent;
  return Math.abs(tangents.miss[i] as number) / push;
}
