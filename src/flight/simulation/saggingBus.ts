import type { PackSource } from '../../drive/types.ts';
import type { Circuit } from '../circuit.ts';
import { at, type SimulationModel, type SimulationState } from './types.ts';

/** What feeds the motors at one moment; written by `saggingBus`. */
export interface BusReading {
  /** Of every controller, 0 to 1. */
  readonly duty: Float64Array;
  /** In every winding [A]. */
  readonly motorCurrent: Float64Array;
  /** [V] */
  busVoltage: number;
  /** At the pack's terminals [V] */
  packVoltage: number;
  /** [A] */
  packCurrent: number;
}

/** Cuts what the drives are asked to what the bus gives, in place, and tells what the bus does. */
export type Supply = (state: Readonly<SimulationState>, commands: Float64Array) => void;

/** The bus moves by so little in the last round [V]. */
const SETTLED = 1e-6;
const ROUNDS = 30;

/**
 * One sagging pack under all motors, for a simulation whose drives are motors on voltages. A controller turns the
 * voltage it is asked for into a duty by the bus it saw last; the bus settles at once where pack, leads and
 * motors agree: V = emf - R (sum of duty x motor current + controllers' own + electronics / V). Of an inductance nothing
 * is known here, and the pack's slow polarisation stands still.
 *
 * @param reading where the bus is told; its bus voltage is the first guess, over 0
 * @throws RangeError when a drive is not a motor
 */
export function saggingBus(
  model: SimulationModel,
  circuit: Circuit,
  source: PackSource,
  reading: BusReading,
): Supply {
  const drives = model.rotors.map(({ drive }) => {
    if (drive.kind !== 'motor') throw new RangeError(`drive must be a motor; found a ${drive.kind}`);
    return drive;
  });
  const resistance = source.resistance + circuit.mainResistance;
  const { duty, motorCurrent } = reading;
  return (state, commands) => {
    drives.forEach((_, i) => {
      duty[i] = Math.min(1, Math.max(0, (commands[i] as number) / reading.busVoltage));
    });
    let bus = reading.busVoltage;
    for (let round = 0; round < ROUNDS; round++) {
      let drawn = circuit.avionicsPower / bus;
      let slope = -drawn / bus;
      drives.forEach((drive, i) => {
        const branch = circuit.branches[i];
        if (branch === undefined) return;
        const d = duty[i] as number;
        const push = d * bus - (state[at.rotors + i] as number) / drive.speedConstant;
        const current = push / (drive.resistance + d * d * branch.supplyResistance);
        const share = d + Math.sign(current) * branch.switchingShare;
        motorCurrent[i] = current;
        drawn += share * current + branch.idleCurrent;
        slope += (share * d) / (drive.resistance + d * d * branch.supplyResistance);
      });
      const excess = bus + resistance * drawn - source.emf;
      const step = excess / (1 + resistance * slope);
      reading.packCurrent = drawn;
      bus -= step;
      if (Math.abs(step) < SETTLED) break;
    }
    reading.busVoltage = bus;
    reading.packVoltage = source.emf - source.resistance * reading.packCurrent;
    drives.forEach((drive, i) => {
      const backEmf = (state[at.rotors + i] as number) / drive.speedConstant;
      commands[i] = backEmf + drive.resistance * (motorCurrent[i] as number);
    });
  };
}

export function emptyReading(count: number, busVoltage: number): BusReading {
  return {
    duty: new Float64Array(count),
    motorCurrent: new Float64Array(count),
    busVoltage,
    packVoltage: busVoltage,
    packCurrent: 0,
  };
}
